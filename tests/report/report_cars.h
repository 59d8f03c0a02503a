// Invented cars for the tests of the reports, their standings counted from notes as in a real catalog: a plain one
// where everything is settled, one where much is disputed, and one of which nothing is known.
#pragma once

#include <string>
#include <vector>

#include "evidence/notes.h"
#include "rules/facts_fixture.h"

namespace tapbook::cars {

using ledgers::known;
using ledgers::pair_note;
using ledgers::Written;

inline Written noted(int number, std::string_view positive, std::string_view negative, const std::string& shop,
                     int year) {
    Written note = pair_note(number, positive, negative);
    note.by(shop, "car-" + shop).how(Method::metered, PolarityMethod::phase).in(year);
    note.id[0] = static_cast<unsigned char>(number);  // reports show the first digits
    note.drive = Drive::bridged;
    return note;
}

// Two shops metered two cars and agree; cavities 3 and 4.
inline PairStanding agreed(std::string_view positive, std::string_view negative) {
    std::vector<Note> notes = {noted(1, positive, negative, "S1", 2015), noted(2, positive, negative, "S2", 2017)};
    for (Note& note : notes) note.positive_cavity = "3", note.negative_cavity = "4";
    return pair_standing(notes, {}, known());
}

// Two shops of equal weight name different conductors.
inline PairStanding disputed() {
    return pair_standing(std::vector<Note>{noted(1, "WH", "WH/BK", "S1", 2015), noted(2, "GN", "GN/RD", "S2", 2017)},
                         {}, known());
}

// Two shops agree on the pair and contradict each other on which conductor is positive.
inline PairStanding polarity_disputed() {
    return pair_standing(std::vector<Note>{noted(1, "GY", "GY/BK", "S1", 2015), noted(2, "GY/BK", "GY", "S2", 2017)},
                         {}, known());
}

inline TapFacts tap(const std::string& circuit, Position position, const PairStanding& pair,
                    const std::string& system = "base") {
    TapFacts facts = fixture::radio_tap(circuit, system);
    facts.circuit.position = position;
    facts.tap.place = "radio";
    facts.tap.connector = "B block, 16 cavities";
    facts.tap.side = ConnectorSide::body;
    facts.tap.panels = {"radio trim frame", "radio, four screws"};
    facts.pair = pair;
    return facts;
}

inline TapFacts power_tap() {
    TapFacts facts = fixture::radio_tap("accessory");
    facts.code = fixture::car_path + "/base/accessory/fuse-box";
    facts.circuit.role = Role::switched_power;
    facts.circuit.carries = "radio and power socket";
    facts.circuit.fuse = amps(15);
    facts.circuit.output = {};
    facts.tap.path = facts.code;
    facts.tap.place = "fuse box";
    facts.tap.connector = "slot 14";
    facts.tap.panels = {"glove box, two clips"};
    facts.tap.minutes = 8;
    facts.tap.hazards = {Hazard::airbag_connector};
    facts.pair = {};
    std::vector<Note> notes = {noted(1, "", "", "S1", 2015), noted(2, "", "", "S2", 2017)};
    for (Note& note : notes) {
        note.kind = NoteKind::switched;
        note.drive.reset();
        note.key_off = dc_volts(0);
        note.accessory = dc_volts(12.4);
        note.run = dc_volts(13.9);
        note.wire = wire_colour_from_code("YE/RD");
    }
    facts.switched = switched_standing(notes, known());
    return facts;
}

inline TapFacts other_tap(const std::string& circuit, Role role) {
    TapFacts facts = power_tap();
    facts.code = fixture::car_path + "/base/" + circuit + "/fuse-box";
    facts.circuit.role = role;
    facts.switched = {};
    return facts;
}

inline JobFacts plain_car() {
    JobFacts facts = fixture::plain_job();
    facts.car.vehicle.body = "sedan";
    facts.car.vehicle.first_year = 2014;
    facts.car.vehicle.last_year = 2018;
    facts.car.systems.front().entry.name = "plain sound, four speakers";
    facts.car.systems.front().entry.tells = {"no badge on the door grilles"};
    facts.car.taps = {tap("front-left", Position::front_left, agreed("WH", "WH/BK")),
                      tap("front-right", Position::front_right, agreed("GY", "GY/BK")), power_tap(),
                      other_tap("dimmer", Role::illumination)};
    return facts;
}

// Front left MIXED, front right of disputed polarity, rear left without a note, rear right digital; red and brown in
// one connector; hazards; a second system; a note whose system nobody wrote down; and a car that carries high voltage.
inline JobFacts disputed_car() {
    JobFacts facts = plain_car();
    facts.practice = true;
    facts.car.year = 2016;
    Vehicle& vehicle = facts.car.vehicle;
    vehicle.high_voltage = true;
    vehicle.hazards = {Hazard::battery_in_cabin};
    vehicle.cautions = {"the radio stays awake for ten minutes after the key is out"};
    vehicle.airbag_wait_s = 90;
    vehicle.airbag_wait_source = "owner's handbook";
    facts.car.systems.push_back(fixture::plain_system("premium"));
    facts.car.systems.back().entry.name = "premium sound";
    facts.car.systems.back().entry.premium_expected = true;
    facts.car.systems.back().premium = {};
    TapFacts digital = tap("rear-right", Position::rear_right, {}, "premium");
    digital.circuit.output = {};
    digital.circuit.output.drive = Drive::digital;
    facts.car.taps = {tap("front-left", Position::front_left, disputed()),
                      tap("front-right", Position::front_right, polarity_disputed()),
                      tap("rear-left", Position::rear_left, {}),
                      digital,
                      tap("tweeter-left", Position::front_left, agreed("BN", "BN/YE")),
                      tap("tweeter-right", Position::front_right, agreed("RD", "RD/YE"))};
    for (TapFacts& each : facts.car.taps) each.tap.hazards = {Hazard::airbag_connector, Hazard::sharp_edges};
    facts.car.taps.front().tap.hazards.push_back(Hazard::side_impact_sensor);
    facts.car.taps.back().tap.plug_in_lead = "16-way lead";
    facts.car.unrecorded = {tap("front-left", Position::front_left, agreed("VT", "VT/BK"), "unrecorded")};
    return facts;
}

inline JobFacts bare_car() {
    JobFacts facts;
    facts.car.vehicle = plain_car().car.vehicle;
    facts.car.vehicle.last_year = facts.car.vehicle.first_year;
    return facts;
}

inline TapsAnswer taps_of(const JobFacts& facts, std::string_view system = "") {
    return taps_answer(facts.car, system, facts.practice);
}

inline Advice advice_of(const JobFacts& facts, const AdviseRequest& request = {}) {
    RuleBook book = RuleBook::shipped();
    return advise(facts, request, book);
}

}  // namespace tapbook::cars
