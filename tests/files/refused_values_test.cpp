// What is said about a value that cannot be right? The whole complaint: place, message and way out, one value at a
// time.
#include "a_vehicle_file.h"

using namespace tapbook;

namespace {

const std::string parts_file = R"([[amplifier]]
code = "corvane-four"
name = "Four"
channels = 4
use = "full_range"
watts_at = ["4:75"]
)";

}  // namespace

TEST_CASE("the vehicle file the other tests change has no fault") {
    CHECK(complaints_about(vehicle_file).empty());
    CHECK(complaints_about(parts_file).empty());
}

TEST_CASE("an unknown key is answered by the nearest known one, at the key") {
    CHECK(complaint_when("body = ", "body = \"sedan\"\nboddy = ") ==
          "5:1 unknown key \"boddy\" | did you mean \"body\"?");
    CHECK(complaint_when("battery_ah = 70", "batery_ah = 70") ==
          "10:1 unknown key \"batery_ah\" | did you mean \"battery_ah\"?");
    CHECK(complaint_when("battery_ah = 70", "qqqqqqqq = 70") ==
          "10:1 unknown key \"qqqqqqqq\" | see the keys of this table in the README");
    CHECK(complaint_when("ac_v = 7.5", "key_off_v = 7.5") ==  // belongs to another kind of note
          "38:1 unknown key \"key_off_v\" | see the keys of this table in the README");
}

TEST_CASE("an unknown table is answered by the nearest known one") {
    CHECK(complaint_when("[[tap]]", "[[tapp]]") == "26:3 unknown table \"tapp\" | did you mean \"tap\"?");
    CHECK(complaints_about("[zzzzzzzzz]\na = 1\n") ==
          std::vector<std::string>{"1:2 unknown table \"zzzzzzzzz\" | known are vehicle, system, circuit, tap, note, "
                                   "converter, amplifier, stock, shop"});
}

TEST_CASE("an impossible rating is refused with the most an unboosted bridge can give") {
    // 14.4 V into 4 ohm: 14.4^2 / (2 x 4) x 1.0475 = 27.15 W at 1 % distortion (signal model of the electrical layer,
    // factor 1.0475 for ideal hard clipping).
    CHECK(complaint_when("watts = 18", "watts = 50") ==
          "22:9 50 W continuous into 4 ohm is impossible for a bridged output: 14.4 V gives at most 27.15 W | a "
          "printed \"50 W\" is usually "
          "rating = \"maximum\"; a boosted output has drive = \"boosted_bridged\" or \"boosted_split\"");
    CHECK(complaints_about(with(with(vehicle_file, "watts = 18", "watts = 50"), "\"continuous\"", "\"maximum\""))
              .empty());
}

TEST_CASE("watts need a kind and a load") {
    CHECK(complaint_when("rating = \"continuous\"\n", "") ==
          "22:9 watts without rating | say what kind of watts: continuous, at_10_percent or maximum");
    CHECK(complaint_when("rating_ohms = 4\n", "") ==
          "22:9 watts without rating_ohms | say the load the watts are stated for, usually 4");
}

TEST_CASE("a number outside its bounds is refused with them") {
    CHECK(complaint_when("rating_ohms = 4", "rating_ohms = -4") ==
          "24:15 rating_ohms is -4 ohm | it must be 0.1 to 1000 ohm");
    CHECK(complaint_when("rating_ohms = 4", "rating_ohms = 0") ==
          "24:15 rating_ohms is 0 ohm | it must be 0.1 to 1000 ohm");
    CHECK(complaint_when("ac_v = 7.5", "ac_v = -0.1") == "38:8 ac_v is -0.1 V RMS | it must be 0 to 100 V RMS");
    CHECK(complaint_when("first_year = 2012", "first_year = 1949") ==
          "5:14 first_year is 1949 model year | it must be 1950 to 2079 model year");
}

TEST_CASE("two conductors of one colour need a mark that tells them apart") {
    CHECK(complaint_when("negative = \"white/black\"", "negative = \"WHT\"") ==
          "37:12 both conductors are white: say what else tells them apart (a ridge, a print, a ring) as the mark of "
          "one of them");
    CHECK(complaints_about(
              with(vehicle_file, "negative = \"white/black\"", "negative = \"white\"\nnegative_mark = \"ridge\""))
              .empty());
}

TEST_CASE("a colour that can mean two things is refused with the choices") {
    CHECK(complaint_when("positive = \"white\"", "positive = \"GR\"") ==
          "36:12 positive \"GR\" is not clear: \"GR\" can mean grey or green; write GY or GN");
    CHECK(complaint_when("positive = \"white\"", "positive = \"wite\"") ==
          "36:12 positive \"wite\" is not clear: \"wite\" is not a wire colour; did you mean \"white\"?");
}

TEST_CASE("the last year is not before the first") {
    CHECK(complaint_when("last_year = 2016", "last_year = 2011") ==
          "6:13 last_year 2011 is before first_year 2012 | swap them or correct one");
    CHECK(complaints_about(with(vehicle_file, "last_year = 2016", "last_year = 2012")).empty());
}

TEST_CASE("a waiting time says where it is written") {
    CHECK(complaint_when("airbag_wait_source = \"owner's book\"\n", "") ==
          "7:17 airbag_wait_s without airbag_wait_source | say where the waiting time is written, or leave it out");
}

