// Average current and charging reserve. Rules and defaults in the header.
#include "electrical/charging_reserve.h"

#include <cmath>

namespace tapbook {

static_assert(table_is_sound<ChargingSource>());
static_assert(table_is_sound<ReserveVerdict>());

namespace {

constexpr Ratio idle_share_low = ratio(1.0 / 3), idle_share_likely = ratio(0.4), idle_share_high = ratio(0.5);
constexpr AmpsRange vehicle_load{amps(30), amps(45), amps(60)};

}  // namespace

Ratio music_share(AmplifierUse use) {
    switch (use) {
        case AmplifierUse::sub:
            return ratio(1.0 / 3);
        case AmplifierUse::full_range:
            return ratio(1.0 / 8);
    }
    return ratio(1);  // no enumerator: as careful as any
}

Amps average_current(Amps full, AmplifierClass amplifier_class, Ratio share, Amps idle) {
    switch (amplifier_class) {
        case AmplifierClass::ab:
            return full * std::sqrt(share.in(ratio)) + idle;
        case AmplifierClass::d:
            return full * share + idle;
    }
    return full + idle;  // no enumerator: as careful as any
}

AmpsRange charging_reserve(ChargingSource kind, Amps rating) {
    const bool turns = kind == ChargingSource::alternator;
    return {(turns ? rating * idle_share_low : rating) - vehicle_load.high,
            (turns ? rating * idle_share_likely : rating) - vehicle_load.likely,
            (turns ? rating * idle_share_high : rating) - vehicle_load.low};
}

ReserveVerdict judge_reserve(Amps average, const AmpsRange& reserve) {
    if (average <= reserve.low) return ReserveVerdict::enough;
    return average <= reserve.high ? ReserveVerdict::uncertain : ReserveVerdict::too_small;
}

}  // namespace tapbook
