// What is done on this job, in which order, with which readings and under which power? The steps of a plan from the
// judged tap and part; each caution beside the step it belongs to.
#pragma once

#include <span>

#include "rules/advise.h"
#include "rules/install.h"
#include "rules/predicted_reading.h"
#include "rules/taps_answer.h"

namespace tapbook {

// How a step leaves the air bags behind.
enum class Airbags { untouched, may_open, mated };

struct PlanStep {
    PowerPhase phase = PowerPhase::live_check;
    std::string what;
    std::vector<Caution> cautions;
    std::vector<PredictedReading> readings;  // to take here, in order
    std::string id;                          // "reach", "join", ...: each once in a plan
    std::vector<std::string> needs;          // ids of steps that must be done before
    Airbags airbags = Airbags::untouched;
};

// One conductor of the car that is joined to something.
struct PlannedConductor {
    std::string tap;  // whole path of the tap point
    std::string use;  // "+", "-", "turn-on"
    std::string place, connector, cavity;
    std::optional<WireColour> colour;  // settled
};

struct JobPlanAnswer {
    ShopJob job;  // with the plan
    JobPlan plan;
    Vehicle vehicle;
    JudgedTap tap;
    JudgedCandidate part;
    std::optional<Amplifier> amplifier;
    std::vector<std::string> other_pairs;  // places of the further pairs the amplifier takes
    std::vector<PlanStep> steps;           // in order of work
    std::vector<PlannedConductor> conductors;
    Install install;
    bool practice = false;
    bool written = false;
};

// The part of the advice that is planned: the one named, else the best. nullptr when the named one was not judged, or
// nothing fits.
const JudgedCandidate* planned_part(const Advice& advice, const std::string& named);

// What is stored of it: `before` with the tap and the parts of this advice.
JobPlan plan_of(const Advice& advice, const JudgedCandidate& part, JobPlan before = {});

// Everything: the install judged, the steps in order of work, the plan looked at as a whole. `earlier`: this shop's
// jobs, for what such a job took before. REQUIRES: `advice` was given on `facts`, and `part` is one of its candidates.
JobPlanAnswer plan_answer(const ShopJob& job, const JobFacts& facts, const Advice& advice, const JudgedCandidate& part,
                          const InstallAsk& ask, std::span<const ShopJob> earlier, RuleBook& rules);

}  // namespace tapbook
