// Do the short answers (find, meter, add and the calculators) still read as they were accepted?
#include <catch2/catch.hpp>

#include "approved.h"
#include "report/report.h"

using namespace tapbook;
using approval::approve;

namespace {

constexpr Screen wide{Colours::none, 100}, narrow{Colours::none, 60};

std::vector<VehicleHit> three_hits() {
    VehicleHit plain{{"orlin/brelk/sedan/2014", "Orlin", "Brelk", "sedan", 2014, 2018}};
    VehicleHit one_year{{"orlin/brelk-sprint/wagon/2019", "Orlin", "Brelk Sprint", "wagon", 2019, 2019}};
    VehicleHit accents{{"mareth/keldruber/van/2001", "Mareth", "Kéldr Über", "panel van with high roof", 2001, 2009}};
    accents.year_fits = false;
    return {plain, one_year, accents};
}

MeterReadings readings(std::int64_t positive, std::int64_t negative, std::int64_t ac) {
    MeterReadings r;
    r.dc_positive_mv = positive;
    r.dc_negative_mv = negative;
    r.ac_mv = ac;
    r.supply_mv = 14200;
    return r;
}

AddReport saved_report() {
    AddReport report;
    report.entries_new = 1;
    report.entries_changed = 2;
    report.entries_here = 3;
    report.notes_new = 1;
    report.notes_here = 4;
    report.terms_changed = 1;
    report.moves = {{"orlin/brelk/sedan/2014/base/front-left/radio", Grade::one_car, Grade::matched},
                    {"orlin/brelk/sedan/2014/base", Grade::matched, Grade::mixed}};
    report.lines = {"new      vehicle  orlin/brelk/sedan/2014", "changed  tap      base/front-left/radio: place"};
    report.written = true;
    return report;
}

}  // namespace

TEST_CASE("found cars read as approved, with accents and a car outside the year") {
    const auto hits = three_hits();
    approve("find-100", find_text(hits, wide));
    approve("find-60", find_text(hits, narrow));
    approve("find-json", find_json(hits));
    approve("find-nothing-json", find_json({}));
}

TEST_CASE("every meter verdict reads as approved") {
    struct Seen {
        ReadsAs reads_as;
        MeterReadings readings;
    };
    const Seen all[] = {
        {ReadsAs::bridged, readings(7100, 7100, 6200)}, {ReadsAs::ground_centred, readings(10, 0, 6200)},
        {ReadsAs::line_level, readings(10, 0, 1200)},   {ReadsAs::supply, readings(14100, 10, 0)},
        {ReadsAs::fault, readings(7100, 2000, 100)},    {ReadsAs::unsettled, readings(7100, 6800, 100)}};
    for (const auto& seen : all) {
        const MeterVerdict verdict = judge(seen.readings);
        REQUIRE(verdict.reads_as == seen.reads_as);
        const std::string name = "meter-" + std::string(word_of(seen.reads_as));
        approve(name + "-60", meter_text(verdict, narrow));
        approve(name + "-json", meter_json(verdict));
    }
}

TEST_CASE("what was added reads as approved, saved and as a dry run") {
    approve("add-saved-100", add_text(saved_report(), "brelk.toml", wide));
    approve("add-saved-60", add_text(saved_report(), "brelk.toml", narrow));
    approve("add-saved-json", add_json(saved_report(), "brelk.toml"));
    approve("add-nothing-new-100", add_text({}, "brelk.toml", wide));
    approve("add-nothing-new-json", add_json({}, "brelk.toml"));
}

TEST_CASE("the gain target reads as approved") {
    // 75 W into 4 ohm: sqrt(75 x 4) = 17.32 V.
    const RmsVolts target = gain_target(watts(75), ohms(4));
    approve("gain-60", gain_text(target, watts(75), ohms(4), dbfs(0), narrow));
    approve("gain-100", gain_text(target, watts(75), ohms(4), dbfs(-10), wide));
    approve("gain-json", gain_json(target));
}

TEST_CASE("a swing reads as approved, also where nothing is known") {
    OutputStage bridged;
    bridged.drive = Drive::bridged;
    const Swing swing = calculate_swing(bridged, ohms(4));
    approve("swing-100", swing_text(swing, wide));
    approve("swing-json", swing_json(swing));
    approve("swing-unknown-100", swing_text({}, wide));
    approve("swing-unknown-json", swing_json({}));
}

TEST_CASE("a cable's drop reads as approved, printed and computed sizes") {
    const auto answer = [](const CableResistance& cable) {
        return WireAnswer{cable, drop(cable.per_metre, metres(5), amps(72)), dc_volts(13.8), metres(5), amps(72)};
    };
    const WireAnswer printed = answer(resistance(thousandths_of_square_millimetre(16000)));
    const WireAnswer computed = answer(resistance(thousandths_of_square_millimetre(13000)));
    REQUIRE(computed.cable.computed);
    approve("wire-printed-100", wire_text(printed, wide));
    approve("wire-computed-60", wire_text(computed, narrow));
    approve("wire-json", wire_json(computed));
}

TEST_CASE("a colour reads as approved") {
    const WireColour colour = *wire_colour_from_code("LBU/DGN/OG");
    approve("colour-100", colour_text(colour, wide));
    approve("colour-40", colour_text(colour, {Colours::none, 40}));
    approve("colour-json", colour_json(colour));
}

TEST_CASE("a failure in JSON reads as approved") {
    approve("failure-json", json_failure("no_match", "no car matches \"zzyzx\"", "try fewer words"));
}
