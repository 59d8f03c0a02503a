// The columns of the level through the chain and of the amplifier. Those marked need an amplifier: without one their
// rules are left out. The amplifier's shield is not among them: without an amplifier it counts as not known.
#include "rules/column_values.h"

namespace tapbook {
namespace {

using C = const Candidate&;
using sqlite::Value;

template <class Give>
Value of(C c, Give give) {
    if (c.amplifier == nullptr) return std::monostate{};
    return give(c.amplifier->spec);
}

using Spec = const AmplifierSpec&;

std::optional<Gain> headroom_of(C c) {
    if (c.converter == nullptr) return std::nullopt;
    return headroom(c.converter->spec, c.job.lowest, c.signal.clean.high);
}

std::optional<Gain> margin_of(C c) {
    if (c.converter == nullptr) return std::nullopt;
    return drive_margin(c.converter->spec, c.signal.clean.low);
}

std::optional<bool> loads_output(C c) {
    if (c.converter == nullptr) return std::nullopt;
    return loads_line_output(c.converter->spec.input_impedance, c.tap.circuit.output.output_impedance);
}

// Is the d.c. on the tap certainly enough, or certainly too little, for a turn-on that senses half the supply?
std::optional<bool> senses_half_supply(C c) {
    if (c.converter == nullptr || !c.converter->spec.half_supply_threshold) return std::nullopt;
    const DcVolts wanted = *c.converter->spec.half_supply_threshold;
    if (c.signal.dc_each.low && *c.signal.dc_each.low >= wanted) return true;
    if (c.signal.dc_each.high && *c.signal.dc_each.high < wanted) return false;
    return std::nullopt;
}

constexpr Column table[] = {
    {"level", "pairs", "INTEGER", "count", "how many pairs the converter takes on this job",
     [](C c) { return c.converter == nullptr ? Value{} : cell::whole(c.pairs); }},
    {"level", "headroom_db", "REAL", "dB", "the distance from the tap's most to the converter's limit",
     [](C c) { return cell::real(headroom_of(c), decibels); }},
    {"level", "drive_margin_db", "REAL", "dB", "the distance from the tap's least to the converter's minimum",
     [](C c) { return cell::real(margin_of(c), decibels); }},
    {"level", "loads_line_output", "INTEGER", "yes/no", "whether the converter loads the line output",
     [](C c) { return cell::flag(loads_output(c)); }},
    {"level", "half_supply_sensed", "INTEGER", "yes/no",
     "whether the tap's d.c. wakes a part that senses half the supply",
     [](C c) { return cell::flag(senses_half_supply(c)); }},
    {"level", "output_open_v", "REAL", "V", "the converter's output with nothing connected",
     [](C c) { return cell::real(c.chain.output_open, rms_volts); }},
    {"level", "output_v", "REAL", "V", "the converter's output into the amplifier",
     [](C c) { return cell::real(c.chain.output, rms_volts); }, true},
    {"level", "shortfall_db", "REAL", "dB", "how far the amplifier stays below its rated power",
     [](C c) { return cell::real(c.chain.shortfall, decibels); }, true},
    {"level", "reachable_w", "REAL", "W", "the power the amplifier reaches",
     [](C c) { return cell::real(c.chain.reachable, watts); }, true},
    {"level", "overload_v", "REAL", "V", "the most the converter sends at its smallest gain",
     [](C c) { return cell::real(c.chain.overload_volts, rms_volts); }},
    {"level", "overload_limit_v", "REAL", "V", "the most the amplifier's input takes",
     [](C c) { return cell::real(c.chain.overload_limit, rms_volts); }, true},
    {"level", "overloaded", "INTEGER", "yes/no", "whether the amplifier's input is overloaded",
     [](C c) { return cell::flag(c.chain.overloaded); }, true},
    {"level", "return_drop_mv", "REAL", "mV", "what the amplifier's full current loses in the body on its way back",
     [](C c) { return of(c, [](Spec s) { return cell::real(return_drop(s), dc_millivolts); }); }, true},

    {"amplifier", "name", "TEXT", "text", "the amplifier's name",
     [](C c) { return c.amplifier == nullptr ? Value{} : cell::text(c.amplifier->name); }, true},
    {"amplifier", "channels", "INTEGER", "count", "how many channels the amplifier has",
     [](C c) { return of(c, [](Spec s) { return cell::whole(s.channels); }); }, true},
    {"amplifier", "rated_w", "REAL", "W", "the amplifier's rated power",
     [](C c) { return of(c, [](Spec s) { return cell::real(rated_power(s), watts); }); }, true},
    {"amplifier", "sensitivity_high_v", "REAL", "V", "the volts for rated power at the highest gain",
     [](C c) { return of(c, [](Spec s) { return cell::real(s.sensitivity_highest_gain, rms_volts); }); }, true},
    {"amplifier", "sensitivity_low_v", "REAL", "V", "the volts for rated power at the lowest gain",
     [](C c) { return of(c, [](Spec s) { return cell::real(s.sensitivity_lowest_gain, rms_volts); }); }, true},
    {"amplifier", "input_max_v", "REAL", "V", "the amplifier's largest input",
     [](C c) { return of(c, [](Spec s) { return cell::real(s.input_max, rms_volts); }); }, true},
    {"amplifier", "input_ohms", "REAL", "ohm", "the amplifier's input impedance",
     [](C c) { return of(c, [](Spec s) { return cell::real(s.input_impedance, ohms); }); }, true},
    {"amplifier", "shield", "TEXT", "word", "what the amplifier's input shield is tied to",
     [](C c) { return of(c, [](Spec s) { return cell::word_unless(s.shield, AmplifierShield::unknown); }); }},
    {"amplifier", "shield_lift_ohms", "REAL", "ohm", "by how much the amplifier's shield is lifted",
     [](C c) { return of(c, [](Spec s) { return cell::real(s.shield_lift, ohms); }); }},
    {"amplifier", "has_speaker_input", "INTEGER", "yes/no", "whether the amplifier has a speaker-level input",
     [](C c) { return of(c, [](Spec s) { return cell::flag(s.speaker_input.has_value()); }); }, true},
    {"amplifier", "turn_on_ma", "REAL", "mA", "the current the amplifier's turn-on input draws",
     [](C c) { return of(c, [](Spec s) { return cell::real(s.turn_on_current, milliamps); }); }, true},
    {"amplifier", "least_supply_v", "REAL", "V d.c.", "the least supply the amplifier works on",
     [](C c) { return of(c, [](Spec s) { return cell::real(s.least_supply, dc_volts); }); }, true},
};

}  // namespace

std::span<const Column> chain_columns() {
    return table;
}

}  // namespace tapbook
