// Points summed by value and year once; then each break year asks only for the three best values on either side: the
// best pair of different values, and a second pair that equals it, are always among those.
#include "evidence/year_split.h"

#include <algorithm>
#include <cstdint>
#include <map>
#include <set>
#include <utility>
#include <vector>

namespace tapbook {
namespace {

struct Score {
    int points = 0;
    std::string_view value;
};

constexpr std::size_t values_that_matter = 3;

std::vector<Score> best_of(const std::map<std::string_view, int>& points) {
    std::vector<Score> scores;
    for (const auto& [value, sum] : points) scores.push_back({sum, value});
    const auto better = [](const Score& a, const Score& b) {
        return a.points != b.points ? a.points > b.points : a.value < b.value;
    };
    const auto kept = std::min(scores.size(), values_that_matter);
    std::partial_sort(scores.begin(), scores.begin() + static_cast<std::ptrdiff_t>(kept), scores.end(), better);
    scores.resize(kept);
    return scores;
}

using PointsByValue = std::map<std::string_view, int>;

// The pairs of values that explain most points, with the break years at which they do.
struct Leaders {
    int points = -1;
    std::map<std::pair<std::string_view, std::string_view>, std::pair<int, int>> breaks;  // first and last of each pair

    void offer(const Score& old_side, const Score& new_side, int break_year) {
        const int sum = old_side.points + new_side.points;
        if (sum < points || old_side.value == new_side.value) return;
        if (sum > points) breaks.clear();
        points = sum;
        const auto [entry, is_new] = breaks.try_emplace({old_side.value, new_side.value}, break_year, break_year);
        if (!is_new) entry->second.second = break_year;
    }
};

Leaders leaders_of(const std::map<int, PointsByValue>& by_year, PointsByValue later) {
    Leaders leaders;
    PointsByValue earlier;
    for (const auto& [value, points] : later) earlier[value] = 0;
    const int last_year = by_year.rbegin()->first;
    for (int year = by_year.begin()->first; year < last_year; ++year) {
        if (const auto found = by_year.find(year); found != by_year.end())
            for (const auto& [value, points] : found->second) {
                earlier[value] += points;
                later[value] -= points;
            }
        for (const auto& old_side : best_of(earlier))
            for (const auto& new_side : best_of(later)) leaders.offer(old_side, new_side, year + 1);
    }
    return leaders;
}

// Fills cars and years of the sides from the cars that show the value of their side.
void count_sides(YearSplit& split, std::span<const DatedCar> cars, int first_break, int last_break) {
    split.last_old_year = first_break - 1;
    split.first_new_year = last_break;
    int last_old = -1, first_new = -1;
    for (const auto& car : cars) {
        if (car.value == split.old_value && car.year < first_break) {
            ++split.old_cars;
            last_old = std::max(last_old, car.year);
        }
        if (car.value == split.new_value && car.year >= last_break) {
            ++split.new_cars;
            first_new = first_new < 0 ? car.year : std::min(first_new, car.year);
        }
    }
    if (last_old >= 0) split.last_old_year = last_old;
    if (first_new >= 0) split.first_new_year = first_new;
}

}  // namespace

std::optional<YearSplit> best_year_split(std::span<const DatedCar> cars) {
    std::map<int, PointsByValue> by_year;
    PointsByValue all;
    for (const auto& car : cars) {
        by_year[car.year][car.value] += car.points;
        all[car.value] += car.points;
    }
    if (all.size() < 2 || by_year.size() < 2) return std::nullopt;
    const Leaders leaders = leaders_of(by_year, all);
    const auto& [pair, breaks] = *leaders.breaks.begin();
    YearSplit split;
    split.old_value = pair.first;
    split.new_value = pair.second;
    split.is_only_pair = leaders.breaks.size() == 1;
    split.gain = leaders.points - best_of(all).front().points;
    split.breaks = by_year.rbegin()->first - by_year.begin()->first;
    split.values = static_cast<int>(all.size());
    count_sides(split, cars, breaks.first, breaks.second);
    return split;
}

bool is_far_likelier(const YearSplit& split) {
    constexpr int beyond_any_prior = 38;  // 3^38 is more than 9 B (V - 1) can be in 32-bit counts
    const int power = split.gain - 3;
    if (power < 0) return false;
    if (power >= beyond_any_prior) return true;
    std::int64_t odds = 1;
    for (int i = 0; i < power; ++i) odds *= 3;
    return odds >= std::int64_t{9} * split.breaks * (split.values - 1);
}

std::optional<YearSplit> year_split_of(std::span<const DatedCar> cars) {
    constexpr int least_cars = 2;
    auto split = best_year_split(cars);
    if (!split || !split->is_only_pair || !is_far_likelier(*split)) return std::nullopt;
    if (split->old_cars < least_cars || split->new_cars < least_cars) return std::nullopt;
    return split;
}

}  // namespace tapbook
