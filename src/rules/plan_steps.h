// What is done on this job, step by step? Not yet in order: each step says its phase and what it needs.
#pragma once

#include <vector>

#include "rules/job_plan.h"

namespace tapbook {

// The steps of the plan. `plan.install` is judged, `plan.conductors` are known; `lowest` as in the advice.
std::vector<PlanStep> plan_steps(const JobPlanAnswer& plan, const TapSignal& signal, Hertz lowest);

// Those of the dead phase (plan_dead_steps.cpp) and of the live ones (plan_live_steps.cpp), for the above.
void add_live_check(const JobPlanAnswer& plan, const TapSignal& signal, Hertz lowest, std::vector<PlanStep>& steps);
void add_power_off(const JobPlanAnswer& plan, std::vector<PlanStep>& steps);
void add_dead_work(const JobPlanAnswer& plan, std::vector<PlanStep>& steps);
void add_power_on(const JobPlanAnswer& plan, std::vector<PlanStep>& steps);
void add_final_check(const JobPlanAnswer& plan, std::vector<PlanStep>& steps);

Caution caution_of(Hazard hazard);

}  // namespace tapbook
