// What is each row worth to the columns that may cover it, so that the bound on all choices is lowest?
//
// A row that many columns cover would be counted by each of them. With a price u from 0 to its weight w every choice of
// k columns covers no more than the sum of all w - u and the k largest sums of prices (Lagrangian bound; Fisher 1981).
// The best prices are sought by subgradient steps; any prices give a bound that holds.
#pragma once

#include <cstdint>
#include <vector>

#include "shelf/cover.h"

namespace tapbook {

// One for each row. `at_least`: what a known choice covers. `steps` is raised by the work, which is about `effort` at
// most.
std::vector<std::int64_t> row_prices(const Cover& cover, int at_most, std::int64_t at_least, std::int64_t effort,
                                     std::int64_t& steps);

}  // namespace tapbook
