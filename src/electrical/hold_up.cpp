// Hold-up time of a capacitor. Formulas in the header.
#include "electrical/hold_up.h"

#include <algorithm>
#include <cmath>

namespace tapbook {
namespace {

// Volts at the terminals behind `resistance` while `power` is drawn; absent where that much cannot be drawn.
std::optional<DcVolts> terminals_at_power(DcVolts inside, Ohms resistance, Watts power) {
    const double volts = inside.in(dc_volts);
    const double root = volts * volts - 4 * power.in(watts)*resistance.in(ohms);
    if (root < 0) return std::nullopt;
    return dc_volts((volts + std::sqrt(root)) / 2);
}

HoldUp at_current(Farads capacitance, Ohms resistance, Amps current, DcVolts from, DcVolts to, Seconds note) {
    const DcVolts step = dc_volts(current.in(amps)*resistance.in(ohms));
    const DcVolts left = std::max(dc_volts(0), from - step - to);
    return {seconds(capacitance.in(farads)*left.in(dc_volts) / current.in(amps)),
            step < from ? std::optional(step) : std::nullopt,
            farads(current.in(amps)*note.in(seconds) / (from - to).in(dc_volts)), note};
}

// Charge times volts between two terminal volts, per farad: the energy given off without resistance.
double joules_per_farad(DcVolts high, DcVolts low) {
    return (high.in(dc_volts)*high.in(dc_volts)-low.in(dc_volts)*low.in(dc_volts)) / 2;
}

// The terminals fall from `first` to `to`, or to the volts of greatest power, sqrt(P R), below which they collapse.
Seconds fall_time(Farads capacitance, Ohms resistance, Watts power, DcVolts first, DcVolts to) {
    const double watts_times_ohms = power.in(watts)*resistance.in(ohms);
    const DcVolts last = std::max(to, dc_volts(std::sqrt(watts_times_ohms)));
    if (first <= last) return seconds(0);
    const double energy = joules_per_farad(first, last) - watts_times_ohms * std::log((first / last).in(ratio));
    return seconds(capacitance.in(farads) / power.in(watts)*energy);
}

HoldUp at_power(Farads capacitance, Ohms resistance, Watts power, DcVolts from, DcVolts to, Seconds note) {
    const Farads needed = farads(power.in(watts)*note.in(seconds) / joules_per_farad(from, to));
    const auto first = terminals_at_power(from, resistance, power);
    if (!first) return {seconds(0), std::nullopt, needed, note};
    return {fall_time(capacitance, resistance, power, *first, to), from - *first, needed, note};
}

}  // namespace

HoldUp hold_up(Farads capacitance, Ohms resistance, Draw draw, DcVolts from, DcVolts to, Seconds note) {
    if (const Amps* current = std::get_if<Amps>(&draw))
        return at_current(capacitance, resistance, *current, from, to, note);
    return at_power(capacitance, resistance, std::get<Watts>(draw), from, to, note);
}

}  // namespace tapbook
