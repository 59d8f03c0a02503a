// Which models does the shop keep, how many of each, and what does it order today? Demand, choice of models, levels,
// orders: each has its own file; here they are one answer.
#pragma once

#include <string_view>

#include "shelf/plan_ask.h"
#include "shelf/shelf_input.h"
#include "shelf/shelf_plan.h"

namespace tapbook {

// The plan. The same input and ask give the same plan, but for a search elsewhere that its time limit stopped. Without
// `other_search`, and when it fails, the own search's best is given with the gap that is proved.
// Without systems, converters, demand or anything that fits the plan says so (ShelfPlan::state) and keeps nothing but
// small parts.
// Throws ShelfRefused when input or ask cannot be planned with: a negative count, an unknown or repeated name, a share
// above 1, none or two of ModelsAsk's three.
ShelfPlan plan_shelf(const ShelfInput& input, const PlanAsk& ask, const OtherSearch& other_search = {});

// Why `plan`, which plan_shelf made of the same input and ask, keeps the model or not. Throws ShelfRefused, with the
// nearest name, when no converter is called so.
ModelExplained explain_model(const ShelfInput& input, const PlanAsk& ask, const ShelfPlan& plan, std::string_view name,
                             const OtherSearch& other_search = {});

// What would change: both plans and what differs. The two inputs list the same systems in the same order; converters
// may differ in everything but their order. Throws what plan_shelf throws.
PlanChange plan_change(const ShelfInput& input, const PlanAsk& ask, const ShelfInput& changed_input,
                       const PlanAsk& changed_ask, const OtherSearch& other_search = {});

// Between what two numbers of jobs a year does a system lie with 90 of 100 chances? `shape` from SystemDemand, `rate`
// from ShelfPlan::demand_rate.
Likely likely_jobs(double shape, double rate);

}  // namespace tapbook
