// What a reading means beside its prediction.
#include <catch2/catch.hpp>

#include "rules/rules.h"

using namespace tapbook;

namespace {

const std::string path = "a/b/c/2010/base/front-left/radio-plug";

// A car with one bridged pair of 18 W continuous into 4 ohm.
CarFacts bridged_car() {
    CarFacts car;
    car.vehicle.path = "a/b/c/2010";
    TapFacts tap;
    tap.code = tap.tap.path = path;
    tap.system = "base";
    tap.circuit.output.drive = Drive::bridged;
    tap.circuit.output.rated = watts(18);
    tap.circuit.output.rated_at = ohms(4);
    tap.tap.place = "radio";
    car.taps.push_back(tap);
    return car;
}

ReadingAnswer explained(const Values& readings, NoteKind kind = NoteKind::pair) {
    ShopJob job;
    job.number = 1;
    job.vehicle = "a/b/c/2010";
    job.system = "base";
    job.visits.push_back({path, kind, "2024-05-02", 1, readings, {}});
    TapLedger before;
    before.path = path;
    before.kind = kind;
    return reading_answer(job, path, bridged_car(), before);
}

Against against(const ReadingAnswer& answer, std::string_view field) {
    for (const auto& compared : answer.compared)
        if (compared.predicted.field == field) return compared.against;
    FAIL("not compared");
    return Against::inside;
}

Values readings(std::int64_t dc, std::int64_t ac) {
    return {{"dc_positive_mv", dc}, {"dc_negative_mv", dc}, {"ac_mv", ac}, {"supply_mv", std::int64_t{14400}}};
}

}  // namespace

TEST_CASE("a bridged pair at half the supply with the rated volts reads as bridged and lies inside") {
    const auto answer = explained(readings(7200, 8500));  // 18 W into 4 ohm is 8.49 V
    REQUIRE(answer.verdict.has_value());
    CHECK(answer.verdict->reads_as == ReadsAs::bridged);
    for (const auto field : {"supply_v", "dc_positive_v", "dc_negative_v", "ac_v"})
        CHECK(against(answer, field) == Against::inside);
    for (const auto& compared : answer.compared) CHECK(compared.means.empty());
}

TEST_CASE("volts beyond what the drive gives lie above, and the sentence says what that may be") {
    const auto answer = explained(readings(7200, 12500));
    CHECK(against(answer, "ac_v") == Against::above);
    CHECK(meaning_of("ac_v", Against::above).find("boosted") != std::string_view::npos);
    CHECK_FALSE(answer.complaints.empty());
}

TEST_CASE("few volts lie below at full volume, and are not compared below it or with music") {
    Values quiet = readings(7200, 2000);
    CHECK(against(explained(quiet), "ac_v") == Against::below);
    quiet["full_volume"] = true;
    CHECK(against(explained(quiet), "ac_v") == Against::below);
    quiet["full_volume"] = false;
    CHECK(against(explained(quiet), "ac_v") == Against::other_volume);
    quiet.erase("full_volume");
    quiet["music"] = true;
    CHECK(against(explained(quiet), "ac_v") == Against::other_volume);
}

TEST_CASE("a tone 10 dB down is held against a range 10 dB down") {
    Values tone = readings(7200, 2685);  // 8.49 V less 10 dB
    tone["tone_mhz"] = std::int64_t{50000};
    tone["tone_mdb"] = std::int64_t{-10000};
    CHECK(against(explained(tone), "ac_v") == Against::inside);
    tone["ac_mv"] = std::int64_t{8500};
    CHECK(against(explained(tone), "ac_v") == Against::above);
}

TEST_CASE("a conductor at the supply stops, before anything else is said") {
    Values wrong = readings(7200, 0);
    wrong["dc_positive_mv"] = std::int64_t{14300};
    wrong["dc_negative_mv"] = std::int64_t{0};
    const auto answer = explained(wrong);
    REQUIRE(answer.verdict.has_value());
    CHECK(answer.verdict->stop);
    CHECK(answer.verdict->reads_as == ReadsAs::supply);
    CHECK(against(answer, "dc_positive_v") == Against::above);
}

TEST_CASE("without both d.c. readings the meter's verdict is left open, and what is missing is listed") {
    Values some = readings(7200, 8500);
    some.erase("dc_negative_mv");
    const auto answer = explained(some);
    CHECK_FALSE(answer.verdict.has_value());
    REQUIRE_FALSE(answer.to_read.empty());
    CHECK(answer.to_read.front() == "colours");
    CHECK(answer.to_read.at(1) == "d.c. of the negative conductor");
}

TEST_CASE("a place that was forgotten has nothing to explain") {
    ShopJob job;
    const auto answer = reading_answer(job, path, bridged_car(), {});
    CHECK(answer.readings.empty());
    CHECK(answer.compared.empty());
}

TEST_CASE("both ends belong to a range, and an absent end excludes nothing") {
    CHECK(held_against({1000, {}, 2000}, 1000) == Against::inside);
    CHECK(held_against({1000, {}, 2000}, 2000) == Against::inside);
    CHECK(held_against({1000, {}, 2000}, 999) == Against::below);
    CHECK(held_against({1000, {}, 2000}, 2001) == Against::above);
    CHECK(held_against({{}, {}, 2000}, -5) == Against::inside);
    CHECK(held_against({1000, {}, {}}, 99999) == Against::inside);
    CHECK(held_against({}, 5) == Against::not_predicted);
}

TEST_CASE("every reading outside its range has a meaning, every one inside has none") {
    for (const auto field : {"supply_v", "dc_positive_v", "dc_negative_v", "ac_v", "ac_positive_v", "ac_negative_v"}) {
        CHECK_FALSE(meaning_of(field, Against::above).empty());
        CHECK_FALSE(meaning_of(field, Against::below).empty());
        CHECK(meaning_of(field, Against::inside).empty());
        CHECK(meaning_of(field, Against::other_volume).empty());
        CHECK(meaning_of(field, Against::not_predicted).empty());
    }
}

TEST_CASE("a job whose car is told apart is not asked for its plate again") {
    ShopJob job;
    job.car = "00112233445566778899aabbccddeeff";
    job.visits.push_back({path, NoteKind::pair, "2024-05-02", 1, readings(7200, 8500), {}});
    const auto said = [](const ReadingAnswer& answer) {
        std::string all;
        for (const auto& complaint : answer.complaints) all += complaint.text + "\n";
        return all;
    };
    CHECK(said(reading_answer(job, path, bridged_car(), {})).find("plate") == std::string::npos);
    CHECK(said(explained(readings(7200, 8500))).find("plate") != std::string::npos);
}
