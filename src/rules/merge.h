// How do the answers about several pairs become one list? Of one rule the gravest answer counts once, with the pair it
// is about; something good must hold for every pair.
#pragma once

#include <cstddef>
#include <span>
#include <vector>

#include "rules/rule_book.h"

namespace tapbook {

struct PairAnswer {
    std::size_t pair = 0;  // which of the pairs, from 0
    RuleAnswer answer;
};

// Stops, cares, good, info; within these the order of the rules. Each pair's answers are in that order too.
std::vector<PairAnswer> merged(std::span<const std::vector<RuleAnswer>> of_pairs);

// The answers sorted by effect, otherwise as they are.
std::vector<RuleAnswer> in_order(std::vector<RuleAnswer> answers);

}  // namespace tapbook
