// Which columns cover most within a limit? Depth first, the column that adds most before the others; a branch is left
// when its bound cannot win. (best_cover.h says why the bound holds.)
#include "shelf/best_cover.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>

#include "shelf/cover_state.h"
#include "shelf/row_prices.h"

namespace tapbook {

namespace {

// A column that may still be chosen, and what it adds.
struct Open {
    std::uint32_t column = 0;
    std::int64_t gain = 0, cost = 0;
};

class Search {
  public:
    Search(const Cover& cover, const CoverLimit& limit, std::int64_t effort, BestCover first,
           std::vector<std::int64_t> prices, std::int64_t steps_before)
        : cover_(cover),
          limit_(limit),
          effort_(effort),
          sorted_(steps_before),
          priced_(!prices.empty()),
          state_(cover, std::move(prices)),
          best_(std::move(first)) {}

    BestCover run() {
        std::vector<Open> all(cover_.costs.size());
        for (std::uint32_t column = 0; column < all.size(); ++column) all[column].column = column;
        branch(all);
        best_.bound = std::max(best_.weight, open_bound_);
        best_.proved = best_.bound == best_.weight;
        best_.steps = steps();
        return best_;
    }

  private:
    std::int64_t steps() const { return state_.steps() + sorted_; }
    std::size_t room() const { return static_cast<std::size_t>(limit_.at_most) - chosen_.size(); }
    std::int64_t money() const {
        return limit_.budget ? *limit_.budget - cost_ : std::numeric_limits<std::int64_t>::max();
    }

    void branch(const std::vector<Open>& before);
    void take_if_better();
    std::vector<Open> still_open(const std::vector<Open>& before);
    std::int64_t bound_from(const std::vector<Open>& open, std::size_t first) const;
    std::int64_t priced_bound_from(const std::vector<Open>& open, std::size_t first);
    bool may_win(const std::vector<Open>& open, std::size_t first, std::int64_t bound) const;
    bool tie_may_win(const std::vector<Open>& open, std::size_t first) const;

