// Which models does the shop keep? Groundwork (demand, cover), the choice, and what the choice means system by system.
// How many of each is in set_levels.cpp.
#include "shelf/planning.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "shelf/distributions.h"
#include "shelf/plan_checks.h"
#include "shelf/planned.h"
#include "shelf/small_parts.h"

namespace tapbook {

namespace {

constexpr double likely_low = 0.05, likely_high = 0.95;

// With a budget what it costs to have the first pack there, else the price of one.
std::vector<std::int64_t> costs_that_count(const ShelfInput& input, const PlanAsk& ask) {
    std::vector<std::int64_t> costs;
    for (const StockModel& one : input.converters) {
        const std::int64_t cents = one.cost_cents.value_or(0);
        const bool there = one.on_hand + one.on_order > 0;
        costs.push_back(!ask.models.budget_cents ? cents : there ? 0 : cents * one.pack);
    }
    return costs;
}

ShelfState state_of(const ShelfInput& input, const Groundwork& ground) {
    if (input.systems.empty()) return ShelfState::no_systems;
    if (input.converters.empty()) return ShelfState::no_converters;
    if (ground.cover.all_weight == 0) return ShelfState::no_demand;
    if (ground.cover.coverable() + ground.cover.forced_weight == 0) return ShelfState::nothing_fits;
    return ShelfState::planned;
}

std::vector<std::size_t> converters_of(const Cover& cover, const BestCover& choice) {
    std::vector<std::size_t> converters(cover.forced.begin(), cover.forced.end());
    for (const std::uint32_t column : choice.columns) converters.push_back(cover.converters[column]);
    return converters;
}

void take_curve(ShelfPlan& plan, const Cover& cover, const ChosenModels& chosen) {
    const auto share = [&](std::int64_t weight) {
        return static_cast<double>(weight + cover.forced_weight) / static_cast<double>(cover.all_weight);
    };
    for (std::size_t size = 0; size < chosen.curve.size(); ++size) {
        const BestCover& point = chosen.curve[size];
        plan.curve.push_back({.models = static_cast<int>(size + cover.forced.size()),
                              .covered_share = share(point.weight),
                              .bound_share = share(point.bound),
                              .proved = point.proved,
                              .converters = converters_of(cover, point)});
    }
    plan.covered_share = share(chosen.best.weight);
    plan.proved = chosen.best.proved;
    plan.gap = share(std::max(std::min(chosen.best.bound, cover.coverable()), chosen.best.weight)) - plan.covered_share;
    plan.reached = chosen.reached;
    plan.steps = chosen.steps;
    plan.other_search = chosen.other_search;
    plan.other_search_says = chosen.other_search_says;
}

void take_demand(ShelfPlan& plan, const Demand& demand) {
    plan.demand = demand.systems;
    plan.demand_rate = demand.rate;
    plan.cold_start = demand.cold_start;
    plan.jobs_per_year = likely_jobs(demand.shape, demand.rate);
}

// The shares of all jobs that the kept models do, alone and together.
void take_shares(ShelfPlan& plan, const ShelfInput& input, const Groundwork& ground, const PlanAsk& ask) {
    std::vector<bool> all(input.converters.size(), true), kept(input.converters.size(), false);
    for (const KeptModel& model : plan.models) kept[model.converter] = true;
    std::vector<double> alone(input.converters.size());
    const auto all_weight = static_cast<double>(ground.cover.all_weight);
    for (std::size_t i = 0; i < input.systems.size(); ++i) {
        const double share = static_cast<double>(ground.weights[i]) / all_weight;
        for (const Choice& choice : input.systems[i].choices)
            if (kept[choice.converter])
                alone[choice.converter] += share * (choice.suits == Suits::fits ? 1 : 1 - ask.care_penalty);
        // A penalty of one half stands for any: the question is which of the three cases it is.
        const double counts = counts_with(input.systems[i], kept, 0.5);
        if (counts == 0.5) plan.care_share += share;
        if (counts_with(input.systems[i], all, 0.5) == 0) plan.no_converter_share += share;
        if (counts == 0) plan.lost_jobs.without_model += plan.demand[i].jobs_per_year;
    }
    for (KeptModel& model : plan.models) model.covers_share = alone[model.converter];
}

void take_small_parts(ShelfPlan& plan, const ShelfInput& input, const Demand& demand, const PlanAsk& ask) {
    plan.small_parts = reorder(input.small_parts, jobs_expected(input, demand, ask.demand), ask.demand, ask.levels);
    for (const Reorder& part : plan.small_parts) plan.small_order_cents += part.order_cents.value_or(0);
}

void check_forced_cost(const Cover& cover, const PlanAsk& ask) {
    if (ask.models.budget_cents && cover.forced_cost > *ask.models.budget_cents)
        throw ShelfRefused(fmt::format(
            "the models to be kept in any case cost {:.2f}, the budget is {:.2f}: keep fewer in any "
            "case, or raise the budget",
            static_cast<double>(cover.forced_cost) / 100, static_cast<double>(*ask.models.budget_cents) / 100));
}

}  // namespace

Likely likely_jobs(double shape, double rate) {
    if (shape <= 0 || rate <= 0) return {};
    return {.low = gamma_quantile(shape, rate, likely_low),
            .mean = shape / rate,
            .high = gamma_quantile(shape, rate, likely_high)};
}

Groundwork groundwork_of(const ShelfInput& input, const PlanAsk& ask) {
    Groundwork ground;
    ground.demand = demand_of(input, ask.demand);
    for (const SystemDemand& one : ground.demand.systems)
        ground.weights.push_back(std::llround(one.jobs_per_year * weight_per_job));
    CoverAsk cover{.care_penalty = ask.care_penalty, .costs = costs_that_count(input, ask), .with = {}, .without = {}};
    for (const std::string& name : ask.models.with) cover.with.push_back(converter_called(input, name));
    for (const std::string& name : ask.models.without) cover.without.push_back(converter_called(input, name));
    ground.cover = collapse(input, ground.weights, cover);
    return ground;
}

ShelfPlan plan_shelf(const ShelfInput& input, const PlanAsk& ask, const OtherSearch& other_search) {
    check_input(input);
    check_ask(ask, input);
    const Groundwork ground = groundwork_of(input, ask);
    ShelfPlan plan;
    take_demand(plan, ground.demand);
    take_small_parts(plan, input, ground.demand, ask);
    plan.state = state_of(input, ground);
    plan.masks = ground.cover.masks;
    plan.models_left = static_cast<int>(ground.cover.converters.size());
    if (plan.state == ShelfState::no_systems || plan.state == ShelfState::no_converters ||
        plan.state == ShelfState::no_demand)
        return plan;
    check_forced_cost(ground.cover, ask);
    const ChosenModels chosen = choose_models(ground.cover, ask, other_search);
    take_curve(plan, ground.cover, chosen);
    for (const std::size_t converter : converters_of(ground.cover, chosen.best)) {
        KeptModel& model = plan.models.emplace_back();
        model.converter = converter;
        model.name = input.converters[converter].name;
        if (!input.converters[converter].cost_cents) plan.without_cost.push_back(model.name);
    }
    take_shares(plan, input, ground, ask);
    set_levels(plan, input, ground, ask);
    std::vector<std::size_t> kept;
    for (const KeptModel& model : plan.models) kept.push_back(model.converter);
    plan.lost = lost_by_model(input, ground, kept, ask.care_penalty);
    return plan;
}

}  // namespace tapbook
