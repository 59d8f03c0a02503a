// Can this be planned with? (plan_checks.h)
#include "shelf/plan_checks.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <set>

#include "trade/trade.h"

namespace tapbook {

namespace {

[[noreturn]] void refuse(std::string text) {
    throw ShelfRefused(std::move(text));
}

void check_converter(const StockModel& one) {
    if (one.on_hand < 0)
        refuse(fmt::format("{}: {} on the shelf; a shelf cannot hold less than nothing. Count it again", one.name,
                           one.on_hand));
    if (one.on_order < 0)
        refuse(
            fmt::format("{}: {} on order; that cannot be less than nothing. Count it again", one.name, one.on_order));
    if (one.pack < 1) refuse(fmt::format("{}: a pack of {}; a pack holds one at least", one.name, one.pack));
    if (one.cost_cents.value_or(0) < 0)
        refuse(fmt::format("{}: costs {} cents; a price cannot be below zero", one.name, *one.cost_cents));
    if (one.lead_days.value_or(0) < 0)
        refuse(fmt::format("{}: comes after {} days; that cannot be below zero", one.name, *one.lead_days));
}

void check_system(const ShelfSystem& system, const ShelfInput& input, std::vector<std::size_t>& last_seen,
                  std::size_t number) {
    if (const double jobs = system.forecast_per_year.value_or(0); !(jobs >= 0) || std::isinf(jobs))
        refuse(fmt::format("{}: {} jobs a year are forecast; that must be 0 or more", system.label, jobs));
    for (const Choice& choice : system.choices) {
        if (choice.converter >= input.converters.size())
            refuse(fmt::format("{}: suits converter {}, but there are only {}", system.label, choice.converter,
                               input.converters.size()));
        if (std::exchange(last_seen[choice.converter], number) == number)
            refuse(fmt::format("{}: {} is named twice", system.label, input.converters[choice.converter].name));
    }
}

void want(bool holds, const char* name, double value, const char* range) {
    if (!holds) refuse(fmt::format("{} {}: has to be {}", name, value, range));
}

}  // namespace

void check_input(const ShelfInput& input) {
    std::set<std::string_view> names;
    for (const StockModel& one : input.converters) {
        check_converter(one);
        if (!names.insert(one.name).second) refuse(fmt::format("{}: two converters are called so", one.name));
    }
    std::vector<std::size_t> last_seen(input.converters.size(), 0);
    for (std::size_t i = 0; i < input.systems.size(); ++i) check_system(input.systems[i], input, last_seen, i + 1);
    if (input.recorded_days.value_or(0) < 0)
        refuse(fmt::format("jobs recorded for {} days; that cannot be below zero", *input.recorded_days));
}

void check_demand_ask(const DemandAsk& ask) {
    want(ask.half_life_days > 0, "half-life in days", ask.half_life_days, "more than 0");
    want(ask.prior_jobs >= 0, "jobs believed in", ask.prior_jobs, "0 or more");
    want(ask.cold_jobs_per_year > 0, "jobs a year to begin with", ask.cold_jobs_per_year, "more than 0");
    want(ask.cold_worth_years > 0, "years that this belief is worth", ask.cold_worth_years, "more than 0");
}

void check_levels_ask(const LevelsAsk& ask) {
    want(ask.fill_rate > 0 && ask.fill_rate < 1, "fill rate", ask.fill_rate,
         "above 0 and below 1: no shelf is large enough to serve every job");
    want(ask.lost_job_cents.value_or(0) >= 0, "cents that a lost job costs",
         static_cast<double>(ask.lost_job_cents.value_or(0)), "0 or more");
    want(ask.holding_per_year >= 0, "share of its cost that a year on the shelf costs", ask.holding_per_year,
         "0 or more");
    want(ask.usual_lead_days >= 0, "usual days of delivery", ask.usual_lead_days, "0 or more");
    want(ask.review_days >= 0, "days between two orders", ask.review_days, "0 or more");
    want(ask.order_budget_cents.value_or(0) >= 0, "cents for today's orders",
         static_cast<double>(ask.order_budget_cents.value_or(0)), "0 or more");
}

void check_ask(const PlanAsk& ask, const ShelfInput& input) {
    const ModelsAsk& models = ask.models;
    const int wanted = (models.at_most ? 1 : 0) + (models.share ? 1 : 0) + (models.budget_cents ? 1 : 0);
    if (wanted != 1)
        refuse(wanted == 0 ? "nothing says how many models: give a number, a share of the jobs, or a budget"
                           : "a number of models, a share of the jobs and a budget exclude each other: give one");
    want(models.at_most.value_or(0) >= 0, "number of models", models.at_most.value_or(0), "0 or more");
    want(models.share.value_or(0) >= 0 && models.share.value_or(0) <= 1, "share of the jobs", models.share.value_or(0),
         "0 to 1");
    want(models.budget_cents.value_or(0) >= 0, "budget in cents", static_cast<double>(models.budget_cents.value_or(0)),
         "0 or more");
    for (const std::string& name : models.without) converter_called(input, name);
    std::set<std::string_view> kept;
    for (const std::string& name : models.with) {
        converter_called(input, name);
        if (!kept.insert(name).second) refuse(fmt::format("{}: is to be kept twice", name));
        if (std::ranges::find(models.without, name) != models.without.end())
            refuse(fmt::format("{}: is to be kept and not to be kept; say one of both", name));
    }
    if (models.at_most && static_cast<int>(models.with.size()) > *models.at_most)
        refuse(fmt::format("{} models are to be kept in any case, but no more than {} in all", models.with.size(),
                           *models.at_most));
    want(ask.care_penalty >= 0 && ask.care_penalty <= 1, "penalty for a job with care", ask.care_penalty, "0 to 1");
    want(ask.horizon_years > 0, "years to simulate", ask.horizon_years, "more than 0");
    want(ask.effort >= 0, "steps of the search", static_cast<double>(ask.effort), "0 or more");
    check_demand_ask(ask.demand);
    check_levels_ask(ask.levels);
}

std::uint32_t converter_called(const ShelfInput& input, std::string_view name) {
    std::vector<std::string_view> names;
    for (const StockModel& one : input.converters) names.push_back(one.name);
    const auto found = std::ranges::find(names, name);
    if (found != names.end()) return static_cast<std::uint32_t>(found - names.begin());
    const auto near = nearest(name, names);
    refuse(fmt::format("no converter is called \"{}\"{}", name,
                       near ? fmt::format("; did you mean \"{}\"?", *near) : std::string()));
}

}  // namespace tapbook
