// How many days may the car stand before it no longer starts? days = 0.4 x Ah x 1000 / (mA x 24): four tenths of a
// battery may be drawn. Where only the reserve capacity is printed, Ah = 0.6 x minutes. A resting vehicle takes 50 mA
// before anything is added. Practice.
#pragma once

#include <optional>

#include "electrical/units.h"

namespace tapbook {

inline constexpr Amps base_drain = milliamps(50);
inline constexpr Ratio usable_charge = ratio(0.4);

// Capacity from the printed reserve in minutes at 25 A. REQUIRES minutes above zero.
AmpHours capacity_from_reserve(int minutes);

struct StandingTime {
    AmpHours capacity;
    bool from_reserve = false;  // computed from the reserve minutes
    Amps base = base_drain;     // assumed of the vehicle
    Amps added;                 // standby of what is installed
    bool added_known = true;    // false: some standby current is not stated and counts as zero
    Seconds before, after;      // standing time without and with what is added
};

// Absent when neither capacity nor reserve is known. REQUIRES added not negative, capacity and reserve above zero.
std::optional<StandingTime> standing_time(std::optional<AmpHours> capacity, std::optional<int> reserve_minutes,
                                          Amps added, bool added_known);

}  // namespace tapbook
