// How many of each kept model, what to order today, and how many jobs a year find nothing all the same? By formula for
// each model alone; where models stand in for each other, by search on invented jobs; then judged on other invented
// jobs.
#include <algorithm>

#include "shelf/improve_levels.h"
#include "shelf/levels.h"
#include "shelf/orders.h"
#include "shelf/planned.h"

namespace tapbook {

namespace {

constexpr std::int64_t jobs_to_search = 20'000, jobs_to_judge = 200'000;
constexpr double sure = 1.96;      // standard errors, 95 of 100 chances
constexpr double none_seen = 3.0;  // what never came in n years comes less than 3 / n times a year (95 of 100 chances)
constexpr double runs_before = 3;  // times the longest delivery, until the shelf is as it usually is

std::vector<DeliveryDemand> deliveries(const ShelfPlan& plan, std::span<const KeptGroup> groups,
                                       const Groundwork& ground, const LevelsAsk& ask) {
    const std::vector<double> shapes = first_choice_shapes(groups, plan.models.size());
    std::vector<DeliveryDemand> all;
    for (std::size_t i = 0; i < plan.models.size(); ++i)
        all.push_back({.shape = shapes[i],
                       .rate = ground.demand.rate,
                       .years = (plan.models[i].lead_days + ask.review_days) / days_per_year});
    return all;
}

StreamAsk stream_ask(const PlanAsk& ask, const Groundwork& ground, std::span<const DeliveryDemand> demands,
                     std::int64_t jobs, std::uint64_t seed) {
    double longest = 0;
    for (const DeliveryDemand& demand : demands) longest = std::max(longest, demand.years);
    return {.rate = ground.demand.rate,
            .counted_years = ask.horizon_years,
            .before_years = longest * runs_before,
            .jobs = jobs,
            .seed = seed};
}

// Lower levels where one model may stand in for another.
void improve(ShelfPlan& plan, const ShelfInput& input, std::span<const KeptGroup> groups,
             std::span<const DeliveryDemand> demands, const Groundwork& ground, const PlanAsk& ask) {
    if (std::ranges::none_of(groups, [](const KeptGroup& group) { return group.models.size() > 1; })) return;
    // A model that is nobody's first choice still stands in: one of it.
    std::vector<int> levels;
    std::vector<LevelModel> models;
    for (std::size_t i = 0; i < demands.size(); ++i) {
        levels.push_back(std::max(1, plan.models[i].keep));
        models.push_back(
            {.delivery_years = demands[i].years, .cost_cents = input.converters[plan.models[i].converter].cost_cents});
    }
    const JobStream stream({groups.begin(), groups.end()}, stream_ask(ask, ground, demands, jobs_to_search, ask.seed));
    levels = improve_levels(std::move(levels), models, stream, ask.levels);
    for (std::size_t i = 0; i < levels.size(); ++i) plan.models[i].keep = levels[i];
}

void judge(ShelfPlan& plan, std::span<const KeptGroup> groups, std::span<const DeliveryDemand> demands,
           const Groundwork& ground, const PlanAsk& ask) {
    if (groups.empty()) return;
    std::vector<int> keep;
    std::vector<double> delivery;
    for (std::size_t i = 0; i < demands.size(); ++i) {
        keep.push_back(plan.models[i].keep);
        delivery.push_back(demands[i].years);
    }
    const JobStream stream({groups.begin(), groups.end()},
                           stream_ask(ask, ground, demands, jobs_to_judge, ask.seed + 1));
    const StreamResult result = stream.run(keep, delivery);
    LostJobs& lost = plan.lost_jobs;
    lost.mean = result.missed_per_year;
    lost.low = std::max(0.0, lost.mean - sure * result.standard_error);
    lost.high = std::max(lost.mean + sure * result.standard_error, none_seen / result.years);
    lost.years = static_cast<int>(result.years);
    plan.fill_rate = result.fill_rate;
}

void order(ShelfPlan& plan, const ShelfInput& input, std::span<const DeliveryDemand> demands, const PlanAsk& ask) {
    std::vector<OrderLine> lines;
    for (std::size_t i = 0; i < demands.size(); ++i) {
        const StockModel& converter = input.converters[plan.models[i].converter];
        lines.push_back({.keep = plan.models[i].keep,
                         .there = converter.on_hand + converter.on_order,
                         .pack = converter.pack,
                         .pack_cents = converter.cost_cents.value_or(0) * converter.pack,
                         .jobs_per_year = demands[i].jobs_per_year(),
                         .seen_by_jobs = demands[i].as_jobs_see()});
        plan.models[i].order_wanted = packs_missing(lines.back()) * converter.pack;
    }
    std::optional<std::int64_t> budget = ask.levels.order_budget_cents;
    if (ask.models.budget_cents) budget = std::min(budget.value_or(*ask.models.budget_cents), *ask.models.budget_cents);
    const std::vector<int> packs = packs_to_order(lines, budget);
    for (std::size_t i = 0; i < packs.size(); ++i) {
        KeptModel& model = plan.models[i];
        model.order = packs[i] * lines[i].pack;
        model.order_cents = packs[i] * lines[i].pack_cents;
        plan.order_cents += model.order_cents;
    }
}

}  // namespace

void set_levels(ShelfPlan& plan, const ShelfInput& input, const Groundwork& ground, const PlanAsk& ask) {
    std::vector<std::size_t> kept;
    for (KeptModel& model : plan.models) {
        const StockModel& converter = input.converters[model.converter];
        model.lead_days = converter.lead_days.value_or(ask.levels.usual_lead_days);
        model.on_hand = converter.on_hand;
        model.on_order = converter.on_order;
        kept.push_back(model.converter);
    }
    const std::vector<KeptGroup> groups = kept_groups(input, ground.demand, kept);
    const std::vector<DeliveryDemand> demands = deliveries(plan, groups, ground, ask.levels);
    for (std::size_t i = 0; i < demands.size(); ++i) {
        plan.models[i].jobs_per_year = demands[i].jobs_per_year();
        plan.models[i].keep = level_of(demands[i], ask.levels, input.converters[kept[i]].cost_cents);
    }
    improve(plan, input, groups, demands, ground, ask);
    for (std::size_t i = 0; i < demands.size(); ++i) {
        KeptModel& model = plan.models[i];
        model.fill_rate = fill_rate(demands[i].as_jobs_see(), model.keep);
        plan.lost_jobs.closed_form += model.jobs_per_year * (1 - model.fill_rate);
    }
    judge(plan, groups, demands, ground, ask);
    order(plan, input, demands, ask);
    std::ranges::sort(plan.models, [](const KeptModel& a, const KeptModel& b) {
        return a.jobs_per_year != b.jobs_per_year ? a.jobs_per_year > b.jobs_per_year : a.name < b.name;
    });
}

}  // namespace tapbook
