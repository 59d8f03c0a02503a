// In which order is the work done? Every step names the steps it needs; the order is theirs, phase by phase, otherwise
// as they were listed. The check beside it shares nothing with the sorting.
#pragma once

#include <vector>

#include "rules/job_plan.h"

namespace tapbook {

// By phase, within a phase no step before one it needs, otherwise as listed. A need that no step has is no need; steps
// that need each other in a circle, or a step of a later phase, keep their listed place (check_order counts them).
std::vector<PlanStep> in_order_of_work(std::vector<PlanStep> steps);

struct OrderCheck {
    int out_of_order = 0;           // steps before something they need, or after a later phase
    int live_with_airbag_open = 0;  // steps of a live phase while an air-bag connector may be open
};

OrderCheck check_order(const std::vector<PlanStep>& steps);

}  // namespace tapbook
