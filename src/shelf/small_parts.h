// When are leads, fuse taps, fuses, relays, resistors and cable ordered again? By reorder point: as soon as what is
// there and on its way falls to what the time of delivery may use up.
#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "shelf/plan_ask.h"

namespace tapbook {

// Taken for one job: how many (metres of cable in whole centimetres: whatever the part is counted in), how long ago.
struct Used {
    int days_ago = 0;
    int pieces = 0;
};

struct SmallPart {
    std::string name;
    std::vector<Used> used;
    std::optional<int> recorded_days;  // for how long uses have been written down; empty: since the oldest
    std::optional<int> lead_days;
    int pack = 1;
    int on_hand = 0, on_order = 0;
};

struct Reorder {
    std::string name;
    double per_year = 0;   // pieces
    int reorder_at = 0;    // at or below this many, there and on their way, order
    int order = 0;         // pieces today, whole packs; 0 when there are more
    double fill_rate = 0;  // share of the pieces asked for during delivery that are there
    bool no_use = false;   // never used: nothing to go by
};

// One for each part, in the same order. The demand during delivery is gamma-Poisson over the uses, with the pieces per
// use by their mean and spread; LevelsAsk::fill_rate says how much of it has to be there. Throws ShelfRefused for a
// negative count, a pack below 1 or a day that is negative.
std::vector<Reorder> reorder(std::span<const SmallPart> parts, const DemandAsk& demand, const LevelsAsk& levels);

}  // namespace tapbook
