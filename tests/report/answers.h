// Every text and every JSON answer of one made-up shop, for laws that hold for all of them. Names, places and remarks
// are whatever the test puts in.
#pragma once

#include <functional>
#include <string>
#include <utility>
#include <vector>

#include "report/report.h"
#include "report_cars.h"

namespace tapbook::answers {

struct Answer {
    std::string name, text;
};

struct Shop {
    TapsAnswer taps;
    Advice advice;
    std::vector<VehicleHit> hits;
    AddReport added;
    std::string file = "brelk.toml";
    Rule rule;
    std::vector<Complaint> complaints;
};

using Naming = std::function<std::string()>;

inline RuleBook& shipped_book() {
    static RuleBook book = RuleBook::shipped();
    return book;
}

inline void rename(TapFacts& facts, const Naming& name, const std::string& system) {
    facts.system = system;
    facts.code = fixture::car_path + "/" + system + "/" + name() + "/" + name();
    facts.circuit.carries = name();
    facts.tap.place = name();
    facts.tap.connector = name();
    facts.tap.plug_in_lead = name();
    facts.tap.panels = {name(), name()};
    facts.tap.remarks = name();
    facts.pair.positive_mark = name();
    if (!facts.pair.positive_cavity.value) return;
    facts.pair.positive_cavity.value = name();
    facts.pair.negative_cavity.value = name();
    facts.pair.relied_on.front().method = name();
    facts.pair.relied_on.front().date = name();
}

inline void rename(JobFacts& facts, const Naming& name) {
    const std::string system = name();
    Vehicle& car = facts.car.vehicle;
    car.make = name(), car.model = name(), car.body = name(), car.remarks = name();
    car.cautions = {name()};
    car.airbag_wait_source = name();
    for (auto& each : facts.car.systems) {
        each.entry.name = name();
        each.entry.tells = {name(), name()};
    }
    facts.car.systems.front().code = system;
    facts.car.systems.front().entry.path = fixture::car_path + "/" + system;
    for (auto& tap : facts.car.taps) rename(tap, name, system);
    for (auto& tap : facts.car.unrecorded) rename(tap, name, system);
    for (auto& converter : facts.converters) {
        converter.part.path = name(), converter.part.maker = name(), converter.part.name = name();
        converter.part.remarks = name();
    }
    facts.amplifier->path = name(), facts.amplifier->maker = name(), facts.amplifier->name = name();
}

// The shop around one job: cars found, a file added, a rule, complaints. `name` gives each name; without it the names
// stay as they are.
inline Shop shop_of(JobFacts facts, const Naming& name = {}) {
    const auto named = [&](const std::string& usual) { return name ? name() : usual; };
    if (name) rename(facts, name);
    AdviseRequest request;
    request.system = facts.car.systems.front().code;
    const Vehicle& car = facts.car.vehicle;
    Shop shop{cars::taps_of(facts), advise(facts, request, shipped_book()), {}, {}, {}, {}, {}};
    shop.hits = {{{named(car.path), car.make, car.model, car.body, 2014, 2018}},
                 {{named("orlin/brelk/wagon/2014"), named("Orlin"), "Brelk", named("wagon"), 2014, 2014}, 1, false}};
    shop.added.lines = {named("new  vehicle  orlin/brelk/sedan/2014")};
    shop.added.moves = {{named("orlin/brelk/sedan/2014/base"), Grade::one_car, Grade::mixed}};
    shop.file = named("brelk.toml");
    shop.rule = shipped_book().rules().front();
    shop.rule.shipped = false;
    shop.rule.id = named(shop.rule.id), shop.rule.asks = named(shop.rule.asks), shop.rule.says = named(shop.rule.says);
    shop.rule.basis = named(shop.rule.basis);  // its condition has no room for such text: the sandbox refuses it
    shop.rule.place.file = named("shop.rules.toml");
    const std::string line = named("positive = \"wht/blu\"");
    shop.complaints = {{{named("brelk.toml"), 4, static_cast<int>(line.size() / 2) + 1, line}, named("no"), named("")}};
    return shop;
}

// All texts but the complaints, which are not laid out for a screen.
inline std::vector<Answer> texts(const Shop& shop, const Screen& screen) {
    MeterReadings readings;
    readings.supply_mv = 14000;
    readings.dc_positive_mv = readings.dc_negative_mv = 7000;
    readings.ac_mv = 6000;
    const CableResistance cable = resistance(Awg{4});
    const WireAnswer wire{cable, drop(cable.per_metre, metres(5), amps(70)), dc_volts(13.8), metres(5), amps(70)};
    return {{"taps", taps_text(shop.taps, screen)},
            {"advice", advice_text(shop.advice, Detail::short_form, screen)},
            {"why", advice_text(shop.advice, Detail::why, screen)},
            {"find", find_text(shop.hits, screen)},
            {"meter", meter_text(judge(readings), screen)},
            {"add", add_text(shop.added, shop.file, screen)},
            {"rules", rules_text(shipped_book(), screen)},
            {"rule", rule_text(RuleBook({shop.rule}), 0, screen)},
            {"columns", columns_text(screen)},
            {"swing", swing_text(calculate_swing(fixture::bridged_18_watts(), ohms(4)), screen)},
            {"wire", wire_text(wire, screen)},
            {"colour", colour_text(*wire_colour_from_code("LBU/DGN/OG"), screen)},
            {"gain", gain_text(rms_volts(17.32), watts(75), ohms(4), dbfs(-10), screen)}};
}

inline std::vector<Answer> jsons(const Shop& shop) {
    return {{"taps", taps_json(shop.taps)},
            {"advise", advice_json(shop.advice)},
            {"find", find_json(shop.hits)},
            {"add", add_json(shop.added, shop.file)},
            {"rules", rules_json(shipped_book())},
            {"rules.columns", columns_json()},
            {"calc.colour", colour_json(*wire_colour_from_code("WH/BK"))},
            {"calc.swing", swing_json({})},
            {"gain", gain_json(rms_volts(17.32))}};
}

inline std::vector<std::string> lines_of(const std::string& text) {
    std::vector<std::string> lines;
    std::size_t at = 0;
    while (at < text.size()) {
        const auto end = std::min(text.find('\n', at), text.size());
        lines.push_back(text.substr(at, end - at));
        at = end + 1;
    }
    return lines;
}

// Escape sequences that set colours are taken out: ESC [ digits and semicolons m.
inline std::string without_escapes(const std::string& text) {
    std::string out;
    for (std::size_t at = 0; at < text.size(); ++at) {
        if (text[at] == '\x1b' && at + 1 < text.size() && text[at + 1] == '[') {
            const auto end = text.find_first_not_of("0123456789;", at + 2);
            if (end != std::string::npos && text[end] == 'm') {
                at = end;
                continue;
            }
        }
        out += text[at];
    }
    return out;
}

// Names that a screen would obey, that JSON must escape, that are wide, or that are no UTF-8.
inline std::string hostile_name(ledgers::Dice& dice) {
    static const std::vector<std::string> pieces = {
        "\x1b[31m", "\x1b]0;x\x07", "\r",           "\n",       "\t",        "\x7f",   "\b",      std::string(1, '\0'),
        "\u0085",   "\u009b31m",    "\u202e",       "\u2066",   "\u200b",    "\u200f", "\ufeff",  "\U000e0041",
        "\xff",     "\xc3",         "\xed\xa0\x80", "\xf0\x9f", "é",         "日本",   "e\u0301", "\"",
        "\\",       "{}",           "{0}",          "%s",       "</script>", " ",      "  ",      "word"};
    std::string name;
    for (int i = dice.below(6); i >= 0; --i) name += dice.one_of(pieces);
    return name;
}

}  // namespace tapbook::answers
