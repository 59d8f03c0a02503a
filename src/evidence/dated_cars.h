// Which cars take part in the year test? For this folder only.
#pragma once

#include <vector>

#include "evidence/vote.h"
#include "evidence/year_split.h"

namespace tapbook {

// Each car that was looked at with its best note for each value; those without a model year are left out. A car not
// told apart counts only where its shop has no told car for that value. REQUIRES votes that were not struck.
std::vector<DatedCar> dated_cars(const std::vector<const Vote*>& votes);

}  // namespace tapbook
