// What is done on this job, in which order, with which readings and under which power? The steps of a plan from the
// judged tap and part; each caution beside the step it belongs to.
#pragma once

#include "rules/advise.h"
#include "rules/predicted_reading.h"
#include "rules/taps_answer.h"

namespace tapbook {

struct PlanStep {
    PowerPhase phase = PowerPhase::live_check;
    std::string what;
    std::vector<Caution> cautions;
    std::vector<PredictedReading> readings;  // to take here, in order
};

struct JobPlanAnswer {
    ShopJob job;  // with the plan
    JobPlan plan;
    Vehicle vehicle;
    JudgedTap tap;
    JudgedCandidate part;
    std::optional<Amplifier> amplifier;
    std::vector<std::string> other_pairs;  // places of the further pairs the amplifier takes
    std::vector<PlanStep> steps;
    bool practice = false;
    bool written = false;
};

// The part of the advice that is planned: the one named, else the best. nullptr when the named one was not judged, or
// nothing fits.
const JudgedCandidate* planned_part(const Advice& advice, const std::string& named);

// What is stored of it.
JobPlan plan_of(const Advice& advice, const JudgedCandidate& part);

// REQUIRES: `part` is one of the advice's candidates.
JobPlanAnswer plan_answer(const ShopJob& job, const Advice& advice, const JudgedCandidate& part);

}  // namespace tapbook
