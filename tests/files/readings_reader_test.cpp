// Is a file of readings read as it was saved, and is whatever is wrong with it named with its place?
#include "files/readings_reader.h"

#include <catch2/catch.hpp>

using namespace tapbook;

namespace {

// "line:column message; hint", one a line.
std::string refusal(const std::string& text) {
    try {
        read_readings(text, "r.toml");
    } catch (const InputRefused& refused) {
        std::string all;
        for (const auto& one : refused.complaints())
            all += std::to_string(one.place.line) + ":" + std::to_string(one.place.column) + " " + one.message + "; " +
                   one.hint + "\n";
        return all;
    }
    return "taken";
}

const std::string head = "[job]\ncode = \"K7MQ2X\"\n\n";

}  // namespace

TEST_CASE("a file of readings gives the job's code and every place with its fields as they are stored") {
    const auto file = read_readings(head +
                                        "[[reading]]\nat = \"front-left/radio-plug\"\nac_v = 4.2\ndc_positive_v = 7.1\n"
                                        "positive = \"WH\"\n\n[[reading]]\nat = \"load-socket\"\nwire = \"red/white\"\n"
                                        "key_off_v = 0\nrun_v = 14.05\n",
                                    "r.toml");
    CHECK(file.code == "K7MQ2X");
    REQUIRE(file.readings.size() == 2);
    CHECK(file.readings[0].at == "front-left/radio-plug");
    CHECK(std::get<std::int64_t>(file.readings[0].values.at("ac_mv")) == 4200);
    CHECK(std::get<std::int64_t>(file.readings[0].values.at("dc_positive_mv")) == 7100);
    CHECK(std::get<std::string>(file.readings[0].values.at("positive")) == "WH");
    CHECK(std::get<std::string>(file.readings[1].values.at("wire")) == "RD/WH");
    CHECK(std::get<std::int64_t>(file.readings[1].values.at("run_mv")) == 14050);
}

TEST_CASE("a file of readings that cannot be taken says where, why and what to write") {
    CHECK(refusal("") ==
          "1:1 it does not say which job the readings belong to; write [job] and under it code = \"CODE\", as the "
          "sheet has it\n");
    CHECK(refusal(head + "[[reading]]\nat = \"x\"\n") ==
          "5:6 x has no reading; leave the table out, or write what was read\n");
    CHECK(refusal(head + "[[reading]]\nat = \"x\"\nac_v = 1\n[[reading]]\nat = \"x\"\nac_v = 2\n") ==
          "8:6 x stands twice; the first is on line 5\n");
    CHECK(refusal(head + "[[note]]\nat = \"x\"\n") ==
          "4:3 unknown table \"note\"; a file of readings holds one [job] and [[reading]] tables\n");
    CHECK(refusal(head + "[[reading]]\nat = \"x\"\nvolts = 2\n").starts_with("6:1 unknown key \"volts\""));
    CHECK(refusal(head + "[[reading]]\nat = \"x\"\nac_v = -2\n").starts_with("6:8 "));
    CHECK(refusal(head + "[[reading]]\nat = \"x\"\ndate = 2026-01-01\n").starts_with("6:1 unknown key \"date\""));
}
