// Does the charging system carry what the amplifier takes on average? Music asks for a share of full power: class D
// draws that share of its full current, class AB its square root; a third for bass, an eighth for full range. An
// alternator at idle gives 1/3 to 1/2 of its rating, and the vehicle itself takes 30 to 60 A. Practice; one published
// curve of an engine's alternator gives 16 A of 48 A near idle.
#pragma once

#include "electrical/amplifier.h"
#include "electrical/named.h"
#include "electrical/units.h"

namespace tapbook {

struct AmpsRange {
    Amps low, likely, high;
};

// Share of full power, averaged over music.
Ratio music_share(AmplifierUse use);

// Average current of an amplifier that draws `full` at full power. REQUIRES share from 0 to 1.
Amps average_current(Amps full, AmplifierClass amplifier_class, Ratio share, Amps idle);

// What charges the battery: an alternator, or a converter from a traction battery (nothing when that is not ready).
enum class ChargingSource { alternator, dc_converter };

template <>
struct NamedValues<ChargingSource> {
    static constexpr Named<ChargingSource> all[] = {{ChargingSource::alternator, "alternator"},
                                                    {ChargingSource::dc_converter, "dc_converter"}};
};

// What is left at idle for added loads; below zero when the vehicle alone takes more than that.
AmpsRange charging_reserve(ChargingSource kind, Amps rating);

enum class ReserveVerdict { enough, uncertain, too_small };

template <>
struct NamedValues<ReserveVerdict> {
    static constexpr Named<ReserveVerdict> all[] = {{ReserveVerdict::enough, "enough"},
                                                    {ReserveVerdict::uncertain, "uncertain"},
                                                    {ReserveVerdict::too_small, "too_small"}};
};

// Enough: within the low end; too small: above the high end.
ReserveVerdict judge_reserve(Amps average, const AmpsRange& reserve);

}  // namespace tapbook
