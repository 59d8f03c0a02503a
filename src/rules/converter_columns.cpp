// The columns of the converter, held against the tap where a number depends on both.
#include "rules/column_values.h"

namespace tapbook {
namespace {

using C = const Candidate&;
using sqlite::Value;

// NULL without a converter, else the cell of its data.
template <class Give>
Value of(C c, Give give) {
    if (c.converter == nullptr) return std::monostate{};
    return give(c.converter->spec);
}

using Spec = const ConverterSpec&;

std::optional<bool> is_passive(Spec s) {
    switch (s.topology) {
        case Topology::transformer:
        case Topology::resistive:
            return true;
        case Topology::direct:
        case Topology::active_line_level:
        case Topology::active_speaker_level:
            break;
    }
    return false;
}

std::optional<bool> withstands_clipping(C c) {
    const auto& high = c.signal.clipped.high;
    return high ? withstands(c.converter->spec, *high) : std::nullopt;
}

// Of a maximum that comes from a bare watt rating: which part of it is assumed?
std::optional<bool> from_watt_rating(Spec s) {
    return !s.input_max && s.watt_rating.has_value();
}

std::optional<bool> kind_assumed(Spec s) {
    const auto limit = s.input_max ? std::nullopt : input_max_from_watt_rating(s);
    return limit && limit->kind_assumed;
}

std::optional<bool> note_not_stated(Spec s) {
    return s.topology == Topology::transformer && input_max(s).has_value() && !s.input_max_at;
}

constexpr Column table[] = {
    {"converter", "name", "TEXT", "text", "the converter's name",
     [](C c) { return c.converter == nullptr ? Value{} : cell::text(c.converter->name); }},
    {"converter", "topology", "TEXT", "word", "how the converter works",
     [](C c) { return of(c, [](Spec s) { return cell::word(std::optional(s.topology)); }); }},
    {"converter", "passive", "INTEGER", "yes/no", "whether the converter works without power",
     [](C c) { return of(c, [](Spec s) { return cell::flag(is_passive(s)); }); }},
    {"converter", "channels", "INTEGER", "count", "how many pairs the converter takes",
     [](C c) { return of(c, [](Spec s) { return cell::whole(s.channels); }); }},
    {"converter", "adding", "TEXT", "word", "whether the converter adds its inputs",
     [](C c) { return of(c, [](Spec s) { return cell::word(s.adding); }); }},
    {"converter", "input_min_v", "REAL", "V", "the least input the converter needs",
     [](C c) { return of(c, [](Spec s) { return cell::real(s.input_min, rms_volts); }); }},
    {"converter", "input_max_v", "REAL", "V", "the converter's largest input",
     [](C c) { return of(c, [](Spec s) { return cell::real(input_max(s), rms_volts); }); }},
    {"converter", "input_max_at_hz", "REAL", "Hz", "the note at which the largest input holds",
     [](C c) { return of(c, [](Spec s) { return cell::real(s.input_max_at, hertz); }); }},
    {"converter", "limit_note_missing", "INTEGER", "yes/no", "whether a winding's limit lacks its note",
     [](C c) { return of(c, [](Spec s) { return cell::flag(note_not_stated(s)); }); }},
    {"converter", "limit_at_lowest_v", "REAL", "V", "what the converter takes at the lowest note",
     [](C c) { return of(c, [&](Spec s) { return cell::real(limit_at(s, c.job.lowest), rms_volts); }); }},
    {"converter", "from_watt_rating", "INTEGER", "yes/no", "whether the largest input comes from a bare watt rating",
     [](C c) { return of(c, [](Spec s) { return cell::flag(from_watt_rating(s)); }); }},
    {"converter", "watt_kind_assumed", "INTEGER", "yes/no", "whether the kind of that watt rating is assumed",
     [](C c) { return of(c, [](Spec s) { return cell::flag(kind_assumed(s)); }); }},
    {"converter", "survives_v", "REAL", "V", "what the converter stands without harm",
     [](C c) { return of(c, [](Spec s) { return cell::real(s.survives, rms_volts); }); }},
    {"converter", "withstands_clipping", "INTEGER", "yes/no", "whether the converter stands a clipped output",
     [](C c) { return of(c, [&](Spec) { return cell::flag(withstands_clipping(c)); }); }, false, true},
    {"converter", "input_ohms", "REAL", "ohm", "the converter's input impedance",
     [](C c) { return of(c, [](Spec s) { return cell::real(s.input_impedance, ohms); }); }},
    {"converter", "reference", "TEXT", "word", "what the converter's input refers to",
     [](C c) { return of(c, [](Spec s) { return cell::word_unless(s.reference, Reference::unknown); }); }},
    {"converter", "negatives", "TEXT", "word", "whether the converter joins the minus inputs",
     [](C c) { return of(c, [](Spec s) { return cell::word_unless(s.negatives, Negatives::unknown); }); }},
    {"converter", "isolates", "INTEGER", "yes/no", "whether the converter isolates the grounds",
     [](C c) { return of(c, [](Spec s) { return cell::flag(s.isolates_grounds); }); }},
    {"converter", "output_shield", "TEXT", "word", "what the converter's output shield is tied to",
     [](C c) { return of(c, [](Spec s) { return cell::word(s.output_shield); }); }},
    {"converter", "common_mode_max_v", "REAL", "V d.c.", "the d.c. the converter takes on both conductors",
     [](C c) { return of(c, [](Spec s) { return cell::real(s.common_mode_max, dc_volts); }); }},
    {"converter", "dc_difference_max_v", "REAL", "V d.c.", "the d.c. the converter takes between the conductors",
     [](C c) { return of(c, [](Spec s) { return cell::real(s.dc_difference_max, dc_volts); }); }},
    {"converter", "gain_min", "REAL", "x", "the converter's smallest gain",
     [](C c) { return of(c, [](Spec s) { return cell::real(s.gain_min, ratio); }); }},
    {"converter", "gain_max", "REAL", "x", "the converter's largest gain",
     [](C c) { return of(c, [](Spec s) { return cell::real(s.gain_max, ratio); }); }},
    {"converter", "output_max_v", "REAL", "V", "the converter's largest output",
     [](C c) { return of(c, [](Spec s) { return cell::real(s.output_max, rms_volts); }); }},
    {"converter", "output_ohms", "REAL", "ohm", "the converter's output impedance",
     [](C c) { return of(c, [](Spec s) { return cell::real(s.output_impedance, ohms); }); }},
    {"converter", "low_corner_hz", "REAL", "Hz", "where the converter's bass ends",
     [](C c) { return of(c, [](Spec s) { return cell::real(s.low_corner, hertz); }); }},
    {"converter", "corner_loss_db", "REAL", "dB", "what the converter loses at the lowest note",
     [](C c) { return of(c, [&](Spec s) { return cell::real(corner_loss(s, c.job.lowest), decibels); }); }},
    {"converter", "needs_power", "INTEGER", "yes/no", "whether the converter needs 12 V",
     [](C c) { return of(c, [](Spec s) { return cell::flag(s.needs_power); }); }},
    {"converter", "power_ma", "REAL", "mA", "the current the converter draws",
     [](C c) { return of(c, [](Spec s) { return cell::real(s.power_current, milliamps); }); }},
    {"converter", "standby_ma", "REAL", "mA", "the current the converter draws while off",
     [](C c) { return of(c, [](Spec s) { return cell::real(s.standby_current, milliamps); }); }},
    {"converter", "least_supply_v", "REAL", "V d.c.", "the least supply the converter works on",
     [](C c) { return of(c, [](Spec s) { return cell::real(s.least_supply, dc_volts); }); }},
    {"converter", "turn_on", "TEXT", "word", "how the converter makes a turn-on signal",
     [](C c) { return of(c, [](Spec s) { return cell::word(s.turn_on); }); }},
    {"converter", "half_supply_threshold_v", "REAL", "V d.c.", "the d.c. on the tap that its turn-on wants",
     [](C c) { return of(c, [](Spec s) { return cell::real(s.half_supply_threshold, dc_volts); }); }},
    {"converter", "turn_on_ma", "REAL", "mA", "the current its turn-on output gives",
     [](C c) { return of(c, [](Spec s) { return cell::real(s.turn_on_current, milliamps); }); }},
    {"converter", "on_hand", "INTEGER", "count", "how many lie on the shelf",
     [](C c) { return c.terms == nullptr ? Value{} : cell::whole(c.terms->on_hand); }},
};

}  // namespace

std::span<const Column> converter_columns() {
    return table;
}

}  // namespace tapbook
