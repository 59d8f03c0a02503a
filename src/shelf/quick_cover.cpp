// Which columns cover much, found at once? Greedy, then single columns exchanged. Where the exact search begins.
#include <algorithm>

#include "shelf/best_cover.h"
#include "shelf/cover_state.h"

namespace tapbook {

namespace {

bool has_room(const Cover& cover, const CoverLimit& limit, const BestCover& now, std::uint32_t column) {
    return static_cast<int>(now.columns.size()) < limit.at_most &&
           (!limit.budget || now.cost + cover.costs[column] <= *limit.budget);
}

// The column that adds most, by itself or for its cost; none when nothing has room or adds.
std::optional<std::uint32_t> next_column(const Cover& cover, const CoverLimit& limit, const CoverState& state,
                                         const BestCover& now, bool for_money) {
    std::optional<std::uint32_t> best;
    for (std::uint32_t column = 0; column < cover.costs.size(); ++column) {
        if (state.gain(column) <= 0 || !has_room(cover, limit, now, column)) continue;
        if (!best) {
            best = column;
            continue;
        }
        const auto worth = [&](std::uint32_t c, std::uint32_t other) {
            return static_cast<long double>(state.gain(c)) *
                   static_cast<long double>(for_money ? cover.costs[other] : 1);
        };
        if (worth(column, *best) > worth(*best, column)) best = column;
    }
    return best;
}

void add(const Cover& cover, CoverState& state, BestCover& now, std::uint32_t column) {
    state.choose(column);
    now.columns.push_back(column);
    now.cost += cover.costs[column];
    now.weight = state.weight();
}

BestCover greedy(const Cover& cover, const CoverLimit& limit, bool for_money) {
    CoverState state(cover);
    BestCover now;
    while (const auto column = next_column(cover, limit, state, now, for_money)) add(cover, state, now, *column);
    return now;
}

// One round of exchanges: each chosen column against whatever then adds most, or as much for less. True when one
// helped.
bool exchange(const Cover& cover, const CoverLimit& limit, BestCover& now) {
    CoverState state(cover);
    for (const std::uint32_t column : now.columns) state.choose(column);
    for (std::size_t i = 0; i < now.columns.size(); ++i) {
        const std::uint32_t out = now.columns[i];
        BestCover without = now;
        without.columns.erase(without.columns.begin() + static_cast<std::ptrdiff_t>(i));
        without.cost -= cover.costs[out];
        state.drop(out);
        const auto in = next_column(cover, limit, state, without, false);
        const std::int64_t weight = in ? state.gain(*in) + state.weight() : 0;
        const bool is_cheaper = in && weight == now.weight && cover.costs[*in] < cover.costs[out];
        if (weight > now.weight || is_cheaper) {
            add(cover, state, without, *in);
            now = std::move(without);
            return true;
        }
        state.choose(out);
    }
    return false;
}

}  // namespace

BestCover trimmed(const Cover& cover, std::vector<std::uint32_t> columns) {
    CoverState state(cover);
    BestCover now;
    std::ranges::sort(columns);
    columns.erase(std::ranges::unique(columns).begin(), columns.end());
    for (const std::uint32_t column : columns) state.choose(column);
    // From the back: the dearest stand last. What is of no use alone may still be needed once another one is gone.
    for (std::size_t i = columns.size(); i-- > 0;) {
        const std::int64_t before = state.weight();
        state.drop(columns[i]);
        if (state.weight() == before)
            columns.erase(columns.begin() + static_cast<std::ptrdiff_t>(i));
        else
            state.choose(columns[i]);
    }
    now.columns = std::move(columns);
    now.weight = state.weight();
    for (const std::uint32_t column : now.columns) now.cost += cover.costs[column];
    return now;
}

BestCover quick_cover(const Cover& cover, const CoverLimit& limit) {
    BestCover best;
    for (const bool for_money : {false, true}) {
        if (for_money && !limit.budget) break;
        BestCover now = greedy(cover, limit, for_money);
        for (int rounds = 0; rounds < 50 && exchange(cover, limit, now); ++rounds) {
        }
        now = trimmed(cover, std::move(now.columns));
        if (is_better(now, best)) best = std::move(now);
    }
    return best;
}

}  // namespace tapbook
