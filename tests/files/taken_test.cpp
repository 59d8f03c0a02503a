// What does a file that is taken become? Drafts in the file's order with their places; numbers exact, words and colours
// in the one form that is stored.
#include <fstream>
#include <sstream>

#include "a_vehicle_file.h"

using namespace tapbook;

namespace {

Batch read(const std::string& text) {
    return read_batch(text, "car.toml");
}

// What the battery's capacity becomes, in mAh.
std::int64_t stored_milliamp_hours(const std::string& number) {
    const auto batch = read(with(vehicle_file, "battery_ah = 70", "battery_ah = " + number));
    const auto* stored = find_value<std::int64_t>(batch.entries.at(0).values, "battery_mah");
    REQUIRE(stored != nullptr);
    return *stored;
}

std::string colour(const std::string& written) {
    const auto batch =
        read(with(with(vehicle_file, "positive = \"white\"", "positive = \"" + written + "\""), "white/black", "pink"));
    return text_field(batch.notes.at(0).values, "positive");
}

}  // namespace

TEST_CASE("numbers become whole small units exactly") {
    CHECK(stored_milliamp_hours("13.8") == 13800);
    CHECK(stored_milliamp_hours("1.1") + stored_milliamp_hours("2.2") ==
          stored_milliamp_hours("3.3"));            // fails in binary fractions
    CHECK(stored_milliamp_hours("1.005") == 1005);  // as a double it is 1.00499...
    CHECK(stored_milliamp_hours("70") == 70000);
    CHECK(stored_milliamp_hours("70.0") == 70000);
    CHECK(stored_milliamp_hours("+70") == 70000);
    CHECK(stored_milliamp_hours("4.350000000000000000000000000000") == 4350);
    CHECK(stored_milliamp_hours("399.999") == 399999);
    CHECK(stored_milliamp_hours("70 # a comment, with a comma") == 70000);
}

TEST_CASE("a digit too many is refused, not rounded") {
    CHECK(complaint_when("battery_ah = 70", "battery_ah = 70.0001") ==
          "10:14 battery_ah 70.0001 has more than 3 digits after the point");
    CHECK(complaint_when("last_year = 2016", "last_year = 2016.5") == "6:13 last_year 2016.5 must be a whole number");
}

TEST_CASE("a colour is stored as its code, however it was written") {
    CHECK(colour("white") == "WH");
    CHECK(colour("WHT/blk") == "WH/BK");
    CHECK(colour("lt blu w/ red stripe") == "LBU/RD");
}

TEST_CASE("text is stored composed") {
    const auto batch = read(with(vehicle_file, "\"Vel Ostrel\"", "\"Ve\xcc\x81l Ostrel\""));
    CHECK(text_field(batch.entries.at(0).values, "model") == "Vél Ostrel");
    CHECK(text_field(batch.entries.at(0).values, "path") == "orrery/vel-ostrel/sedan/2012");
}

TEST_CASE("each table becomes one draft under its path, with its place") {
    const Batch batch = read(vehicle_file);
    CHECK(batch.file == "car.toml");
    REQUIRE(batch.entries.size() == 4);
    const std::string car = "orrery/vel-ostrel/sedan/2012";
    const std::pair<EntryKind, std::string> wanted[] = {{EntryKind::vehicle, car},
                                                        {EntryKind::system, car + "/base"},
                                                        {EntryKind::circuit, car + "/base/front-left"},
                                                        {EntryKind::tap, car + "/base/front-left/radio-plug"}};
    for (std::size_t i = 0; i < 4; ++i) {
        CHECK(batch.entries[i].kind == wanted[i].first);
        CHECK(text_field(batch.entries[i].values, "path") == wanted[i].second);
    }
    CHECK(batch.entries[3].place.line == 27);
    REQUIRE(batch.notes.size() == 1);
    const Values& note = batch.notes[0].values;
    CHECK(note == Values{{"kind", std::string("pair")},
                         {"path", wanted[3].second},
                         {"date", std::string("2021-06-03")},
                         {"method", std::string("metered")},
                         {"positive", std::string("WH")},
                         {"negative", std::string("WH/BK")},
                         {"ac_mv", std::int64_t{7500}}});
    CHECK(batch.notes[0].place.line == 33);
}

TEST_CASE("what was not written is not in the draft, and an empty list is") {
    const auto values = read(with(vehicle_file, "[\"battery_in_cabin\"]", "[]")).entries.at(0).values;
    CHECK(values.contains("hazards"));
    CHECK(list_field(values, "hazards").empty());
    CHECK_FALSE(values.contains("start_stop"));
    CHECK_FALSE(values.contains("remarks"));
}

TEST_CASE("the kind of a note follows from the circuit's role, and from its place") {
    const auto kind = [](const std::string& text) { return text_field(read(text).notes.at(0).values, "kind"); };
    CHECK(kind(vehicle_file) == "pair");
    std::string power = with(
        vehicle_file, "role = \"speaker\"\ndrive = \"bridged\"\nwatts = 18\nrating = \"continuous\"\nrating_ohms = 4",
        "role = \"constant_power\"");
    power = with(power, "positive = \"white\"\nnegative = \"white/black\"\nac_v = 7.5",
                 "wire = \"yellow\"\nkey_off_v = 12.6");
    CHECK(kind(power) == "switched");
    std::string system = with(vehicle_file, "at = \"base/front-left/radio-plug\"", "at = \"base\"");
    system = with(system, "positive = \"white\"\nnegative = \"white/black\"\nac_v = 7.5", "premium = false");
    CHECK(kind(system) == "system");
    CHECK(kind(with(vehicle_file, "at = \"base/front-left/radio-plug\"",
                    "at = \"unrecorded/front-left/radio-plug\"")) == "pair");
}

TEST_CASE("a note's author and car are kept apart from its fields") {
    const Batch batch = read(with(vehicle_file, "ac_v = 7.5", "ac_v = 7.5\nshop = \"other\"\ncar = \"AB 123\""));
    CHECK(batch.notes.at(0).shop_code == "other");
    CHECK(batch.notes.at(0).car_words == "AB 123");
    CHECK_FALSE(batch.notes.at(0).values.contains("car"));
    CHECK_FALSE(batch.notes.at(0).values.contains("shop"));
}

TEST_CASE("stock and shops become terms and authors") {
    const Batch batch = read(
        "[[stock]]\npart = \"wendric-two\"\ncost = 19.95\nlead_days = 3\non_hand = 0\n[[shop]]\ncode = "
        "\"tarrow\"\nname = \"Tarrow Sound\"\n");
    REQUIRE(batch.terms.size() == 1);
    CHECK(batch.terms[0].part == "wendric-two");
    CHECK(batch.terms[0].terms.cost_cents == 1995);
    CHECK(batch.terms[0].terms.lead_days == 3);
    CHECK(batch.terms[0].terms.on_hand == 0);
    CHECK(batch.terms[0].terms.pack == std::nullopt);
    REQUIRE(batch.shops.size() == 1);
    CHECK(batch.shops[0].code == "tarrow");
    CHECK(batch.shops[0].name == "Tarrow Sound");
}

TEST_CASE("the files of the practice shop are taken without a complaint") {
    for (const char* name :
         {"shops.toml", "parts.toml", "stock.toml", "vehicles/nadrow.toml", "vehicles/sallick.toml"}) {
        INFO(name);
        std::ifstream file(std::string(TAPBOOK_SOURCE) + "/data/" + name);
        std::ostringstream text;
        text << file.rdbuf();
        REQUIRE_FALSE(text.str().empty());
        CHECK(complaints_about(text.str()).empty());
    }
}
