// Only stops and cares are looked for: a verdict asks for nothing else.
#include "rules/split_rules.h"

#include <algorithm>

namespace tapbook {
namespace {

std::optional<Effect> grave(Effect effect) {
    return effect == Effect::stop || effect == Effect::care ? std::optional(effect) : std::nullopt;
}

std::optional<Effect> worth_of(Unknown unknown) {
    switch (unknown) {
        case Unknown::stop:
            return Effect::stop;
        case Unknown::care:
            return Effect::care;
        case Unknown::info:
        case Unknown::silent:
            break;
    }
    return std::nullopt;
}

void add(Effects& all, Effect effect) {
    if (effect == Effect::stop) all.verdict = Verdict::no;
    if (effect != Effect::care) return;
    ++all.cares;
    if (all.verdict == Verdict::fits) all.verdict = Verdict::care;
}

}  // namespace

std::optional<SplitRules> SplitRules::of(const RuleBook& rules, bool has_amplifier) {
    SplitRules split;
    for (std::size_t i = 0; i < rules.rules().size(); ++i) {
        const Rule& rule = rules.rules()[i];
        if (rule.off || !rules.is_about(i).empty()) continue;
        if (rules.needs_amplifier(i) && !has_amplifier) continue;
        auto condition = rules.is_plain(i) ? PlainCondition::read(rule.when) : std::nullopt;
        if (!condition) return std::nullopt;
        if (!grave(rule.effect) && !worth_of(rule.unknown)) continue;
        const bool is_of_tap_only = std::all_of(condition->reads().begin(), condition->reads().end(),
                                                [](const Column* column) { return is_of_tap(column->relation); });
        (is_of_tap_only ? split.tap_rules_ : split.part_rules_)
            .push_back({std::move(*condition), rule.effect, worth_of(rule.unknown)});
    }
    return split;
}

std::optional<Effect> SplitRules::said(const One& rule, CandidateValues& values) {
    const auto truth = rule.condition.truth(values);
    if (!truth) return rule.unsettled;
    return *truth ? grave(rule.effect) : std::nullopt;
}

void SplitRules::look_at(const std::vector<Candidate>& pairs) {
    if (values_.size() < pairs.size()) values_.resize(pairs.size());
    of_tap_.assign(pairs.size(), {});
    for (std::size_t i = 0; i < pairs.size(); ++i) values_[i].look_at(pairs[i]);
    for (const One& rule : tap_rules_) {
        std::optional<Effect> gravest;
        for (std::size_t i = 0; i < pairs.size(); ++i) {
            const auto effect = gravest == Effect::stop ? std::nullopt : said(rule, values_[i]);
            if (effect && (!gravest || *effect == Effect::stop)) gravest = effect;
            if (gravest) add(of_tap_[i], *gravest);
        }
    }
}

Effects SplitRules::of_part(const std::vector<Candidate>& parts, Extent extent) {
    Effects all = of_tap(parts.size());
    const bool is_whole = extent == Extent::whole;
    if (!is_whole && all.verdict == Verdict::no) return all;
    for (std::size_t i = 0; i < parts.size(); ++i) values_[i].look_at_part(parts[i]);
    for (const One& rule : part_rules_) {
        std::optional<Effect> gravest;
        for (std::size_t i = 0; i < parts.size() && gravest != Effect::stop; ++i) {
            const auto effect = said(rule, values_[i]);
            if (effect && (!gravest || *effect == Effect::stop)) gravest = effect;
        }
        if (gravest) add(all, *gravest);
        if (!is_whole && all.verdict == Verdict::no) return all;
    }
    return all;
}

}  // namespace tapbook
