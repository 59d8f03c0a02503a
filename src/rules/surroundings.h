// What lies around a tap: which other pairs can be taken at its place, and which conductors beside it look alike? For
// the files of this folder.
#pragma once

#include <vector>

#include "rules/candidate.h"

namespace tapbook {

// The signal taps of the same system at the same place as `tap`, one for each circuit, `tap` first; then those of the
// same role and band, then the others, each in path order.
std::vector<const TapFacts*> pairs_at_place(const CarFacts& car, const TapFacts& tap);

// `pairs` as from pairs_at_place(). The delay is judged at the note where the bands meet, else at the lowest.
TapSurroundings surroundings_of(const CarFacts& car, const TapFacts& tap, const std::vector<const TapFacts*>& pairs,
                                Hertz lowest);

}  // namespace tapbook
