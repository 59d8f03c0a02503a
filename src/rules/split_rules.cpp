// Only stops and cares are looked for: a verdict asks for nothing else.
#include "rules/split_rules.h"

#include <algorithm>

#include "rules/tap_key.h"

namespace tapbook {
namespace {

constexpr std::size_t most_kept_kinds = 4096;  // of taps, for one rule: its words may be many after all

// Volts are another at every tap; what the job asks for is the same at all.
bool has_few_values(const Column& column) {
    return column.type != "REAL" || column.relation == "job";
}

bool reads_chain(const Column& column) {
    return column.relation == "level" && !is_of_part_alone(column);
}

}  // namespace

SplitRules::One SplitRules::one_of(const Rule& rule, PlainCondition condition) {
    const auto grave = [](Effect effect) {
        return effect == Effect::stop ? Said::stop : effect == Effect::care ? Said::care : Said::nothing;
    };
    const auto worth = [](Unknown unknown) {
        return unknown == Unknown::stop ? Said::stop : unknown == Unknown::care ? Said::care : Said::nothing;
    };
    One one{std::move(condition), grave(rule.effect), worth(rule.unknown)};
    one.is_kept = true;
    for (const Column* column : one.condition.reads()) {
        one.reads_level = one.reads_level || reads_chain(*column);
        if (is_of_tap(column->relation)) one.of_tap.push_back(column);
        one.is_kept =
            one.is_kept && (is_of_tap(column->relation) ? has_few_values(*column) : is_of_part_alone(*column));
    }
    return one;
}

std::optional<SplitRules> SplitRules::of(const RuleBook& rules, bool has_amplifier) {
    SplitRules split;
    for (std::size_t i = 0; i < rules.rules().size(); ++i) {
        const Rule& rule = rules.rules()[i];
        if (rule.off || !rules.is_about(i).empty()) continue;
        if (rules.needs_amplifier(i) && !has_amplifier) continue;
        auto condition = rules.is_plain(i) ? PlainCondition::read(rule.when) : std::nullopt;
        if (!condition) return std::nullopt;
        One one = one_of(rule, std::move(*condition));
        if (one.fires != Said::nothing || one.unsettled != Said::nothing) split.rules_.push_back(std::move(one));
    }
    const auto effort = [](const One& rule) { return rule.is_kept ? 0 : rule.reads_level ? 2 : 1; };
    std::stable_sort(split.rules_.begin(), split.rules_.end(),
                     [&](const One& a, const One& b) { return effort(a) < effort(b); });
    return split;
}

void SplitRules::add(Effects& all, Said said) {
    if (said == Said::stop) all.verdict = Verdict::no;
    if (said != Said::care) return;
    ++all.cares;
    if (all.verdict == Verdict::fits) all.verdict = Verdict::care;
}

// Whether it says the same for every part; then that is added to what is certain of the tap.
bool SplitRules::foresee(std::size_t rule, std::size_t pairs) {
    using Foreseen = PlainCondition::Foreseen;
    const One& one = rules_[rule];
    std::vector<Said> said;
    for (std::size_t i = 0; i < pairs; ++i) {
        const Foreseen foreseen = one.condition.foreseen(values_[i]);
        if (foreseen == Foreseen::open) return false;
        said.push_back(foreseen == Foreseen::fires       ? one.fires
                       : foreseen == Foreseen::unsettled ? one.unsettled
                                                         : Said::nothing);
    }
    Said gravest = Said::nothing;
    for (std::size_t i = 0; i < pairs; ++i) {
        gravest = std::max(gravest, said[i]);
        add(of_tap_[i], gravest);
    }
    return true;
}

// What was said of each part at taps with these words.
void SplitRules::find_kept(std::size_t rule, std::size_t pairs) {
    One& one = rules_[rule];
    std::vector<SaidOfParts*>& kept = kept_[rule];
    kept.assign(pairs, nullptr);
    if (!one.is_kept) return;
    for (std::size_t i = 0; i < pairs; ++i) {
        std::string key = std::to_string(pairs);
        for (const Column* column : one.of_tap) append_value(values_[i].of(*column), key);
        auto found = one.kept.find(key);
        if (found == one.kept.end()) {
            if (one.kept.size() == most_kept_kinds) continue;
            found = one.kept.emplace(std::move(key), SaidOfParts()).first;
        }
        kept[i] = &found->second;  // stays where it is, whatever is added
    }
}

void SplitRules::look_at(std::span<const Candidate> pairs) {
    if (values_.size() < pairs.size()) values_.resize(pairs.size());
    of_tap_.assign(pairs.size(), {});
    for (std::size_t i = 0; i < pairs.size(); ++i) values_[i].look_at(pairs[i]);
    open_.clear();
    is_open_.assign(rules_.size(), false);
    kept_.resize(rules_.size());
    for (std::size_t rule = 0; rule < rules_.size(); ++rule) {
        if (foresee(rule, pairs.size())) continue;
        open_.push_back(rule);
        is_open_[rule] = true;
        find_kept(rule, pairs.size());
    }
}

SplitRules::Said SplitRules::ask(std::size_t rule, std::size_t pair, Asked& asked) {
    const One& one = rules_[rule];
    if (one.reads_level && !asked.has_level) {
        for (Candidate& part : asked.parts) asked.make_level(part);
        asked.has_level = true;
    }
    const auto truth = one.condition.truth(values_[pair]);
    return !truth ? one.unsettled : *truth ? one.fires : Said::nothing;
}

SplitRules::Said SplitRules::said(std::size_t rule, std::size_t pair, Asked& asked) {
    SaidOfParts* kept = kept_[rule][pair];
    if (kept == nullptr) return ask(rule, pair, asked);
    if (kept->size() <= asked.number) kept->resize(asked.number + 1, Said::not_asked);
    Said& one = (*kept)[asked.number];
    if (one == Said::not_asked) one = ask(rule, pair, asked);
    return one;
}

SplitRules::Said SplitRules::gravest(std::size_t rule, Asked& asked) {
    Said gravest = Said::nothing;
    for (std::size_t i = 0; i < asked.parts.size() && gravest != Said::stop; ++i)
        gravest = std::max(gravest, said(rule, i, asked));
    return gravest;
}

// A part that does not suit is mostly spoken against by the rule that did so at the tap before: that one is asked
// first.
Effects SplitRules::of_part(std::span<Candidate> parts, std::size_t number, Extent extent,
                            const MakeLevel& make_level) {
    Effects all = of_tap(parts.size());
    const bool until_stop = extent == Extent::until_stop;
    if (until_stop && all.verdict == Verdict::no) return all;
    for (std::size_t i = 0; i < parts.size(); ++i) values_[i].look_at_part(parts[i]);
    Asked asked{parts, number, make_level};
    if (stopped_by_.size() <= number) stopped_by_.resize(number + 1);
    std::optional<std::size_t>& before = stopped_by_[number];
    if (until_stop && before && is_open_[*before] && gravest(*before, asked) == Said::stop) {
        all.verdict = Verdict::no;
        return all;
    }
    for (const std::size_t rule : open_) {
        add(all, gravest(rule, asked));
        if (!until_stop || all.verdict != Verdict::no) continue;
        before = rule;
        return all;
    }
    return all;
}

}  // namespace tapbook
