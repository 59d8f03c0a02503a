// Rules compiled in one sandbox. Each relation remembers when its row last changed, each rule when it last ran and what
// came of it, so that a rule about the car runs once and a rule about the converter once per converter.
#include "rules/rule_book.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>

#include "embedded.h"
#include "rules/columns.h"
#include "rules/rule_reader.h"
#include "rules/says.h"

namespace tapbook {
namespace {

struct RelationRow {
    std::string name;
    std::vector<const Column*> columns;
    std::vector<sqlite::Value> values;
    std::uint64_t changed_at = 0;
};

struct CompiledRule {
    sqlite::Expression condition;
    std::vector<const Column*> reads;
    std::vector<std::size_t> relations;  // of the condition and the sentences
    bool is_tap_rule = true;
    bool needs_amplifier = false;
    std::optional<std::uint64_t> ran_at = std::nullopt;
    std::optional<Finding> came_out = std::nullopt;
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

// Every column a sentence names.
void note_columns(std::string_view sentence, std::vector<const Column*>& columns_seen) {
    filled(sentence, [&](const Column& column) {
        columns_seen.push_back(&column);
        return sqlite::Value{};
    });
}

}  // namespace

struct RuleBook::State {
    explicit State(std::vector<Rule> all) : sandbox(column_relations()) {
        for (const Column& column : columns()) {
            if (rows.empty() || rows.back().name != column.relation)
                rows.push_back({std::string(column.relation), {}, {}});
            rows.back().columns.push_back(&column);
            rows.back().values.emplace_back();
        }
        for (auto& rule : all) add(std::move(rule));
    }

    void add(Rule rule);
    void set(RelationRow& row, std::vector<sqlite::Value> values);
    void set_candidate(const Candidate& candidate, bool tap_only);
    const sqlite::Value& value_of(const Column& column) const;
    std::size_t row_of(std::string_view relation) const;
    const std::optional<Finding>& run(std::size_t index);
    std::optional<Finding> finding(const Rule& rule, CompiledRule& compiled) const;
    std::optional<CaseFailure> run_case(const Rule& rule, CompiledRule& compiled, const RuleCase& one);

