// Which small parts does the plan of a job ask for? What its install is judged to need.
#pragma once

#include <optional>

#include "rules/job_plan.h"

namespace tapbook {

struct PlannedParts {
    std::optional<Amps> main_fuse;    // absent: no feed is planned, or no fuse protects it
    std::optional<CableSize> cable;   // main cable; absent: no feed is planned
    Metres cable_length = metres(0);  // one way
    bool relay = false;               // the turn-on cannot carry the amplifier itself
    int resistors = 0;                // the radio watches its speakers: one for each pair that is tapped
};

PlannedParts planned_parts(const JobPlanAnswer& plan);

}  // namespace tapbook
