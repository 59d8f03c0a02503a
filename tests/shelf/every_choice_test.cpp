// Is the choice of models the best of all? On thousands of small random shops every set of models is tried.
#include "every_choice.h"

#include <catch2/catch.hpp>

#include "shelf/choose_models.h"
#include "shelf/planned.h"

using namespace tapbook;
using namespace tapbook::fixture;
using Catch::Matchers::WithinAbs;

namespace {

constexpr double care_penalty = 0.25;

double all_jobs(const ShelfInput& input) {
    double jobs = 0;
    for (const ShelfSystem& system : input.systems) jobs += *system.forecast_per_year;
    return jobs;
}

// Only the choice: levels have tests of their own.
struct Chosen {
    double covered = 0;
    std::int64_t cost = 0;
    int models = 0;
    bool proved = false;
    std::optional<bool> reached;
};

Chosen choice_for(const ShelfInput& input, PlanAsk ask) {
    ask.care_penalty = care_penalty;
    const Groundwork ground = groundwork_of(input, ask);
    const ChosenModels chosen = choose_models(ground.cover, ask, {});
    return {.covered = static_cast<double>(chosen.best.weight) / weight_per_job,
            .cost = chosen.best.cost,
            .models = static_cast<int>(chosen.best.columns.size()),
            .proved = chosen.best.proved,
            .reached = chosen.reached};
}

}  // namespace

TEST_CASE("no set of as many models covers more, or as much for less money, in 2,000 small shops") {
    std::mt19937 random(11);
    for (int trial = 0; trial < 2000; ++trial) {
        const ShelfInput input = random_input(random, 9, 12);
        const int most = static_cast<int>(random() % 5);
        const auto best = best_of_all(
            input, care_penalty, [&](unsigned set, double) { return __builtin_popcount(set) <= most; },
            [&](unsigned set) { return unit_cost(input, set); });
        const Chosen chosen = choice_for(input, at_most(most));
        INFO("trial " << trial);
        REQUIRE(chosen.proved);
        REQUIRE_THAT(chosen.covered, WithinAbs(best.covered, 1e-6));
        REQUIRE(chosen.cost == best.cost);
        REQUIRE(chosen.models == best.models);
    }
}

TEST_CASE("no set for the same budget covers more, or as much for less money, in 1,500 small shops") {
    std::mt19937 random(12);
    for (int trial = 0; trial < 1500; ++trial) {
        const ShelfInput input = random_input(random, 9, 12);
        PlanAsk ask;
        ask.models.budget_cents = 100 * static_cast<int>(random() % 16);
        const auto best = best_of_all(
            input, care_penalty,
            [&](unsigned set, double) { return first_pack_cost(input, set) <= *ask.models.budget_cents; },
            [&](unsigned set) { return first_pack_cost(input, set); });
        const Chosen chosen = choice_for(input, ask);
        INFO("trial " << trial);
        REQUIRE(chosen.proved);
        REQUIRE_THAT(chosen.covered, WithinAbs(best.covered, 1e-6));
        REQUIRE(chosen.cost == best.cost);
        REQUIRE(chosen.models == best.models);
    }
}

TEST_CASE("no smaller set covers the wanted share, and none of that size covers more, in 1,500 small shops") {
    std::mt19937 random(13);
    for (int trial = 0; trial < 1500; ++trial) {
        const ShelfInput input = random_input(random, 9, 12);
        PlanAsk ask;
        ask.models.share = static_cast<double>(random() % 11) / 10;
        const double wanted = *ask.models.share * all_jobs(input) - 1e-6;
        const double reachable = covered_by(input, (1u << input.converters.size()) - 1, care_penalty);
        const double target = std::min(wanted, reachable - 1e-6);
        int fewest = 99;
        for (unsigned set = 0; set < 1u << input.converters.size(); ++set)
            if (covered_by(input, set, care_penalty) >= target) fewest = std::min(fewest, __builtin_popcount(set));
        const auto best = best_of_all(
            input, care_penalty, [&](unsigned set, double) { return __builtin_popcount(set) <= fewest; },
            [&](unsigned set) { return unit_cost(input, set); });
        const Chosen chosen = choice_for(input, ask);
        INFO("trial " << trial);
        REQUIRE(chosen.proved);
        REQUIRE(chosen.reached == (wanted <= reachable));
        REQUIRE(chosen.models <= fewest);
        REQUIRE_THAT(chosen.covered, WithinAbs(best.covered, 1e-6));
        REQUIRE(chosen.cost == best.cost);
    }
}

TEST_CASE("with its effort used up the search still gives a choice and a bound that no choice passes") {
    std::mt19937 random(14);
    for (int trial = 0; trial < 300; ++trial) {
        const ShelfInput input = random_input(random, 9, 12);
        PlanAsk ask = at_most(3);
        ask.effort = static_cast<int>(random() % 200);
        ask.care_penalty = care_penalty;
        const Groundwork ground = groundwork_of(input, ask);
        const ChosenModels chosen = choose_models(ground.cover, ask, {});
        const auto best = best_of_all(
            input, care_penalty, [&](unsigned set, double) { return __builtin_popcount(set) <= 3; },
            [&](unsigned set) { return unit_cost(input, set); });
        REQUIRE(static_cast<double>(chosen.best.bound) / weight_per_job >= best.covered - 1e-6);
        REQUIRE(static_cast<double>(chosen.best.weight) / weight_per_job <= best.covered + 1e-6);
    }
}
