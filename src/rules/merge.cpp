// Several pairs, one list: the pairs are walked side by side, rule by rule.
#include "rules/merge.h"

#include <algorithm>
#include <optional>

namespace tapbook {
namespace {

// 0 the gravest; something good is the least grave, so that whatever stands against it counts.
int gravity(Effect effect) {
    switch (effect) {
        case Effect::stop:
            return 0;
        case Effect::care:
            return 1;
        case Effect::info:
            return 2;
        case Effect::good:
            break;
    }
    return 3;
}

// The lowest rule that some pair still has an answer of.
std::optional<std::size_t> next_rule(std::span<const std::vector<RuleAnswer>> of_pairs,
                                     const std::vector<std::size_t>& at) {
    std::optional<std::size_t> next;
    for (std::size_t pair = 0; pair < of_pairs.size(); ++pair) {
        if (at[pair] == of_pairs[pair].size()) continue;
        const std::size_t rule = of_pairs[pair][at[pair]].rule;
        next = next ? std::min(*next, rule) : rule;
    }
    return next;
}

}  // namespace

std::vector<PairAnswer> merged(std::span<const std::vector<RuleAnswer>> of_pairs) {
    std::vector<PairAnswer> all;
    std::vector<std::size_t> at(of_pairs.size(), 0);
    while (const auto rule = next_rule(of_pairs, at)) {
        std::optional<PairAnswer> gravest;
        bool silent_somewhere = false;
        for (std::size_t pair = 0; pair < of_pairs.size(); ++pair) {
            if (at[pair] == of_pairs[pair].size() || of_pairs[pair][at[pair]].rule != *rule) {
                silent_somewhere = true;
                continue;
            }
            const RuleAnswer& said = of_pairs[pair][at[pair]++];
            if (!gravest || gravity(said.effect) < gravity(gravest->answer.effect)) gravest = PairAnswer{pair, said};
        }
        if (gravest->answer.effect != Effect::good || !silent_somewhere) all.push_back(*gravest);
    }
    std::stable_sort(all.begin(), all.end(),
                     [](const PairAnswer& a, const PairAnswer& b) { return a.answer.effect < b.answer.effect; });
    return all;
}

std::vector<RuleAnswer> in_order(std::vector<RuleAnswer> answers) {
    std::stable_sort(answers.begin(), answers.end(),
                     [](const RuleAnswer& a, const RuleAnswer& b) { return a.effect < b.effect; });
    return answers;
}

}  // namespace tapbook
