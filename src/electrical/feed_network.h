// How many volts reach each amplifier? One amplifier that keeps its watts constant: V = (V0 + sqrt(V0^2 - 4PR)) / 2,
// none above R = V0^2 / 4P. Several behind one block: the volts at the block are the largest root of
// block + shared ohms x amps(block) = supply, whose left side is convex, found by Newton's method from the supply
// downwards: from there it cannot step past the root. Textbook.
#pragma once

#include <optional>
#include <vector>

#include "electrical/hold_up.h"
#include "electrical/units.h"

namespace tapbook {

// One amplifier and the ohms between the block and it.
struct FeedLimb {
    Ohms resistance;
    Draw draw;  // constant amps, or constant electrical watts
};

struct FeedNetwork {
    DcVolts supply;
    Ohms shared;  // what the whole current passes: source, main cable, return
    std::vector<FeedLimb> limbs;
};

struct AtLimb {
    DcVolts volts;  // across the amplifier
    Amps current;
};

struct FeedState {
    DcVolts block;
    Amps total;
    std::vector<AtLimb> limbs;  // in the order asked
};

// The state the network settles in; absent when that much cannot be drawn through these ohms. REQUIRES supply and every
// draw above zero, ohms not negative, at least one limb.
std::optional<FeedState> settle(const FeedNetwork& network);

// Ohms above which one load of constant `power` finds no volts. REQUIRES power above zero.
Ohms most_resistance(DcVolts supply, Watts power);

}  // namespace tapbook
