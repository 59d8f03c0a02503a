// Is each value written so that the reader takes back the same one, and so that nothing in it hides or breaks out?
#include "files/toml_writer.h"

#include <rapidcheck.h>

#include <catch2/catch.hpp>

#include "a_vehicle_file.h"
#include "random_batch.h"
#include "trade/every_wire_colour.h"

using namespace tapbook;

namespace {

const Field& field_called(EntryKind kind, std::string_view name) {
    return *find_field(fields_of(kind), name);
}

// An extract with the vehicle file's drafts, changed by `change`.
template <class Change>
WrittenFile written(Change change) {
    Extract extract;
    extract.batch = read_batch(vehicle_file, "car.toml");
    change(extract);
    return write_batch(extract);
}

}  // namespace

TEST_CASE("a text is written with what TOML would obey or nobody would see escaped") {
    CHECK(toml_text("plain 12 V") == "\"plain 12 V\"");
    CHECK(toml_text("say \"stop\" \\ go") == R"("say \"stop\" \\ go")");
    CHECK(toml_text("one\ntwo\tthree") == R"("one\ntwo\tthree")");
    CHECK(toml_text("\x1b[31m\x7f") == R"("\u001B[31m\u007F")");
    CHECK(toml_text("\u202Eleft") == R"("\u202Eleft")");
    CHECK(toml_text("größer 中 😀") == "\"größer 中 😀\"");
}

TEST_CASE("any text that a record can hold comes back from the TOML library as it was") {
    CHECK(rc::check([] {
        const std::string text = random_batch::some_text(false);
        RC_ASSERT(read_toml("remarks = " + toml_text(text), "x").find("remarks")->text == text);
    }));
}

TEST_CASE("every wire colour is spelt so that the entry reader takes it for the same colour") {
    for (const auto& colour : every_wire_colour()) {
        const auto parsed = parse_wire_colour(colour_spelling(colour));
        const auto* same = std::get_if<WireColour>(&parsed);
        if (same == nullptr || *same != colour) FAIL(colour_spelling(colour));
    }
    SUCCEED();
}

TEST_CASE("numbers are written in people's units, exactly") {
    CHECK(toml_line(field_called(EntryKind::circuit, "rating_ohms"), std::int64_t{2700}) == "rating_ohms = 2.7\n");
    CHECK(toml_line(field_called(EntryKind::vehicle, "battery_ah"), std::int64_t{70000}) == "battery_ah = 70\n");
    CHECK(toml_line(field_called(EntryKind::amplifier, "watts_at"), TextList{"4000:75000", "2000:110500"}) ==
          "watts_at = [\"4:75\", \"2:110.5\"]\n");
}

TEST_CASE("a long list has one item on each line") {
    const std::string panel(40, 'p');
    CHECK(toml_line(field_called(EntryKind::tap, "panels"), TextList{panel, panel, panel}) ==
          "panels = [\n  \"" + panel + "\",\n  \"" + panel + "\",\n  \"" + panel + "\",\n]\n");
    CHECK(toml_line(field_called(EntryKind::tap, "panels"), TextList{}) == "panels = []\n");
}

TEST_CASE("what a file could not say is a comment with its reason, and the rest is read as it is stored") {
    const auto later = [](Extract& extract) { extract.batch.entries[3].values["zz_later"] = std::string("?"); };
    const WrittenFile file = written(later);
    REQUIRE(file.commented.size() == 1);
    CHECK(file.commented[0].what == "tap base/front-left/radio-plug");
    CHECK(file.commented[0].reason == "holds the field \"zz_later\", which this version does not know");
    CHECK(file.entries == 3);
    CHECK(file.notes == 1);
    CHECK(file.text.find("\n# [[tap]]\n# at = \"base/front-left\"\n# code = \"radio-plug\"\n") != std::string::npos);
    CHECK(read_batch(file.text, "again.toml").entries.size() == 3);
}

TEST_CASE("a number beyond what a file may say makes a comment of its note") {
    const WrittenFile file =
        written([](Extract& extract) { extract.batch.notes[0].values["ac_mv"] = std::int64_t{900000}; });
    REQUIRE(file.commented.size() == 1);
    CHECK(file.commented[0].what == "note base/front-left/radio-plug");
    CHECK(file.commented[0].reason == "ac_v is 900 V RMS");
    CHECK(file.notes == 0);
}

TEST_CASE("a car whose own table a file could not say is refused with the way out") {
    try {
        written([](Extract& extract) { extract.batch.entries[0].values["charging"] = std::string("by wind"); });
        FAIL("written");
    } catch (const InputRefused& refused) {
        REQUIRE(refused.complaints().size() == 1);
        CHECK(refused.complaints()[0].message == "cannot be written as a file: charging does not know \"by wind\"");
        CHECK(refused.complaints()[0].hint ==
              "add the car with that line corrected, or export it with the version that stored it");
    }
}

TEST_CASE("notes of other shops and withdrawn ones stand in the file as comments only") {
    const WrittenFile file = written([](Extract& extract) {
        extract.notes.push_back({extract.batch.notes[0], "withdrawn (typo)"});
        extract.batch.notes.clear();
    });
    CHECK(file.notes == 0);
    CHECK(file.text.find("# note base/front-left/radio-plug: withdrawn (typo)\n# [[note]]\n") != std::string::npos);
    CHECK(read_batch(file.text, "again.toml").notes.empty());
}

TEST_CASE("a respelt make keeps the car's path, and a wrong path is refused") {
    CHECK(read_batch(with(vehicle_file, "[vehicle]", "[vehicle]\npath = \"orrery/vel/sedan/2012\""), "car.toml")
              .entries[0]
              .values.at("path") == Value(std::string("orrery/vel/sedan/2012")));
    CHECK(complaint_when("[vehicle]", "[vehicle]\npath = \"orrery/vel\"") ==
          "2:8 path \"orrery/vel\" is not a car's path | leave it out for a new car; for a known one take it from "
          "`tapbook find`");
}

TEST_CASE("the kind and the car token of a note are taken as an export writes them, and refused otherwise") {
    const std::string note = "date = 2021-06-03";
    const std::string token = "0123456789abcdef0123456789abcdef";
    const Batch batch =
        read_batch(with(vehicle_file, note, note + "\nkind = \"pair\"\ncar_token = \"" + token + "\""), "car.toml");
    CHECK(batch.notes[0].values.at("car") == Value(token));
    CHECK(complaint_when(note, note + "\nkind = \"system\"") ==
          "35:8 kind does not know \"system\" | write pair or switched, or leave it out: the circuit's role tells");
    CHECK(complaint_when(note, note + "\ncar_token = \"AB 123\"") ==
          "35:13 car_token \"AB 123\" is not one | it has 32 digits 0-9 and a-f, as an export wrote it; write car = "
          "\"plate or VIN\" instead");
    CHECK(complaint_when(note, note + "\ncar = \"AB 123\"\ncar_token = \"" + token + "\"") ==
          "36:13 car and car_token in one note | keep one of them");
}
