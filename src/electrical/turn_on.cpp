// See turn_on.h. Sums and comparisons.
#include "electrical/turn_on.h"

#include <algorithm>

namespace tapbook {

static_assert(table_is_sound<TurnOnKind>());

namespace {

// Currents are whole milliamps; their sum in amps is not exact, and a sum equal to the limit lies within it.
constexpr Amps rounding = milliamps(0.001);

}  // namespace

TurnOnCurrent turn_on_current(std::span<const std::optional<Amps>> loads, std::optional<Amps> gives) {
    TurnOnCurrent current;
    if (gives) {
        current.limit = *gives;
        current.limit_assumed = false;
    }
    const auto is_known = [](const std::optional<Amps>& load) { return load.has_value(); };
    if (std::all_of(loads.begin(), loads.end(), is_known)) {
        Amps sum = amps(0);
        for (const auto& load : loads) sum = sum + *load;
        current.loads = sum;
        current.carried = sum <= current.limit + rounding;
    }
    current.relay_carried = relay_coil_high <= current.limit + rounding;
    return current;
}

}  // namespace tapbook
