// How far does the amplifier's own current lift its ground above the radio's? Full current through the resistance of
// the body on its way back to the battery. A signal ground that joins both places hears it as noise.
#pragma once

#include <optional>

#include "electrical/amplifier.h"
#include "electrical/units.h"

namespace tapbook {

// Practice: what a sound steel body with a bare ground point adds, low / likely / high 0 / 1 / 5 milliohm.
inline constexpr Ohms likely_body_return = ohms(0.001);

// Practice: the supply while the engine runs with loads on.
inline constexpr DcVolts running_supply = dc_volts(13.8);

// All channels at their rated power, over efficiency and 13.8 V. The printed efficiency, else the likely one of the
// class. Absent without power, channels, or both class and efficiency.
std::optional<Amps> full_current(const AmplifierSpec& amplifier);

// Volts that `full_current` loses in `body`. Absent when the current is.
std::optional<DcVolts> return_drop(const AmplifierSpec& amplifier, Ohms body = likely_body_return);

// Power a resistor must stand that takes a removed speaker's place: 2 V^2 / R with the most clean volts, since the
// square wave of a saturated output carries twice the power of its largest clean sine. REQUIRES load above zero.
Watts load_resistor_power(RmsVolts clean_high, Ohms load);

}  // namespace tapbook
