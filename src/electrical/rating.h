// What is a printed power worth? Ratings at 10 % distortion or of a saturated output become the power at 1 %, and a
// rating no unboosted bridge can deliver is recognised. Model: ideal hard clipping (P/P0 = 1.0475 at 1 %, 1.2878 at 10
// %, 2 square).
#pragma once

#include <optional>

#include "electrical/output_stage.h"
#include "electrical/supply.h"

namespace tapbook {

// The power at 1 % distortion or less behind a rating of this kind: as given, / 1.229, or / 1.909.
Watts continuous_watts(Watts rated, RatingKind kind, const Supply& supply = {});

struct ImpossibleRating {
    Watts limit;  // the most an unboosted bridge delivers at that distortion, supply and load
};

// Present when the stage is an unboosted bridge (bridged, or common_return with a bridged stage), its rating is
// `continuous` or `at_10_percent` with a stated load, and the peak it needs exceeds the rating supply
// (sqrt(2 P R / 1.0475 or 1.2878) > Vs). Such a rating is refused, naming the limit. Absent otherwise.
std::optional<ImpossibleRating> impossible_rating(const OutputStage& output, const Supply& supply = {});

// Is a `maximum` rating of an unboosted bridge beyond even a square wave from the supply (sqrt(P R) > Vs)?
// Then it is kept as a label and not used.
bool is_label_only(const OutputStage& output, const Supply& supply = {});

// RMS volts at 1 % distortion that the rating stands for: sqrt(continuous watts x rated load). Absent without rating or
// rated load, and for a rating that is impossible or a label only.
std::optional<RmsVolts> rated_volts(const OutputStage& output, const Supply& supply = {});

}  // namespace tapbook
