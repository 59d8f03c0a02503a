// What would change? Two plans, and what differs between them.
#include <algorithm>
#include <map>

#include "shelf/planned.h"

namespace tapbook {

namespace {

std::vector<bool> kept_flags(const ShelfPlan& plan, std::size_t converters) {
    std::vector<bool> kept(converters, false);
    for (const KeptModel& model : plan.models) kept[model.converter] = true;
    return kept;
}

// A penalty of zero: the question is only whether anything kept suits.
bool covers(const ShelfSystem& system, const std::vector<bool>& kept) {
    return counts_with(system, kept, 0) > 0;
}

}  // namespace

PlanChange plan_change(const ShelfInput& input, const PlanAsk& ask, const ShelfInput& changed_input,
                       const PlanAsk& changed_ask, const OtherSearch& other_search) {
    if (input.systems.size() != changed_input.systems.size() ||
        input.converters.size() != changed_input.converters.size())
        throw ShelfRefused("the two shelves to compare list different systems or converters");
    PlanChange change;
    change.before = plan_shelf(input, ask, other_search);
    change.after = plan_shelf(changed_input, changed_ask, other_search);
    std::map<std::string, ModelChange> models;
    for (const KeptModel& model : change.before.models) {
        models[model.name].keep_before = model.keep;
        models[model.name].order_before = model.order;
    }
    for (const KeptModel& model : change.after.models) {
        models[model.name].keep_after = model.keep;
        models[model.name].order_after = model.order;
    }
    for (auto& [name, model] : models) {
        model.name = name;
        if (model.keep_before != model.keep_after || model.order_before != model.order_after)
            change.models.push_back(model);
    }
    const std::vector<bool> before = kept_flags(change.before, input.converters.size());
    const std::vector<bool> after = kept_flags(change.after, input.converters.size());
    for (std::size_t i = 0; i < input.systems.size(); ++i) {
        const bool was = covers(input.systems[i], before), is = covers(changed_input.systems[i], after);
        if (was && !is) change.lost.push_back({.system = i, .jobs_per_year = change.before.demand[i].jobs_per_year});
        if (!was && is) change.gained.push_back({.system = i, .jobs_per_year = change.after.demand[i].jobs_per_year});
    }
    sort_lost(change.gained, changed_input);
    sort_lost(change.lost, input);
    change.share = change.after.covered_share - change.before.covered_share;
    change.order_cents = change.after.order_cents - change.before.order_cents;
    return change;
}

}  // namespace tapbook
