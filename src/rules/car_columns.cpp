// The columns of the car, its sound system and the circuit: what the entries expect, with what the notes say about the
// separate amplifier.
#include <algorithm>

#include "rules/column_values.h"

namespace tapbook {
namespace {

using C = const Candidate&;
using sqlite::Value;

std::optional<bool> noted_premium(const SystemFacts& system) {
    if (!is_looked_at(system.premium)) return std::nullopt;
    return *system.premium.value == "true";
}

// Does a separate amplifier feed this speaker circuit? An entry's "radio" is not believed against notes that show an
// amplifier nobody expected, nor while notes disagree about one.
std::optional<bool> premium_side(C c) {
    if (c.tap.circuit.role != Role::speaker) return false;
    const auto noted = noted_premium(c.system);
    const bool disputed = c.system.premium.grade == Grade::mixed;
    const auto expected = c.system.entry.premium_expected;
    if (c.tap.circuit.fed_by == FedBy::amplifier) return true;
    if (c.tap.circuit.fed_by == FedBy::radio) {
        if (expected != true && (disputed || noted == true)) return std::nullopt;
        return false;
    }
    if (disputed) return std::nullopt;
    if (noted) return *noted ? std::nullopt : std::optional(false);
    return expected == false ? std::optional(false) : std::nullopt;
}

std::optional<bool> premium_differs(C c) {
    const auto noted = noted_premium(c.system);
    if (!noted || !c.system.entry.premium_expected) return std::nullopt;
    return *noted != *c.system.entry.premium_expected;
}

// How many hazards are on record; absent when nobody has listed any.
std::optional<std::int64_t> count_if_listed(const std::vector<Hazard>& hazards, bool listed) {
    if (hazards.empty() && !listed) return std::nullopt;
    return static_cast<std::int64_t>(hazards.size());
}

std::optional<Watts> rating_limit(C c) {
    const auto impossible = impossible_rating(c.output.stage);
    return impossible ? std::optional(impossible->limit) : std::nullopt;
}

constexpr Column table[] = {
    {"vehicle", "first_year", "INTEGER", "year", "the first model year",
     [](C c) { return cell::whole(c.vehicle.first_year); }},
    {"vehicle", "last_year", "INTEGER", "year", "the last model year",
     [](C c) { return cell::whole(c.vehicle.last_year); }},
    {"vehicle", "start_stop", "INTEGER", "yes/no", "whether the engine stops and starts by itself",
     [](C c) { return cell::flag(c.vehicle.start_stop); }},
    {"vehicle", "crank_v", "REAL", "V d.c.", "what is left of the supply while the engine starts, as assumed",
     [](C) { return cell::real(std::optional(Supply{}.crank), dc_volts); }},
    {"vehicle", "has_48v", "INTEGER", "yes/no", "whether the car has 48 V circuits",
     [](C c) { return cell::flag(c.vehicle.has_48v); }},
    {"vehicle", "high_voltage", "INTEGER", "yes/no", "whether the car has a high-voltage battery",
     [](C c) { return cell::flag(c.vehicle.high_voltage); }},
    {"vehicle", "hazards", "INTEGER", "count", "what is dangerous in the whole car",
     [](C c) { return cell::whole(count_if_listed(c.vehicle.hazards, c.vehicle.hazards_listed)); }},

    {"system", "name", "TEXT", "text", "the name of the sound system",
     [](C c) { return cell::text(c.system.entry.name); }},
    {"system", "premium", "INTEGER", "yes/no", "whether the system has a separate amplifier, seen on a car",
     [](C c) { return cell::flag(noted_premium(c.system)); }},
    {"system", "premium_grade", "TEXT", "word", "the grade of the notes on the separate amplifier",
     [](C c) { return cell::text(word_of(c.system.premium.grade)); }},
    {"system", "premium_expected", "INTEGER", "yes/no", "whether the entry expects a separate amplifier",
     [](C c) { return cell::flag(c.system.entry.premium_expected); }},
    {"system", "premium_differs", "INTEGER", "yes/no", "whether notes contradict the entry on the separate amplifier",
     [](C c) { return cell::flag(premium_differs(c)); }},
    {"system", "volume_set", "TEXT", "word", "which unit sets the volume",
     [](C c) { return cell::word(c.system.entry.volume_set); }},
    {"system", "band_split", "INTEGER", "yes/no", "whether the outputs carry different bands",
     [](C c) { return cell::flag(c.system.entry.band_split); }},
    {"system", "watches_load", "INTEGER", "yes/no", "whether radio or amplifier watches its speakers",
     [](C c) { return cell::flag(c.system.entry.watches_load); }},
    {"system", "cuts_bass", "INTEGER", "yes/no", "whether the bass is cut as the volume rises",
     [](C c) { return cell::flag(c.system.entry.cuts_bass); }},
    {"system", "noise_cancelling", "INTEGER", "yes/no", "whether the car cancels noise through its speakers",
     [](C c) { return cell::flag(c.system.entry.noise_cancelling); }},
    {"system", "engine_sound", "INTEGER", "yes/no", "whether the car plays engine sound through its speakers",
     [](C c) { return cell::flag(c.system.entry.engine_sound); }},
    {"system", "sound_injected", "TEXT", "text", "where noise cancelling or engine sound is added",
     [](C c) { return cell::text(c.system.entry.sound_injected); }},
    {"system", "power_taps", "INTEGER", "count", "how many places with 12 V are recorded for this system",
     [](C c) { return cell::whole(c.surroundings.power_taps); }},

    {"circuit", "role", "TEXT", "word", "what the circuit is for",
     [](C c) { return cell::word(std::optional(c.tap.circuit.role)); }},
    {"circuit", "position", "TEXT", "word", "which speaker the circuit is for",
     [](C c) { return cell::word(c.tap.circuit.position); }},
    {"circuit", "expected_drive", "TEXT", "word", "the drive the entry expects",
     [](C c) { return cell::word_unless(c.tap.circuit.output.drive, Drive::unknown); }},
    {"circuit", "fed_by", "TEXT", "word", "whether radio or amplifier feeds the circuit",
     [](C c) { return cell::word(c.tap.circuit.fed_by); }},
    {"circuit", "premium_side", "INTEGER", "yes/no", "whether a separate amplifier feeds this speaker",
     [](C c) { return cell::flag(premium_side(c)); }},
    {"circuit", "behind", "TEXT", "word", "whether a capacitor or crossover lies before the tap",
     [](C c) { return cell::word(c.tap.circuit.behind); }},
    {"circuit", "level", "TEXT", "word", "whether the level follows the volume control",
     [](C c) { return cell::word(c.tap.circuit.level); }},
    {"circuit", "band_low_hz", "REAL", "Hz", "the lowest note the circuit carries",
     [](C c) { return cell::real(c.tap.circuit.band_low, hertz); }},
    {"circuit", "band_high_hz", "REAL", "Hz", "the highest note the circuit carries",
     [](C c) { return cell::real(c.tap.circuit.band_high, hertz); }},
    {"circuit", "rated_w", "REAL", "W", "the printed power",
     [](C c) { return cell::real(c.tap.circuit.output.rated, watts); }},
    {"circuit", "rated_ohms", "REAL", "ohm", "the load the printed power is stated for",
     [](C c) { return cell::real(c.tap.circuit.output.rated_at, ohms); }},
    {"circuit", "rating_limit_w", "REAL", "W",
     "the most that an impossible printed power can really be; only when it is",
     [](C c) { return cell::real(rating_limit(c), watts); }},
    {"circuit", "rating_is_label", "INTEGER", "yes/no", "whether the printed power is a label no output can reach",
     [](C c) { return cell::flag(is_label_only(c.output.stage)); }},
    {"circuit", "rail_v", "REAL", "V", "the rail of a boosted output",
     [](C c) { return cell::real(c.tap.circuit.output.rail, dc_volts); }},
    {"circuit", "output_ohms", "REAL", "ohm", "the output impedance",
     [](C c) { return cell::real(c.tap.circuit.output.output_impedance, ohms); }},
};

}  // namespace

std::span<const Column> car_columns() {
    return table;
}

}  // namespace tapbook
