// The slow twin: every set of converters is looked at, system by system, without masks, bounds or whole-number weights.
#pragma once

#include <cmath>

#include "shelf_fixture.h"

namespace tapbook::fixture {

struct EveryChoice {
    double covered = -1;    // jobs a year, with care counted less
    std::int64_t cost = 0;  // what counts in a tie
    int models = 0;
    bool found = false;
};

inline double covered_by(const ShelfInput& input, unsigned set, double care_penalty) {
    double jobs = 0;
    for (const ShelfSystem& system : input.systems) {
        double counts = 0;
        for (const Choice& choice : system.choices)
            if ((set >> choice.converter & 1u) != 0)
                counts = std::max(counts, choice.suits == Suits::fits ? 1.0 : 1 - care_penalty);
        jobs += counts * *system.forecast_per_year;
    }
    return jobs;
}

inline std::int64_t unit_cost(const ShelfInput& input, unsigned set) {
    std::int64_t cost = 0;
    for (std::size_t c = 0; c < input.converters.size(); ++c)
        if ((set >> c & 1u) != 0) cost += input.converters[c].cost_cents.value_or(0);
    return cost;
}

inline std::int64_t first_pack_cost(const ShelfInput& input, unsigned set) {
    std::int64_t cost = 0;
    for (std::size_t c = 0; c < input.converters.size(); ++c) {
        const StockModel& one = input.converters[c];
        if ((set >> c & 1u) != 0 && one.on_hand + one.on_order == 0) cost += one.cost_cents.value_or(0) * one.pack;
    }
    return cost;
}

// The best set for which `allowed(set, covered)` holds, by more covered, less cost, fewer models.
template <class Allowed, class Cost>
EveryChoice best_of_all(const ShelfInput& input, double care_penalty, Allowed allowed, Cost cost_of) {
    constexpr double same = 1e-6;
    EveryChoice best;
    for (unsigned set = 0; set < 1u << input.converters.size(); ++set) {
        const double jobs = covered_by(input, set, care_penalty);
        if (!allowed(set, jobs)) continue;
        const std::int64_t cost = cost_of(set);
        const int models = __builtin_popcount(set);
        const bool better =
            jobs > best.covered + same ||
            (jobs > best.covered - same && (cost < best.cost || (cost == best.cost && models < best.models)));
        if (!best.found || better) best = {.covered = jobs, .cost = cost, .models = models, .found = true};
    }
    return best;
}

}  // namespace tapbook::fixture
