// When are leads, fuse taps, fuses, relays, resistors and cable ordered again? By reorder point: as soon as what is
// there and on its way falls to what the time of delivery may use up.
#pragma once

#include <span>
#include <vector>

#include "shelf/demand.h"

namespace tapbook {

// All jobs to come, with a converter or not: a year they are gamma distributed.
struct JobsExpected {
    double shape = 0, rate = 0;  // rate in years
};

// The demand, and beside it the jobs that ask for no converter. Those alone when nothing was known of the others.
JobsExpected jobs_expected(const ShelfInput& input, const Demand& demand, const DemandAsk& ask);

// One for each part, in the same order. The demand during delivery is gamma-Poisson over the uses, with the pieces per
// use by their mean and spread (a stated number that is not whole is mixed of both beside it); LevelsAsk::fill_rate
// says how much of it has to be there. Throws ShelfRefused for a negative count, a pack below 1 or two of one name.
std::vector<Reorder> reorder(std::span<const SmallPart> parts, const JobsExpected& jobs, const DemandAsk& demand,
                             const LevelsAsk& levels);

}  // namespace tapbook
