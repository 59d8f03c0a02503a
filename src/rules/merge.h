// How do the answers about several pairs become one list? Of one rule the gravest answer counts once, with the pair it
// is about; something good must hold for every pair.
#pragma once

#include <span>
#include <string>
#include <vector>

#include "rules/rule.h"

namespace tapbook {

struct PairFindings {
    std::string pair;  // whole path; "" for the named tap
    std::vector<Finding> findings;
};

// Stops, cares, good, info; within these the order of the rules. A finding about another pair begins with its circuit.
std::vector<Finding> merged(std::vector<PairFindings> answers, std::span<const Rule> rules);

// The findings sorted by effect, otherwise as they are.
std::vector<Finding> in_order(std::vector<Finding> findings);

}  // namespace tapbook
