// Is the year verdict the most probable hypothesis? The slow way gives every hypothesis its weight: one value v for all
// years, or old until b and new from b; prior odds as in year_split.h; a car of p points is 3^p times as likely under a
// hypothesis that explains it.
#include "evidence/year_split.h"

#include <catch2/catch.hpp>
#include <set>

#include "evidence/ledgers.h"

using namespace tapbook;
using ledgers::Dice;

namespace {

std::int64_t power_of_3(int exponent) {
    std::int64_t power = 1;
    while (exponent-- > 0) power *= 3;
    return power;
}

template <class Explains>
std::int64_t likelihood(const std::vector<DatedCar>& cars, Explains explains) {
    int points = 0;
    for (const auto& car : cars)
        if (explains(car)) points += car.points;
    return power_of_3(points);
}

// Weights are multiplied by 10 B V (V - 1), so that the priors are whole: 9 B (V - 1) for a value, 1 for a split.
struct Hypotheses {
    std::int64_t best_value = 0, best_split = 0;
    std::set<std::pair<std::string, std::string>> pairs;  // that reach best_split
    std::set<int> break_years;
};

Hypotheses weigh(const std::vector<DatedCar>& cars) {
    std::set<std::string> values;
    int first = 9999, last = 0;
    for (const auto& car : cars) {
        values.insert(car.value);
        first = std::min(first, car.year);
        last = std::max(last, car.year);
    }
    const std::int64_t prior = 9 * std::int64_t{last - first} * (static_cast<std::int64_t>(values.size()) - 1);
    Hypotheses all;
    for (const auto& value : values)
        all.best_value =
            std::max(all.best_value, prior * likelihood(cars, [&](const DatedCar& car) { return car.value == value; }));
    for (const auto& before : values)
        for (const auto& after : values)
            for (int year = first + 1; year <= last && before != after; ++year) {
                const auto weight = likelihood(
                    cars, [&](const DatedCar& car) { return car.value == (car.year < year ? before : after); });
                if (weight < all.best_split) continue;
                if (weight > all.best_split) all.pairs.clear(), all.break_years.clear();
                all.best_split = weight;
                all.pairs.insert({before, after});
                all.break_years.insert(year);
            }
    return all;
}

std::vector<DatedCar> any_cars(Dice& dice) {
    const int change = 2011 + dice.below(5), count = 2 + dice.below(8);
    std::vector<DatedCar> cars;
    for (int i = 0; i < count; ++i) {
        DatedCar car{"", 2010 + dice.below(7), 1 + dice.below(4)};
        car.value = dice.one_in(4) ? dice.one_of<std::string>({"white", "brown", "tan"})
                                   : std::string(car.year < change ? "white" : "brown");
        cars.push_back(car);
    }
    return cars;
}

}  // namespace

TEST_CASE("the year verdict is the most probable hypothesis, at 27 to 1 or more, on 100,000 small ledgers") {
    Dice dice(1979);
    int splits = 0, ties = 0;
    for (int round = 0; round < 100000; ++round) {
        const auto cars = any_cars(dice);
        const auto found = best_year_split(cars);
        const Hypotheses all = weigh(cars);
        INFO("round " << round);
        REQUIRE(found.has_value() == (all.best_split > 0));
        if (!found) continue;
        REQUIRE(is_far_likelier(*found) == (all.best_split >= 27 * all.best_value));
        REQUIRE(found->is_only_pair == (all.pairs.size() == 1));
        REQUIRE(all.pairs.contains({found->old_value, found->new_value}));
        if (!is_far_likelier(*found)) continue;
        ++splits;
        ties += found->is_only_pair ? 0 : 1;
        if (!found->is_only_pair) continue;
        REQUIRE(found->last_old_year < *all.break_years.begin());
        REQUIRE(found->first_new_year >= *all.break_years.rbegin());
    }
    CHECK(splits > 5000);
    CHECK(ties < splits);
}

TEST_CASE("equal calendar years or one value leave nothing to split") {
    CHECK_FALSE(best_year_split({}));
    CHECK_FALSE(best_year_split(std::vector{DatedCar{"white", 2012, 3}, DatedCar{"brown", 2012, 3}}));
    CHECK_FALSE(best_year_split(std::vector{DatedCar{"white", 2012, 3}, DatedCar{"white", 2015, 3}}));
}

TEST_CASE("a gain of 8 points is enough for 27 breaks of two values, and 7 is not") {
    // 3^(8-3) = 243 = 9 x 27 x (2-1)
    CHECK(is_far_likelier({"white", "brown", 2000, 2027, 2, 2, 8, 27, 2, true}));
    CHECK_FALSE(is_far_likelier({"white", "brown", 2000, 2028, 2, 2, 8, 28, 2, true}));
    CHECK_FALSE(is_far_likelier({"white", "brown", 2000, 2027, 2, 2, 7, 27, 2, true}));
    CHECK(is_far_likelier({"white", "brown", 2000, 2001, 2, 2, 5, 1, 2, true}));  // 9 = 9 x 1 x 1
    CHECK(is_far_likelier({"white", "brown", 1900, 2100, 2, 2, 1000, 200, 2000, true}));
    CHECK_FALSE(is_far_likelier({"white", "brown", 2000, 2001, 2, 2, -4, 1, 2, true}));
}