    const Cover& cover_;
    const CoverLimit& limit_;
    std::int64_t effort_, sorted_ = 0, cost_ = 0, open_bound_ = 0;
    bool priced_ = false;
    CoverState state_;
    BestCover best_;
    std::vector<std::uint32_t> chosen_;
    std::vector<std::int64_t> sums_;
    bool tired_ = false;
};

// By what is added, or added for the money; then in the order of preference.
bool sooner_by_gain(const Open& a, const Open& b) {
    return a.gain != b.gain ? a.gain > b.gain : a.column < b.column;
}
bool sooner_by_worth(const Open& a, const Open& b) {
    const long double left = static_cast<long double>(a.gain) * b.cost,
                      right = static_cast<long double>(b.gain) * a.cost;
    return left != right ? left > right : sooner_by_gain(a, b);
}

std::vector<Open> Search::still_open(const std::vector<Open>& before) {
    std::vector<Open> open;
    open.reserve(before.size());
    for (const Open& one : before)
        if (const std::int64_t gain = state_.gain(one.column); gain > 0 && cover_.costs[one.column] <= money())
            open.push_back({.column = one.column, .gain = gain, .cost = cover_.costs[one.column]});
    std::ranges::sort(open, limit_.budget ? sooner_by_worth : sooner_by_gain);
    sorted_ += static_cast<std::int64_t>(before.size());
    return open;
}

// The largest gains that have room; with a budget what the money buys when the last column may be cut (in thousandths
// of the smallest unit nothing is lost by rounding up).
std::int64_t Search::bound_from(const std::vector<Open>& open, std::size_t first) const {
    std::int64_t bound = state_.weight();
    if (!limit_.budget) {
        for (std::size_t i = first; i < std::min(open.size(), first + room()); ++i) bound += open[i].gain;
        return bound;
    }
    std::int64_t left = money();
    for (std::size_t i = first; i < open.size() && left >= 0; ++i) {
        if (open[i].cost > left) {
            const long double part = static_cast<long double>(left) / static_cast<long double>(open[i].cost);
            return bound + static_cast<std::int64_t>(std::ceil(part * static_cast<long double>(open[i].gain)));
        }
        bound += open[i].gain;
        left -= open[i].cost;
    }
    return bound;
}

// The same by the prices of the rows (row_prices.h).
std::int64_t Search::priced_bound_from(const std::vector<Open>& open, std::size_t first) {
    const std::size_t count = open.size() - first, taken = std::min(room(), count);
    sums_.clear();
    for (std::size_t i = first; i < open.size(); ++i) sums_.push_back(state_.price(open[i].column));
    std::ranges::partial_sort(sums_, sums_.begin() + static_cast<std::ptrdiff_t>(taken), std::greater<>());
    sorted_ += static_cast<std::int64_t>(count);
    return std::accumulate(sums_.begin(), sums_.begin() + static_cast<std::ptrdiff_t>(taken),
                           state_.weight() + state_.above_prices());
}

// Could a choice that covers no more than the best win by cost, number or order? The cheapest conceivable one is looked
// at: the largest gains, and among equal ones those that come first. REQUIRES: no budget, and bound_from(first) is the
// best weight.
bool Search::tie_may_win(const std::vector<Open>& open, std::size_t first) const {
    BestCover conceivable{.columns = chosen_, .weight = best_.weight, .cost = cost_};
    for (std::size_t i = first; i < std::min(open.size(), first + room()); ++i) {
        conceivable.columns.push_back(open[i].column);
        conceivable.cost += open[i].cost;
    }
    std::ranges::sort(conceivable.columns);
    return is_better(conceivable, best_);
}

bool Search::may_win(const std::vector<Open>& open, std::size_t first, std::int64_t bound) const {
    if (bound != best_.weight) return bound > best_.weight;
    if (!limit_.budget) return tie_may_win(open, first);
    std::int64_t cheapest = std::numeric_limits<std::int64_t>::max();
    for (std::size_t i = first; i < open.size(); ++i) cheapest = std::min(cheapest, open[i].cost);
    return cost_ + cheapest <= best_.cost;
}

void Search::take_if_better() {
    BestCover here{.columns = chosen_, .weight = state_.weight(), .cost = cost_};
    std::ranges::sort(here.columns);
    if (is_better(here, best_)) best_ = std::move(here);
}

void Search::branch(const std::vector<Open>& before) {
    take_if_better();
    if (room() == 0) return;
    const std::vector<Open> open = still_open(before);
    for (std::size_t i = 0; i < open.size(); ++i) {
        std::int64_t bound = bound_from(open, i);
        if (!may_win(open, i, bound)) return;
        if (priced_ && bound >= best_.weight) bound = std::min(bound, priced_bound_from(open, i));
        if (bound < best_.weight) return;
        if (tired_ || steps() > effort_) {
            tired_ = true;
            open_bound_ = std::max(open_bound_, bound);
            return;
        }
        chosen_.push_back(open[i].column);
        cost_ += open[i].cost;
        state_.choose(open[i].column);
        branch({open.begin() + static_cast<std::ptrdiff_t>(i) + 1, open.end()});
        state_.drop(open[i].column);
        cost_ -= open[i].cost;
        chosen_.pop_back();
    }
}

}  // namespace

bool is_better(const BestCover& a, const BestCover& b) {
    if (a.weight != b.weight) return a.weight > b.weight;
    if (a.cost != b.cost) return a.cost < b.cost;
    if (a.columns.size() != b.columns.size()) return a.columns.size() < b.columns.size();
    return a.columns < b.columns;
}

BestCover best_cover(const Cover& cover, const CoverLimit& limit, std::int64_t effort,
                     std::span<const std::uint32_t> start) {
    BestCover first = quick_cover(cover, limit);
    if (BestCover given = trimmed(cover, {start.begin(), start.end()}); is_better(given, first))
        first = std::move(given);
    std::int64_t steps = 0;
    std::vector<std::int64_t> prices;
    if (!limit.budget && limit.at_most > 0) prices = row_prices(cover, limit.at_most, first.weight, effort / 4, steps);
    return Search(cover, limit, effort, std::move(first), std::move(prices), steps).run();
}

}  // namespace tapbook
