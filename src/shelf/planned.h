// What do plan, explanation and comparison all begin with? The input as demand and cover.
#pragma once

#include <vector>

#include "shelf/choose_models.h"
#include "shelf/cover.h"
#include "shelf/demand.h"
#include "shelf/planning.h"

namespace tapbook {

struct Groundwork {
    Demand demand;
    std::vector<std::int64_t> weights;  // one for each system
    Cover cover;
};

// REQUIRES: input and ask are checked.
Groundwork groundwork_of(const ShelfInput& input, const PlanAsk& ask);

// What each job of the system counts when only `kept` converters are there: 1, 1 - penalty, or 0. Flags by converter.
double counts_with(const ShelfSystem& system, const std::vector<bool>& kept, double care_penalty);

// What the coverage of models says about one system when the models in `kept` lie there, and when one of them is gone.
std::vector<LostModel> lost_by_model(const ShelfInput& input, const Groundwork& ground,
                                     const std::vector<std::size_t>& kept, double care_penalty);

// Most jobs first, then path.
void sort_lost(std::vector<LostSystem>& lost, const ShelfInput& input);

// How many of each kept model, what to order, and what is missed all the same. REQUIRES: plan.models names the kept
// converters; plan.demand is filled.
void set_levels(ShelfPlan& plan, const ShelfInput& input, const Groundwork& ground, const PlanAsk& ask);

}  // namespace tapbook