TEST_CASE("a wrong word is answered by the nearest, else by all") {
    CHECK(complaint_when("drive = \"bridged\"", "drive = \"briged\"") ==
          "21:9 drive does not know \"briged\" | did you mean \"bridged\"?");
    CHECK(complaint_when("method = \"metered\"", "method = \"xyzzyx\"") ==
          "35:10 method does not know \"xyzzyx\" | one of scoped, metered, seen or copied");
    CHECK(complaint_when("[\"battery_in_cabin\"]", "[\"battery_in_cabn\"]") ==
          "11:12 hazards does not know \"battery_in_cabn\" | did you mean \"battery_in_cabin\"?");
}

TEST_CASE("a value of the wrong type is told what its field takes") {
    CHECK(complaint_when("body = \"sedan\"", "body = 4") == "4:8 body must be a text in quotes");
    CHECK(complaint_when("drive = \"bridged\"", "drive = true") == "21:9 drive must be one word in quotes");
    CHECK(complaint_when("positive = \"white\"", "positive = 1") == "36:12 positive must be a wire colour in quotes");
    CHECK(complaint_when("last_year = 2016", "last_year = \"2016\"") == "6:13 last_year must be a whole number");
    CHECK(complaint_when("ac_v = 7.5", "ac_v = \"7.5\"") == "38:8 ac_v must be a number");
    CHECK(complaint_when("battery_sensor = true", "battery_sensor = \"yes\"") ==
          "9:18 battery_sensor must be true or false");
    CHECK(complaint_when("battery_sensor = true", "battery_sensor = 1") == "9:18 battery_sensor must be true or false");
    CHECK(complaint_when("[\"trim strip\", \"radio\"]", "\"radio\"") ==
          "30:10 panels must be a list of texts, [\"...\", \"...\"]");
    CHECK(complaint_when("[\"trim strip\", \"radio\"]", "[\"radio\", 2]") ==
          "30:20 panels must be a list of texts, [\"...\", \"...\"]");
    CHECK(complaint_when("date = 2021-06-03", "date = \"2021-06-03\"") ==
          "34:8 date must be a date like 2024-05-02, without quotes");
    CHECK(complaint_when("date = 2021-06-03", "date = 20210603") ==
          "34:8 date must be a date like 2024-05-02, without quotes");
    CHECK(complaint_when("code = \"base\"", "code = 5") == "14:8 code must be a text in quotes");
    CHECK(complaints_about(with(parts_file, "[\"4:75\"]", "\"4:75\"")) ==
          std::vector<std::string>{"6:12 watts_at must be a list like [\"4:75\"], ohms before watts"});
    CHECK(complaints_about(with(parts_file, "\"4:75\"", "\"75 W\"")) ==
          std::vector<std::string>{"6:13 watts_at \"75 W\" is not ohms:watts | write \"4:75\" for 75 W into 4 ohm"});
}

TEST_CASE("a date with a time of day is no date") {
    CHECK(complaints_about(with(vehicle_file, "2021-06-03", "2021-06-03T10:00:00")).size() == 1);
    CHECK(complaints_about(with(vehicle_file, "2021-06-03", "2021-06-03 10:00:00")).size() == 1);
    CHECK(complaints_about(with(vehicle_file, "2021-06-03", "10:00:00")).size() == 1);
}

TEST_CASE("one mistake makes one complaint") {
    CHECK(complaint_when("make = \"Orrery\"", "make = \"日本\"") ==
          "2:8 make must hold letters a to z or digits | it becomes part of the car's path");
    CHECK(complaint_when("rating = \"continuous\"", "rating = \"continous\"") ==
          "23:10 rating does not know \"continous\" | did you mean \"continuous\"?");
    CHECK(complaint_when("airbag_wait_source = \"owner's book\"", "airbag_wait_source = 5") ==
          "8:22 airbag_wait_source must be a text in quotes");
    CHECK(complaint_when("first_year = 2012", "first_year = 2080") ==
          "5:14 first_year is 2080 model year | it must be 1950 to 2079 model year");
}

TEST_CASE("hidden characters and empty texts are refused, and named") {
    CHECK(complaint_when("model = \"Vel Ostrel\"", "model = \"Vel\u202eOstrel\"") ==
          "3:9 model holds the hidden character U+202E | type the text again by hand");
    CHECK(complaint_when("\"radio, four speakers\"", "\"radio\\tfour\"") ==
          "15:8 name holds the hidden character U+0009 | type the text again by hand");
    CHECK(complaint_when("\"trim strip\"", "\"trim\u200bstrip\"") ==
          "30:11 panels holds the hidden character U+200B | type the text again by hand");
    CHECK(complaint_when("place = \"radio\"", "place = \"\"") ==
          "29:9 place is empty | leave the line out when it is not known");
    CHECK(complaint_when("ac_v = 7.5", "remarks = \"a\\u0000b\"") ==
          "38:11 remarks holds the hidden character U+0000 | type the text again by hand");
    CHECK(complaint_when("ac_v = 7.5", "remarks = \"" + std::string(4001, 'x') + "\"") ==
          "38:11 remarks is longer than 4000 bytes | shorten it");
    CHECK(complaints_about(with(vehicle_file, "ac_v = 7.5", "remarks = \"two\\nlines\"")).empty());
}

TEST_CASE("what is required and missing is named with its meaning, at its table") {
    CHECK(complaint_when("body = \"sedan\"\n", "") ==
          "1:1 body is missing | body: shape of the body: sedan, wagon, van");
    CHECK(complaint_when("date = 2021-06-03\n", "") == "32:1 date is missing | date: day of the visit");
    CHECK(complaint_when("code = \"base\"\n", "") == "13:1 code is missing");
    CHECK(complaint_when("at = \"base/front-left/radio-plug\"\n", "") == "32:1 at is missing");
}
