// How much does one note weigh? Whole points on two scales, one for recognising the pair and one for telling which
// conductor is positive. Each point triples the odds: being wrong once in 1 + 3^points times.
#pragma once

#include <string_view>

#include "trade/trade.h"

namespace tapbook {

// scoped 4, metered 3, seen 2, copied 1.
int pair_points(Method method);

// scoped 4, phase 3, cell 3; metered, seen and copied 1: a meter cannot show polarity.
int polarity_points(PolarityMethod method);

// One point less when the answer was known before looking, but at least 1; nothing less when a reading or photo hangs
// on the note.
int points_after_knowing(int points, bool knew_first, bool has_proof);

// Was a car looked at? False for copied.
bool looked_at(Method method);

// Was the polarity itself tested? True for scoped, phase and cell; the others count as paper.
bool looked_at(PolarityMethod method);

// Did an instrument show it: metered or scoped?
bool measured(Method method);

// How a line says it: "scoped", "phase-checked", "cell-tested", "metered", "seen", "copied".
std::string_view method_words(PolarityMethod method);

}  // namespace tapbook
