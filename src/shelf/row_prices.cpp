// Which prices of the rows make the bound lowest? (row_prices.h) Steps after Polyak, halved where nothing improves.
#include "shelf/row_prices.h"

#include <algorithm>
#include <numeric>

namespace tapbook {

namespace {

constexpr int most_rounds = 300, patience = 10;

struct Round {
    double bound = 0;
    std::vector<int> times;  // by row: how many of the dearest columns cover it
};

Round look(const Cover& cover, std::size_t at_most, const std::vector<double>& prices) {
    Round round{.bound = 0, .times = std::vector<int>(cover.rows.size())};
    std::vector<double> sums(cover.rows_of.size());
    for (std::size_t r = 0; r < cover.rows.size(); ++r) {
        round.bound += static_cast<double>(cover.rows[r].weight) - prices[r];
        for (const std::uint32_t column : cover.rows[r].columns) sums[column] += prices[r];
    }
    std::vector<std::uint32_t> order(sums.size());
    std::iota(order.begin(), order.end(), 0u);
    std::ranges::sort(order,
                      [&](std::uint32_t a, std::uint32_t b) { return sums[a] != sums[b] ? sums[a] > sums[b] : a < b; });
    for (std::size_t i = 0; i < std::min(at_most, order.size()); ++i) {
        round.bound += sums[order[i]];
        for (const std::uint32_t r : cover.rows_of[order[i]]) ++round.times[r];
    }
    return round;
}

}  // namespace

std::vector<std::int64_t> row_prices(const Cover& cover, int at_most, std::int64_t at_least, std::int64_t effort,
                                     std::int64_t& steps) {
    std::vector<double> prices, best;
    std::int64_t each = 0;
    for (const Cover::Row& row : cover.rows) {
        prices.push_back(static_cast<double>(row.weight) / static_cast<double>(row.columns.size()));
        each += static_cast<std::int64_t>(row.columns.size()) + 1;
    }
    best = prices;
    double lowest = -1, step = 1;
    int waited = 0;
    for (std::int64_t round = 0; round < std::min<std::int64_t>(most_rounds, effort / (2 * each + 1)); ++round) {
        const Round now = look(cover, static_cast<std::size_t>(at_most), prices);
        steps += 2 * each;
        if (lowest < 0 || now.bound < lowest) {
            waited = now.bound < lowest * (1 - 1e-6) ? 0 : waited;
            lowest = now.bound;
            best = prices;
        } else if (++waited >= patience) {
            step /= 2;
            waited = 0;
            prices = best;
        }
        double square = 0;
        for (const int times : now.times) square += (1 - times) * (1 - times);
        const double above = now.bound - static_cast<double>(at_least);
        if (square == 0 || above <= 0) break;
        for (std::size_t r = 0; r < prices.size(); ++r)
            prices[r] = std::clamp(prices[r] + step * above / square * (1 - now.times[r]), 0.0,
                                   static_cast<double>(cover.rows[r].weight));
    }
    return {best.begin(), best.end()};
}

}  // namespace tapbook
