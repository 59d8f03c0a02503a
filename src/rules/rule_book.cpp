// Rules read into conditions, a candidate's values asked for as they are needed.
#include "rules/rule_book.h"

#include <fmt/format.h>

#include <algorithm>

#include "embedded.h"
#include "rules/condition.h"
#include "rules/rule_reader.h"
#include "rules/says.h"
#include "rules/shipped_lines.h"

namespace tapbook {
namespace {

struct ReadyRule {
    Condition condition;
    bool is_tap_rule = true;
    bool needs_amplifier = false;
    std::string_view about = {};  // the last relation of the install that it reads
};

bool is_null(const sqlite::Value& value) {
    return std::holds_alternative<std::monostate>(value);
}

std::optional<Effect> effect_of(Unknown unknown) {
    switch (unknown) {
        case Unknown::stop:
            return Effect::stop;
        case Unknown::care:
            return Effect::care;
        case Unknown::info:
            return Effect::info;
        case Unknown::silent:
            break;
    }
    return std::nullopt;
}

// "cannot tell: the least input the converter needs is not known"
std::string cannot_tell(const std::vector<const Column*>& unknown) {
    std::string text = "cannot tell: ";
    for (std::size_t i = 0; i < unknown.size(); ++i) {
        if (i > 0) text += i + 1 == unknown.size() ? " and " : ", ";
        text += unknown[i]->meaning;
    }
    return text + (unknown.size() > 1 ? " are not known" : " is not known");
}

std::string truth_words(std::optional<bool> truth) {
    if (!truth) return "be unsettled";
    return *truth ? "fire" : "stay silent";
}

// Does a sentence name only what is known without a converter?
bool speaks_of_tap_only(std::string_view sentence) {
    bool tap_only = true;
    filled(sentence, [&](const Column& column) {
        tap_only = tap_only && is_of_tap(column.relation);
        return sqlite::Value{};
    });
    return tap_only;
}

}  // namespace

struct RuleBook::State {
    State(std::vector<Rule> all, Answering how) : reader(how) {
        for (auto& rule : all) add(std::move(rule));
    }

    void add(Rule rule);
    void switch_off(const Rule& rule);
    std::optional<bool> truth_of(const Rule& rule, Condition& condition);
    std::optional<RuleAnswer> answer(std::size_t index);
    Finding in_words(const RuleAnswer& answer);
    std::optional<CaseFailure> run_case(const Rule& rule, Condition& condition, const RuleCase& one);

