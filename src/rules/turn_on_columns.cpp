// The columns of what wakes the amplifier: the source, the circuit it is taken from, its volts in each position of the
// key, and the currents. A source without a circuit of the car (the part's own, the amplifier's own input) has no
// volts.
#include "rules/column_values.h"

namespace tapbook {
namespace {

using C = const Candidate&;
using sqlite::Value;
using Facts = const TurnOnFacts&;
using Tap = const TapFacts&;

template <class Give>
Value of(C c, Give give) {
    if (c.turn_on == nullptr) return std::monostate{};
    return give(*c.turn_on);
}

template <class Give>
Value of_tap(C c, Give give) {
    if (c.turn_on == nullptr || !c.turn_on->tap) return std::monostate{};
    return give(*c.turn_on->tap);
}

std::string protects_words(Tap tap) {
    std::string all;
    for (const Protects one : tap.circuit.protects) {
        if (!all.empty()) all += ", ";
        for (const char c : word_of(one)) all += c == '_' ? ' ' : c;
    }
    return all;
}

std::int64_t protects_count(Facts facts) {
    return facts.tap ? static_cast<std::int64_t>(facts.tap->circuit.protects.size()) : 0;
}

// What notes measured goes before what the entry expects.
std::optional<Seconds> stays_live(Tap tap) {
    return tap.switched.stays_live ? tap.switched.stays_live : tap.circuit.stays_live;
}

// Of the converter's own turn-on only.
std::optional<Seconds> hold_time(C c) {
    if (c.turn_on->kind != TurnOnKind::converter || c.converter == nullptr) return std::nullopt;
    return c.converter->spec.turn_on_hold;
}

std::optional<bool> input_wakes(C c) {
    if (c.turn_on->kind != TurnOnKind::own_input || c.amplifier == nullptr) return std::nullopt;
    const auto& input = c.amplifier->spec.speaker_input;
    return input ? input->makes_turn_on : std::nullopt;
}

Value days_awake(C c) {
    if (c.amplifier == nullptr || !c.amplifier->spec.idle_current) return std::monostate{};
    const auto standing = standing_time(c.vehicle.battery_capacity, c.vehicle.battery_reserve_minutes,
                                        *c.amplifier->spec.idle_current, true);
    if (!standing) return std::monostate{};
    constexpr double seconds_a_day = 86400;
    return standing->after.in(seconds) / seconds_a_day;
}

constexpr Column table[] = {
    {"turn_on", "kind", "TEXT", "word", "where the turn-on comes from",
     [](C c) { return of(c, [](Facts f) { return cell::word(std::optional(f.kind)); }); }},
    {"turn_on", "code", "TEXT", "text", "the code of the turn-on",
     [](C c) { return of(c, [](Facts f) { return cell::text(f.code); }); }},
    {"turn_on", "has_circuit", "INTEGER", "yes/no", "whether the turn-on is taken from a circuit of the car",
     [](C c) { return of(c, [](Facts f) { return cell::flag(f.tap.has_value()); }); }},
    {"turn_on", "place", "TEXT", "text", "where the turn-on circuit is reached",
     [](C c) { return of_tap(c, [](Tap t) { return cell::text(t.tap.place); }); }},
    {"turn_on", "connector", "TEXT", "text", "the connector or slot of the turn-on circuit",
     [](C c) { return of_tap(c, [](Tap t) { return cell::text(t.tap.connector); }); }},
    {"turn_on", "role", "TEXT", "word", "what the turn-on circuit is for",
     [](C c) { return of_tap(c, [](Tap t) { return cell::word(std::optional(t.circuit.role)); }); }},
    {"turn_on", "carries", "TEXT", "text", "what else hangs on the turn-on circuit",
     [](C c) { return of_tap(c, [](Tap t) { return cell::text(t.circuit.carries); }); }},
    {"turn_on", "protects", "INTEGER", "count", "how many things that keep people safe the circuit feeds, as recorded",
     [](C c) { return of(c, [](Facts f) { return cell::whole(protects_count(f)); }); }},
    {"turn_on", "protects_words", "TEXT", "text", "what the turn-on circuit protects",
     [](C c) { return of_tap(c, [](Tap t) { return cell::text(protects_words(t)); }); }},
    {"turn_on", "switching", "TEXT", "word", "how the turn-on circuit is switched",
     [](C c) { return of_tap(c, [](Tap t) { return cell::word(t.circuit.switching); }); }},
    {"turn_on", "class", "TEXT", "word", "when the turn-on circuit is live",
     [](C c) { return of_tap(c, [](Tap t) { return cell::word(t.switched.live); }); }},
    {"turn_on", "grade", "TEXT", "word", "the grade of the notes on when the turn-on circuit is live",
     [](C c) { return of_tap(c, [](Tap t) { return cell::text(word_of(t.switched.circuit.grade)); }); }},
    {"turn_on", "off_v", "REAL", "V d.c.", "what the turn-on circuit reads with the key off",
     [](C c) { return of(c, [](Facts f) { return cell::real(f.volts.off, dc_volts); }); }},
    {"turn_on", "accessory_v", "REAL", "V d.c.", "what the turn-on circuit reads in accessory",
     [](C c) { return of(c, [](Facts f) { return cell::real(f.volts.accessory, dc_volts); }); }},
    {"turn_on", "run_v", "REAL", "V d.c.", "what the turn-on circuit reads in run",
     [](C c) { return of(c, [](Facts f) { return cell::real(f.volts.run, dc_volts); }); }},
    {"turn_on", "crank_v", "REAL", "V d.c.", "what the turn-on circuit reads while the engine starts",
     [](C c) { return of(c, [](Facts f) { return cell::real(f.volts.crank, dc_volts); }); }},
    {"turn_on", "stays_live_s", "REAL", "s", "how long the turn-on circuit stays live after key off, noted or expected",
     [](C c) { return of_tap(c, [](Tap t) { return cell::real(stays_live(t), seconds); }); }},
    {"turn_on", "fuse_a", "REAL", "A", "the fuse of the turn-on circuit",
     [](C c) { return of_tap(c, [](Tap t) { return cell::real(t.circuit.fuse, amps); }); }},
    {"turn_on", "loads_ma", "REAL", "mA", "the current of everything that hangs on the turn-on",
     [](C c) { return of(c, [](Facts f) { return cell::real(f.current.loads, milliamps); }); }, true},
    {"turn_on", "limit_ma", "REAL", "mA", "the most that may be taken from the turn-on",
     [](C c) { return of(c, [](Facts f) { return cell::real(std::optional(f.current.limit), milliamps); }); }},
    {"turn_on", "limit_assumed", "INTEGER", "yes/no", "whether that limit is assumed",
     [](C c) { return of(c, [](Facts f) { return cell::flag(f.current.limit_assumed); }); }},
    {"turn_on", "carried", "INTEGER", "yes/no", "whether the turn-on carries what hangs on it",
     [](C c) { return of(c, [](Facts f) { return cell::flag(f.current.carried); }); }, true},
    {"turn_on", "relay_carried", "INTEGER", "yes/no", "whether the turn-on carries the coil of a relay",
     [](C c) { return of(c, [](Facts f) { return cell::flag(f.current.relay_carried); }); }},
    {"turn_on", "relay_coil_ma", "REAL", "mA", "the most that the coil of a relay draws",
     [](C c) { return of(c, [](Facts) { return cell::real(std::optional(relay_coil_high), milliamps); }); }},
    {"turn_on", "hold_s", "REAL", "s", "how long the part's own turn-on holds without a signal",
     [](C c) { return of(c, [&](Facts) { return cell::real(hold_time(c), seconds); }); }},
    {"turn_on", "quiet_passage_s", "REAL", "s", "how long music may be too quiet to be sensed, as assumed",
     [](C c) { return of(c, [](Facts) { return cell::real(std::optional(quiet_passage), seconds); }); }},
    {"turn_on", "input_wakes", "INTEGER", "yes/no", "whether the speaker-level input wakes the amplifier",
     [](C c) { return of(c, [&](Facts) { return cell::flag(input_wakes(c)); }); }},
    {"turn_on", "days_awake", "REAL", "days", "how many days the battery lasts with the amplifier awake",
     [](C c) { return of(c, [&](Facts) { return days_awake(c); }); }},
};

}  // namespace

std::span<const Column> turn_on_columns() {
    return table;
}

}  // namespace tapbook