    sqlite::Sandbox sandbox;
    std::vector<RelationRow> rows;
    std::vector<Rule> rules;
    std::vector<CompiledRule> compiled;
    std::uint64_t now = 1;
};

std::size_t RuleBook::State::row_of(std::string_view relation) const {
    const auto found = std::find_if(rows.begin(), rows.end(), [&](const RelationRow& r) { return r.name == relation; });
    return static_cast<std::size_t>(found - rows.begin());
}

const sqlite::Value& RuleBook::State::value_of(const Column& column) const {
    const RelationRow& row = rows[row_of(column.relation)];
    const auto at = std::find(row.columns.begin(), row.columns.end(), &column) - row.columns.begin();
    return row.values[static_cast<std::size_t>(at)];
}

void RuleBook::State::add(Rule rule) {
    CompiledRule one{sandbox.compile(rule.when), {}, {}};
    for (const auto& read : one.condition.reads()) {
        const Column* column = find_column(read.relation + "." + read.column);
        one.reads.push_back(column);
        one.needs_amplifier = one.needs_amplifier || column->needs_amplifier;
    }
    std::vector<const Column*> seen = one.reads;
    note_columns(rule.says, seen);
    if (rule.says_unknown) note_columns(*rule.says_unknown, seen);
    for (const Column* column : seen) {
        one.is_tap_rule = one.is_tap_rule && is_of_tap(column->relation);
        const std::size_t row = row_of(column->relation);
        if (std::find(one.relations.begin(), one.relations.end(), row) == one.relations.end())
            one.relations.push_back(row);
    }
    const auto old = std::find_if(rules.begin(), rules.end(), [&](const Rule& r) { return r.id == rule.id; });
    if (old == rules.end()) {
        rules.push_back(std::move(rule));
        compiled.push_back(std::move(one));
    } else {
        compiled[static_cast<std::size_t>(old - rules.begin())] = std::move(one);
        *old = std::move(rule);
    }
}

void RuleBook::State::set(RelationRow& row, std::vector<sqlite::Value> values) {
    if (values == row.values) return;
    row.values = std::move(values);
    row.changed_at = ++now;
    sandbox.set(row.name, row.values);
}

void RuleBook::State::set_candidate(const Candidate& candidate, bool tap_only) {
    for (RelationRow& row : rows) {
        if (tap_only && !is_of_tap(row.name)) continue;
        std::vector<sqlite::Value> values;
        values.reserve(row.columns.size());
        for (const Column* column : row.columns) values.push_back(column->get(candidate));
        set(row, std::move(values));
    }
}

std::optional<Finding> RuleBook::State::finding(const Rule& rule, CompiledRule& one) const {
    const auto truth = one.condition.truth();
    if (truth == false) return std::nullopt;
    const auto effect = truth ? std::optional(rule.effect) : effect_of(rule.unknown);
    if (!effect) return std::nullopt;
    Finding found;
    found.rule = rule.id;
    found.effect = *effect;
    found.settled = truth.has_value();
    found.basis = rule.basis;
    std::vector<const Column*> unknown;
    for (const Column* column : one.reads) {
        const sqlite::Value& value = value_of(*column);
        found.compared.push_back({full_name(*column), shown_value(*column, value)});
        if (!truth && is_null(value)) unknown.push_back(column);
    }
    for (const Column* column : unknown) found.unknown_columns.push_back(full_name(*column));
    const auto value = [&](const Column& column) { return value_of(column); };
    if (truth)
        found.says = filled(rule.says, value);
    else
        found.says = rule.says_unknown ? filled(*rule.says_unknown, value) : cannot_tell(unknown);
    return found;
}

const std::optional<Finding>& RuleBook::State::run(std::size_t index) {
    CompiledRule& one = compiled[index];
    const bool fresh = one.ran_at && std::all_of(one.relations.begin(), one.relations.end(),
                                                 [&](std::size_t row) { return rows[row].changed_at <= *one.ran_at; });
    if (!fresh) {
        one.came_out = finding(rules[index], one);
        one.ran_at = now;
    }
    return one.came_out;
}

std::optional<CaseFailure> RuleBook::State::run_case(const Rule& rule, CompiledRule& one, const RuleCase& wanted) {
    for (RelationRow& row : rows) {
        std::vector<sqlite::Value> values(row.columns.size());
        for (const auto& [name, value] : wanted.given)
            for (std::size_t i = 0; i < row.columns.size(); ++i)
                if (full_name(*row.columns[i]) == name) values[i] = value;
        set(row, std::move(values));
    }
    const auto truth = one.condition.truth();
    if (truth == wanted.fires) return std::nullopt;
    std::string why;
    for (const Column* column : one.reads)
        why += fmt::format("{}{} = {}", why.empty() ? "" : ", ", full_name(*column),
                           shown_value(*column, value_of(*column)));
    const auto number = static_cast<int>(&wanted - rule.cases.data()) + 1;
    return CaseFailure{
        rule.id, number, wanted.place,
        fmt::format("should {}, but would {} with {}", truth_words(wanted.fires), truth_words(truth), why)};
}

RuleBook::RuleBook(std::vector<Rule> rules) : state_(std::make_unique<State>(std::move(rules))) {}
RuleBook::~RuleBook() = default;
RuleBook::RuleBook(RuleBook&&) noexcept = default;
RuleBook& RuleBook::operator=(RuleBook&&) noexcept = default;

RuleBook RuleBook::shipped() {
    std::vector<Rule> all;
    for (const EmbeddedText& text : embedded_texts()) {
        if (!text.name.starts_with("shipped/")) continue;
        for (Rule& rule : read_rules(text.text, std::string(text.name), Conditions::trusted)) {
            rule.shipped = true;
            all.push_back(std::move(rule));
        }
    }
    return RuleBook(std::move(all));
}

void RuleBook::override_with(std::vector<Rule> rules) {
    for (Rule& rule : rules) state_->add(std::move(rule));
}

std::span<const Rule> RuleBook::rules() const {
    return state_->rules;
}

std::vector<std::string> RuleBook::reads(std::size_t index) const {
    std::vector<std::string> names;
    for (const Column* column : state_->compiled[index].reads) names.push_back(full_name(*column));
    return names;
}

bool RuleBook::is_tap_rule(std::size_t index) const {
    return state_->compiled[index].is_tap_rule;
}

bool RuleBook::needs_amplifier(std::size_t index) const {
    return state_->compiled[index].needs_amplifier;
}

std::vector<CaseFailure> RuleBook::run_cases() {
    std::vector<CaseFailure> failures;
    for (std::size_t i = 0; i < state_->rules.size(); ++i)
        for (const RuleCase& one : state_->rules[i].cases)
            if (auto failure = state_->run_case(state_->rules[i], state_->compiled[i], one))
                failures.push_back(std::move(*failure));
    return failures;
}

std::vector<Finding> RuleBook::evaluate(const Candidate& candidate) {
    state_->set_candidate(candidate, false);
    std::vector<Finding> findings;
    for (std::size_t i = 0; i < state_->rules.size(); ++i) {
        if (state_->compiled[i].needs_amplifier && candidate.amplifier == nullptr) continue;
        if (const auto& found = state_->run(i)) findings.push_back(*found);
    }
    return findings;
}

std::vector<Finding> RuleBook::evaluate_tap_rules(const Candidate& candidate) {
    state_->set_candidate(candidate, true);
    std::vector<Finding> findings;
    for (std::size_t i = 0; i < state_->rules.size(); ++i) {
        if (!state_->compiled[i].is_tap_rule) continue;
        if (const auto& found = state_->run(i)) findings.push_back(*found);
    }
    return findings;
}

}  // namespace tapbook
