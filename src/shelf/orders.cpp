// What is ordered today? Line by line all sums of money that may make sense are kept, each with the most jobs it
// serves: what costs more and serves no more is dropped (a knapsack by non-dominated states).
#include "shelf/orders.h"

#include <algorithm>

#include "shelf/levels.h"

namespace tapbook {

namespace {

struct Spent {
    std::int64_t cents = 0;
    double jobs = 0;         // served at once, a year
    std::size_t before = 0;  // the state of the line before it that this one continues
    int packs = 0;           // of the newest line
};

// More states than this are thinned out: a shop never has them, and what is lost is less than what a cent buys.
constexpr std::size_t most_states = 100'000;

std::vector<Spent> with_line(const std::vector<Spent>& before, const OrderLine& line, std::int64_t budget) {
    std::vector<Spent> all;
    for (int packs = packs_missing(line); packs >= 0; --packs) {
        const std::int64_t cents = packs * line.pack_cents;
        const double jobs = line.jobs_per_year * fill_rate(line.seen_by_jobs, line.there + packs * line.pack);
        for (std::size_t i = 0; i < before.size() && before[i].cents + cents <= budget; ++i)
            all.push_back(
                {.cents = before[i].cents + cents, .jobs = before[i].jobs + jobs, .before = i, .packs = packs});
    }
    std::ranges::stable_sort(
        all, [](const Spent& a, const Spent& b) { return a.cents != b.cents ? a.cents < b.cents : a.jobs > b.jobs; });
    std::vector<Spent> kept;
    for (const Spent& one : all)
        if (kept.empty() || one.jobs > kept.back().jobs + 1e-12) kept.push_back(one);
    for (std::size_t step = 2; kept.size() > most_states; ++step)
        for (std::size_t i = kept.size() - 1; i > 0 && kept.size() > most_states; i -= std::min(i, step))
            kept.erase(kept.begin() + static_cast<std::ptrdiff_t>(i) - 1);
    return kept;
}

}  // namespace

int packs_missing(const OrderLine& line) {
    return std::max(0, line.keep - line.there + line.pack - 1) / line.pack;
}

std::vector<int> packs_to_order(std::span<const OrderLine> lines, std::optional<std::int64_t> budget_cents) {
    std::vector<int> packs;
    std::int64_t all = 0;
    for (const OrderLine& line : lines) {
        packs.push_back(packs_missing(line));
        all += packs.back() * line.pack_cents;
    }
    if (!budget_cents || all <= *budget_cents) return packs;
    std::vector<std::vector<Spent>> states{{Spent{}}};
    for (const OrderLine& line : lines) states.push_back(with_line(states.back(), line, *budget_cents));
    std::size_t at = states.back().size() - 1;
    for (std::size_t i = lines.size(); i-- > 0;) {
        packs[i] = states[i + 1][at].packs;
        at = states[i + 1][at].before;
    }
    return packs;
}

}  // namespace tapbook
