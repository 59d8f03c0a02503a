// What do the tests of the shelf plan with? Small inputs by hand, and random ones.
#pragma once

#include <random>
#include <string>
#include <vector>

#include "shelf/cover.h"
#include "shelf/shelf.h"

namespace tapbook::fixture {

// A system with so many jobs a year, given as a forecast: then the demand is known to the digit. `suits`: converters
// that fit.
inline ShelfSystem system_with(std::string id, double jobs_per_year, std::vector<std::uint32_t> suits) {
    ShelfSystem one;
    one.label = "car " + id;
    one.id = std::move(id);
    one.forecast_per_year = jobs_per_year;
    for (const std::uint32_t converter : suits) one.choices.push_back({.converter = converter, .suits = Suits::fits});
    return one;
}

inline StockModel converter_with(std::string name, std::optional<std::int64_t> cost_cents = 1000) {
    StockModel one;
    one.name = std::move(name);
    one.cost_cents = cost_cents;
    one.lead_days = 7;
    return one;
}

// Row i weighs weights[i] and is covered by the columns of which sets[column] holds i (counted from 1).
inline ShelfInput input_of(const std::vector<std::vector<int>>& sets, const std::vector<double>& weights) {
    ShelfInput input;
    for (std::size_t column = 0; column < sets.size(); ++column)
        input.converters.push_back(converter_with(std::string(1, static_cast<char>('a' + column / 26)) +
                                                  static_cast<char>('a' + column % 26)));
    for (std::size_t row = 0; row < weights.size(); ++row) {
        input.systems.push_back(system_with("row-" + std::to_string(row + 1), weights[row], {}));
        for (std::uint32_t column = 0; column < sets.size(); ++column)
            for (const int covered_row : sets[column])
                if (covered_row == static_cast<int>(row + 1))
                    input.systems[row].choices.push_back({.converter = column, .suits = Suits::fits});
    }
    return input;
}

inline PlanAsk at_most(int models) {
    PlanAsk ask;
    ask.models.at_most = models;
    return ask;
}

inline std::vector<std::string> names_of(const ShelfPlan& plan) {
    std::vector<std::string> names;
    for (const KeptModel& model : plan.models) names.push_back(model.name);
    std::sort(names.begin(), names.end());
    return names;
}

// The Steiner triple system on 3 times as many points, from one on n points 0..n-1 (columns of OR instances "stn"): the
// points are (point, third); {(i,0),(i,1),(i,2)}, {(i,t),(j,t),(k,t)} in all six mixed ways.
inline std::vector<std::vector<int>> tripled(const std::vector<std::vector<int>>& triples, int points) {
    std::vector<std::vector<int>> all;
    for (int i = 0; i < points; ++i) all.push_back({i, i + points, i + 2 * points});
    for (const auto& t : triples) {
        for (int third = 0; third < 3; ++third)
            all.push_back({t[0] + third * points, t[1] + third * points, t[2] + third * points});
        for (int first = 0; first < 3; ++first)
            for (int second = 0; second < 3; ++second)
                if (first != second)
                    all.push_back(
                        {t[0] + first * points, t[1] + second * points, t[2] + (3 - first - second) * points});
    }
    return all;
}

// A random cover question with up to `columns` columns and `rows` rows, equal weights and costs often.
inline ShelfInput random_input(std::mt19937& random, int columns, int rows) {
    const auto upto = [&](int most) { return static_cast<int>(random() % static_cast<unsigned>(most + 1)); };
    ShelfInput input;
    const int count = 1 + upto(columns - 1);
    for (int c = 0; c < count; ++c) {
        StockModel& one = input.converters.emplace_back(converter_with("m" + std::to_string(c), 100 * upto(4)));
        one.pack = 1 + upto(2);
        one.on_hand = upto(1) * upto(2);
    }
    const int systems = 1 + upto(rows - 1), density = 1 + upto(4);
    for (int s = 0; s < systems; ++s) {
        ShelfSystem& one = input.systems.emplace_back(system_with("s" + std::to_string(s), upto(6), {}));
        for (std::uint32_t c = 0; c < input.converters.size(); ++c)
            if (upto(5) < density)
                one.choices.push_back({.converter = c, .suits = upto(3) == 0 ? Suits::care : Suits::fits});
    }
    input.systems[0].forecast_per_year = 1 + upto(3);
    return input;
}

}  // namespace tapbook::fixture
