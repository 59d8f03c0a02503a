// Does the source take bass away as the volume rises? Tones of one level on one car on one day, read at the full volume
// step and at a smaller one: how far the bass falls behind on the way up. What two steps do not show is not known.
#pragma once

#include <optional>
#include <span>

#include "trade/trade.h"

namespace tapbook {

// The largest bass cut that one visit shows, 0 dB or more. With a tone in the middle (300 Hz to 3 kHz) at both steps:
// its rise less the rise of the bass tone (100 Hz or less). Without one, where the bass reads less at full volume than
// at the smaller step: by how much; the cut is at least that. Absent when no visit has such readings. Speaker connected
// and controls flat in all of them; notes that copy, and readings of music, have no say.
std::optional<Gain> bass_cut(std::span<const Note* const> notes);

}  // namespace tapbook