    ConditionReader reader;
    CandidateValues values;
    std::vector<Rule> rules;
    std::vector<ReadyRule> ready;
};

void RuleBook::State::add(Rule rule) {
    if (rule.off) return switch_off(rule);
    ReadyRule one{reader.read(rule.when)};
    for (const Column* column : one.condition.reads()) {
        one.needs_amplifier = one.needs_amplifier || column->needs_amplifier;
        one.is_tap_rule = one.is_tap_rule && is_of_tap(column->relation);
        if (is_of_install(column->relation)) one.about = column->relation;
    }
    one.is_tap_rule = one.is_tap_rule && speaks_of_tap_only(rule.says) &&
                      (!rule.says_unknown || speaks_of_tap_only(*rule.says_unknown));
    const auto old = std::find_if(rules.begin(), rules.end(), [&](const Rule& r) { return r.id == rule.id; });
    if (old == rules.end()) {
        rules.push_back(std::move(rule));
        ready.push_back(std::move(one));
    } else {
        ready[static_cast<std::size_t>(old - rules.begin())] = std::move(one);
        rule.replaces_shipped = old->shipped || old->replaces_shipped;
        *old = std::move(rule);
    }
}

void RuleBook::State::switch_off(const Rule& rule) {
    std::vector<std::string_view> ids;
    for (Rule& old : rules) {
        ids.push_back(old.id);
        if (old.id != rule.id) continue;
        old.off = rule.off;
        return;
    }
    const auto near = nearest(rule.id, ids);
    throw InputRefused({Complaint{rule.place, fmt::format("there is no rule \"{}\" to switch off", shown(rule.id)),
                                  near ? fmt::format("did you mean {}?", *near) : "tapbook rules lists them"}});
}

// Throws InputRefused when the condition of `rule` cannot be computed.
std::optional<bool> RuleBook::State::truth_of(const Rule& rule, Condition& condition) {
    try {
        return condition.truth(values);
    } catch (const sqlite::Error& error) {
        const std::string_view whole = error.what();
        const auto reason =
            error.is_interrupted() ? std::string_view("it takes too many steps") : whole.substr(whole.rfind(": ") + 2);
        throw InputRefused({Complaint{
            rule.place, fmt::format("the condition of \"{}\" cannot be computed: {}", rule.id, shown(reason)),
            "write a simpler condition"}});
    }
}

std::optional<RuleAnswer> RuleBook::State::answer(std::size_t index) {
    if (rules[index].off) return std::nullopt;
    const auto truth = truth_of(rules[index], ready[index].condition);
    if (truth == false) return std::nullopt;
    const auto effect = truth ? std::optional(rules[index].effect) : effect_of(rules[index].unknown);
    if (!effect) return std::nullopt;
    return RuleAnswer{index, *effect, truth.has_value()};
}

Finding RuleBook::State::in_words(const RuleAnswer& answer) {
    const Rule& rule = rules[answer.rule];
    Finding found;
    found.rule = rule.id;
    found.effect = answer.effect;
    found.settled = answer.settled;
    found.basis = rule.basis;
    std::vector<const Column*> unknown;
    for (const Column* column : ready[answer.rule].condition.reads()) {
        const sqlite::Value& value = values.of(*column);
        found.compared.push_back({full_name(*column), shown_value(*column, value)});
        if (!answer.settled && is_null(value)) unknown.push_back(column);
    }
    for (const Column* column : unknown) found.unknown_columns.push_back(full_name(*column));
    const auto value = [&](const Column& column) { return values.of(column); };
    if (answer.settled)
        found.says = filled(rule.says, value);
    else
        found.says = rule.says_unknown ? filled(*rule.says_unknown, value) : cannot_tell(unknown);
    return found;
}

std::optional<CaseFailure> RuleBook::State::run_case(const Rule& rule, Condition& condition, const RuleCase& wanted) {
    values.forget();
    for (const auto& [name, value] : wanted.given) values.give(*find_column(name), value);
    const auto truth = truth_of(rule, condition);
    if (truth == wanted.fires) return std::nullopt;
    std::string why;
    for (const Column* column : condition.reads())
        why += fmt::format("{}{} = {}", why.empty() ? "" : ", ", full_name(*column),
                           shown_value(*column, values.of(*column)));
    const auto number = static_cast<int>(&wanted - rule.cases.data()) + 1;
    return CaseFailure{
        rule.id, number, wanted.place,
        fmt::format("should {}, but would {} with {}", truth_words(wanted.fires), truth_words(truth), why)};
}

RuleBook::RuleBook(std::vector<Rule> rules, Answering how) : state_(std::make_unique<State>(std::move(rules), how)) {}
RuleBook::~RuleBook() = default;
RuleBook::RuleBook(RuleBook&&) noexcept = default;
RuleBook& RuleBook::operator=(RuleBook&&) noexcept = default;

RuleBook RuleBook::shipped(RuleCases cases, Answering how) {
    std::vector<Rule> all;
    for (const EmbeddedText& text : embedded_texts()) {
        if (!text.name.starts_with("shipped/")) continue;
        auto rules = cases == RuleCases::left_out ? rules_in_plain_lines(text.text, text.name) : std::nullopt;
        if (!rules) rules = read_rules(text.text, std::string(text.name), Conditions::trusted);
        for (Rule& rule : *rules) {
            rule.shipped = true;
            all.push_back(std::move(rule));
        }
    }
    return RuleBook(std::move(all), how);
}

void RuleBook::override_with(std::vector<Rule> rules) {
    for (Rule& rule : rules) state_->add(std::move(rule));
}

std::span<const Rule> RuleBook::rules() const {
    return state_->rules;
}

std::vector<std::string> RuleBook::reads(std::size_t index) const {
    std::vector<std::string> names;
    for (const Column* column : state_->ready[index].condition.reads()) names.push_back(full_name(*column));
    return names;
}

bool RuleBook::is_tap_rule(std::size_t index) const {
    return state_->ready[index].is_tap_rule;
}

bool RuleBook::needs_amplifier(std::size_t index) const {
    return state_->ready[index].needs_amplifier;
}

std::string_view RuleBook::is_about(std::size_t index) const {
    return state_->ready[index].about;
}

bool RuleBook::is_plain(std::size_t index) const {
    return state_->ready[index].condition.is_plain();
}

std::vector<CaseFailure> RuleBook::run_cases() {
    std::vector<CaseFailure> failures;
    for (std::size_t i = 0; i < state_->rules.size(); ++i)
        for (const RuleCase& one : state_->rules[i].cases)
            if (auto failure = state_->run_case(state_->rules[i], state_->ready[i].condition, one))
                failures.push_back(std::move(*failure));
    return failures;
}

std::vector<RuleAnswer> RuleBook::answers(const Candidate& candidate) {
    state_->values.look_at(candidate);
    std::vector<RuleAnswer> answers;
    for (std::size_t i = 0; i < state_->rules.size(); ++i) {
        if (!state_->ready[i].about.empty()) continue;
        if (state_->ready[i].needs_amplifier && candidate.amplifier == nullptr) continue;
        if (const auto said = state_->answer(i)) answers.push_back(*said);
    }
    return answers;
}

std::vector<RuleAnswer> RuleBook::tap_answers(const Candidate& candidate) {
    state_->values.look_at(candidate);
    std::vector<RuleAnswer> answers;
    for (std::size_t i = 0; i < state_->rules.size(); ++i) {
        if (!state_->ready[i].is_tap_rule) continue;
        if (const auto said = state_->answer(i)) answers.push_back(*said);
    }
    return answers;
}

Finding RuleBook::in_words(const Candidate& candidate, const RuleAnswer& answer) {
    state_->values.look_at(candidate);
    return state_->in_words(answer);
}

std::vector<Finding> RuleBook::evaluate_about(std::string_view relation, const Candidate& candidate) {
    state_->values.look_at(candidate);
    std::vector<Finding> findings;
    for (std::size_t i = 0; i < state_->rules.size(); ++i) {
        if (state_->ready[i].about != relation) continue;
        if (state_->ready[i].needs_amplifier && candidate.amplifier == nullptr) continue;
        if (const auto said = state_->answer(i)) findings.push_back(state_->in_words(*said));
    }
    std::stable_sort(findings.begin(), findings.end(),
                     [](const Finding& a, const Finding& b) { return a.effect < b.effect; });
    return findings;
}

std::vector<Finding> RuleBook::evaluate(const Candidate& candidate) {
    std::vector<Finding> findings;
    for (const RuleAnswer& answer : answers(candidate)) findings.push_back(state_->in_words(answer));
    return findings;
}

std::vector<Finding> RuleBook::evaluate_tap_rules(const Candidate& candidate) {
    std::vector<Finding> findings;
    for (const RuleAnswer& answer : tap_answers(candidate)) findings.push_back(state_->in_words(answer));
    return findings;
}

}  // namespace tapbook
