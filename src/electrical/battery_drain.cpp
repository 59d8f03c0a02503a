// See battery_drain.h. Charge over current, with the trade's two factors.
#include "electrical/battery_drain.h"

namespace tapbook {
namespace {

constexpr double amp_hours_per_reserve_minute = 0.6;
constexpr double seconds_per_hour = 3600;

Seconds until_flat(AmpHours capacity, Amps drain) {
    const AmpHours usable = capacity * usable_charge;
    return seconds(usable.in(amp_hours) / drain.in(amps)*seconds_per_hour);
}

}  // namespace

AmpHours capacity_from_reserve(int minutes) {
    return amp_hours(amp_hours_per_reserve_minute * minutes);
}

std::optional<StandingTime> standing_time(std::optional<AmpHours> capacity, std::optional<int> reserve_minutes,
                                          Amps added, bool added_known) {
    if (!capacity && !reserve_minutes) return std::nullopt;
    const AmpHours charge = capacity ? *capacity : capacity_from_reserve(*reserve_minutes);
    return StandingTime{charge,
                        !capacity.has_value(),
                        base_drain,
                        added,
                        added_known,
                        until_flat(charge, base_drain),
                        until_flat(charge, base_drain + added)};
}

}  // namespace tapbook
