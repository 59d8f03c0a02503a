// What system notes say of the separate amplifier, and power notes of a switched circuit.
#include <catch2/catch.hpp>

#include "evidence/notes.h"

using namespace tapbook;
using ledgers::known;
using ledgers::pair_note;

namespace {

Note system_note(int number, std::string shop, std::optional<bool> premium) {
    Note note = pair_note(number, "", "").by(std::move(shop));
    note.kind = NoteKind::system;
    note.premium = premium;
    return note;
}

Note power_note(int number, std::string shop, double off, double accessory, double run, std::string_view wire) {
    Note note = pair_note(number, "", "").by(std::move(shop));
    note.kind = NoteKind::switched;
    note.key_off = dc_volts(off);
    note.accessory = dc_volts(accessory);
    note.run = dc_volts(run);
    note.wire = wire_colour_from_code(wire);
    return note;
}

}  // namespace

TEST_CASE("two shops that find a separate amplifier make it PROVEN, a third that finds none makes it MIXED") {
    std::vector notes = {system_note(1, "S1", true), system_note(2, "S2", true), system_note(3, "S4", std::nullopt)};
    CHECK(premium_standing(notes, known()).value == "true");
    CHECK(premium_standing(notes, known()).grade == Grade::proven);
    notes.push_back(system_note(4, "S3", false));
    CHECK(premium_standing(notes, known()).grade == Grade::mixed);
    CHECK(premium_standing({}, known(), {}, 1).grade == Grade::pulled);
}

TEST_CASE("volts of a power circuit vote as their class, colours apart from it") {
    const std::vector notes = {power_note(1, "S1", 0, 13.9, 14.1, "YE"), power_note(2, "S2", 0.1, 12.2, 12.4, "RD")};
    const auto standing = switched_standing(notes, known());
    CHECK(standing.circuit.grade == Grade::proven);
    CHECK(standing.live == SwitchedClass::accessory);
    CHECK(standing.wire.grade == Grade::mixed);
    CHECK_FALSE(standing.colour);
    CHECK(standing.relied_on.size() == 2);
    CHECK(standing.notes == 2);
}

TEST_CASE("a power note from the other side of the connector speaks for the class, not for the colour") {
    std::vector notes = {power_note(1, "S1", 0, 13.9, 14.1, "YE"), power_note(2, "S2", 0, 12.2, 12.4, "RD")};
    notes[1].side = ConnectorSide::body;
    const auto standing = switched_standing(notes, known(), {}, 0, ConnectorSide::radio);
    CHECK(standing.circuit.grade == Grade::proven);
    CHECK(standing.colour == wire_colour_from_code("YE"));
    CHECK(standing.other_side_notes == 1);
}

TEST_CASE("a power note without all its volts leaves the class BLANK") {
    Note note = power_note(1, "S1", 0, 0, 0, "YE");
    note.run.reset();
    const auto standing = switched_standing(std::vector{note}, known());
    CHECK(standing.circuit.grade == Grade::blank);
    CHECK(standing.wire.grade == Grade::one_car);
}

TEST_CASE("a circuit stays live as long as the longest of the notes that support its class measured") {
    std::vector notes = {power_note(1, "S1", 0, 13.9, 14.1, "YE"), power_note(2, "S2", 0, 12.2, 12.4, "YE"),
                         power_note(3, "S3", 0, 13.0, 13.2, "YE"), power_note(4, "S4", 0, 12.9, 13.1, "YE"),
                         power_note(5, "S5", 0, 0, 12.4, "YE")};
    CHECK_FALSE(switched_standing(notes, known()).stays_live);
    notes[0].retained = seconds(40);
    notes[1].retained = seconds(610);
    notes[4].retained = seconds(3600);  // says ignition: has no say on how long an accessory circuit stays live
    const auto standing = switched_standing(notes, known());
    REQUIRE(standing.live == SwitchedClass::accessory);
    REQUIRE(standing.stays_live);
    CHECK(standing.stays_live->in(seconds) == 610);
}
