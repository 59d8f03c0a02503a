// What is ordered today? What is missing, in whole packs; and when the money does not reach, the packs that save most
// jobs.
#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <vector>

#include "shelf/distributions.h"

namespace tapbook {

struct OrderLine {
    int keep = 0;
    int there = 0;  // on hand and on order
    int pack = 1;
    std::int64_t pack_cents = 0;
    double jobs_per_year = 0;
    Counts seen_by_jobs{{1.0}};  // of what is asked for during delivery
};

// Packs that bring a line to its level.
int packs_missing(const OrderLine& line);

// Packs of each line. Without a budget what is missing; with one the best that it buys: most jobs served at once, then
// least money, then more of the lines that come first.
std::vector<int> packs_to_order(std::span<const OrderLine> lines, std::optional<std::int64_t> budget_cents);

}  // namespace tapbook
