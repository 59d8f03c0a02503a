// Which columns cover most, no more than so many of them, or for no more than so much money? Exact, by branch and
// bound.
//
// Coverage is submodular: what a column adds only falls as others are chosen. So what is covered plus the largest gains
// that still have room is a bound (Nemhauser, Wolsey and Fisher 1978). Among those that cover as much the cheapest is
// taken, then the one with fewest columns, then the one whose columns come first in Cover's order.
#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <vector>

#include "shelf/cover.h"

namespace tapbook {

struct CoverLimit {
    int at_most = 0;                     // columns
    std::optional<std::int64_t> budget;  // sum of their costs
};

struct BestCover {
    std::vector<std::uint32_t> columns;  // ascending
    std::int64_t weight = 0;             // covered
    std::int64_t cost = 0;
    std::int64_t bound = 0;  // nothing within the limit covers more
    bool proved = false;     // then bound is weight; between choices that cover as much the best found counts
    std::int64_t steps = 0;
};

// Which of two is wanted more: by weight, cost, number, order of columns.
bool is_better(const BestCover& a, const BestCover& b);

// The best, or, after `effort` steps, the best found with its bound. A step is one row looked at for one column.
// `start`: columns within the limit to begin with, such as what another search found.
BestCover best_cover(const Cover& cover, const CoverLimit& limit, std::int64_t effort,
                     std::span<const std::uint32_t> start = {});

// What a quick search finds: column by column the one that adds most (for its cost, when there is a budget), then
// single columns exchanged while that helps. No bound.
BestCover quick_cover(const Cover& cover, const CoverLimit& limit);

// The columns without those whose rows the others cover as well, the dearest first; with weight and cost. No bound.
BestCover trimmed(const Cover& cover, std::vector<std::uint32_t> columns);

}  // namespace tapbook
