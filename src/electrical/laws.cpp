// Ohm's law, the power law and the decibel, by the textbook formulas named in the header.
#include "electrical/laws.h"

#include <cmath>
#include <numbers>

namespace tapbook {

RmsVolts sine_volts(Watts power, Ohms load) {
    return rms_volts(std::sqrt(power.in(watts)*load.in(ohms)));
}

Watts power_in(RmsVolts volts, Ohms load) {
    return watts(volts.in(rms_volts)*volts.in(rms_volts) / load.in(ohms));
}

Watts power_in(Amps current, Ohms load) {
    return watts(current.in(amps)*current.in(amps)*load.in(ohms));
}

Amps current_through(RmsVolts volts, Ohms load) {
    return amps(volts.in(rms_volts) / load.in(ohms));
}

RmsVolts rms_of_sine(PeakVolts peak) {
    return rms_volts(peak.in(peak_volts) / std::numbers::sqrt2);
}

RmsVolts rms_of_square(PeakVolts peak) {
    return rms_volts(peak.in(peak_volts));
}

PeakVolts peak_of_sine(RmsVolts volts) {
    return peak_volts(volts.in(rms_volts)*std::numbers::sqrt2);
}

Gain gain_of(Ratio volts_per_volt) {
    return decibels(20 * std::log10(volts_per_volt.in(ratio)));
}

Ratio ratio_of(Gain gain) {
    return ratio(std::pow(10, gain.in(decibels) / 20));
}

Gain gain_between(RmsVolts from, RmsVolts to) {
    return gain_of(to / from);
}

RmsVolts raised(RmsVolts volts, Gain gain) {
    return volts * ratio_of(gain);
}

Watts raised(Watts power, Gain gain) {
    return power * std::pow(10, gain.in(decibels) / 10);
}

Level level_dbv(RmsVolts volts) {
    return dbv(0) + gain_between(rms_volts(1), volts);
}

RmsVolts volts_at(Level level) {
    return raised(rms_volts(1), level - dbv(0));
}

RmsVolts at_full_scale(RmsVolts volts, FullScaleLevel level) {
    return raised(volts, dbfs(0) - level);
}

RmsVolts loaded(RmsVolts open, Ohms source, Ohms load) {
    return open * (load / (source + load));
}

}  // namespace tapbook
