// See return_path.h. Ohm's law, and the power law twice.
#include "electrical/return_path.h"

#include "electrical/laws.h"
#include "electrical/supply_current.h"

namespace tapbook {

std::optional<Amps> full_current(const AmplifierSpec& amplifier) {
    const auto power = rated_power(amplifier);
    auto efficiency = amplifier.efficiency;
    if (!efficiency && amplifier.amplifier_class) efficiency = efficiency_of(*amplifier.amplifier_class).likely;
    if (!power || !amplifier.channels || !efficiency || *efficiency <= ratio(0)) return std::nullopt;
    return supply_current(*power * static_cast<double>(*amplifier.channels), *efficiency, running_supply);
}

std::optional<DcVolts> return_drop(const AmplifierSpec& amplifier, Ohms body) {
    const auto current = full_current(amplifier);
    if (!current) return std::nullopt;
    return dc_volts(current->in(amps)*body.in(ohms));
}

Watts load_resistor_power(RmsVolts clean_high, Ohms load) {
    return power_in(clean_high, load) * 2.0;
}

}  // namespace tapbook
