// See planned_parts.h.
#include "rules/planned_parts.h"

namespace tapbook {

PlannedParts planned_parts(const JobPlanAnswer& plan) {
    PlannedParts parts;
    const Install& install = plan.install;
    if (install.feed) {
        const FeedReport& feed = install.feed->report;
        parts.cable = feed.feed.main.size;
        parts.cable_length = install.feed->length;
        if (feed.answer.main_fuse.fuse) parts.main_fuse = feed.answer.main_fuse.fuse->rating;
    }
    const JudgedTurnOn* turn_on = planned_turn_on(install);
    parts.relay =
        turn_on != nullptr && turn_on->facts.current.carried == false && turn_on->facts.current.relay_carried == true;
    if (install.resistor) parts.resistors = 1 + static_cast<int>(plan.other_pairs.size());
    return parts;
}

}  // namespace tapbook
