// How do swing and bias follow from drive, supply, rail and loss?
#include "electrical/swing.h"

#include <catch2/catch.hpp>

#include "arbitrary.h"

using namespace tapbook;

namespace {

OutputStage stage(Drive drive, std::optional<double> rail = std::nullopt, std::optional<bool> bridged = std::nullopt) {
    OutputStage output;
    output.drive = drive;
    if (rail) output.rail = dc_volts(*rail);
    output.split_is_bridged = bridged;
    return output;
}

double peak(const OutputStage& output, SplitGuess guess = SplitGuess::not_bridged) {
    return peak_limit(output, dc_volts(14.4), dc_volts(0.75), guess)->in(peak_volts);
}

}  // namespace

TEST_CASE("each drive loses once or twice, from the supply or from its rail") {
    CHECK(peak(stage(Drive::bridged)) == Approx(12.9));
    CHECK(peak(stage(Drive::single_ended)) == Approx(6.45));
    CHECK(peak(stage(Drive::boosted_split, 30, false)) == Approx(29.25));
    CHECK(peak(stage(Drive::boosted_split, 30, true)) == Approx(58.5));
    CHECK(peak(stage(Drive::boosted_bridged, 30)) == Approx(28.5));
    CHECK(peak(stage(Drive::unknown)) == Approx(12.9));
}

TEST_CASE("a split stage that may be bridged is judged as the caller asks") {
    CHECK(peak(stage(Drive::boosted_split, 30), SplitGuess::not_bridged) == Approx(29.25));
    CHECK(peak(stage(Drive::boosted_split, 30), SplitGuess::bridged) == Approx(58.5));
    CHECK(peak(stage(Drive::boosted_split, 30, false), SplitGuess::bridged) == Approx(29.25));
}

TEST_CASE("a common return swings as its stage does") {
    OutputStage common = stage(Drive::common_return);
    CHECK(peak(common) == Approx(12.9));
    common.common_stage = Stage::single_ended;
    CHECK(peak(common) == Approx(6.45));
    CHECK(calculate_swing(common, ohms(4)).dc_each == dc_volts(0));
    common.common_stage = Stage::bridged;
    CHECK(calculate_swing(common, ohms(4)).dc_each == dc_volts(7.2));
}

TEST_CASE("without a rail a boosted stage has no peak, only what its rating says") {
    OutputStage boosted = stage(Drive::boosted_bridged);
    CHECK_FALSE(calculate_swing(boosted, ohms(4)).peak);
    CHECK_FALSE(calculate_swing(boosted, ohms(4)).clean);
    boosted.rated = watts(100);
    const Swing swing = calculate_swing(boosted, ohms(4));
    CHECK(swing.clean->in(rms_volts) == Approx(20));
    CHECK_FALSE(swing.clipped);
    CHECK_FALSE(swing.dc_each);
}

TEST_CASE("a rating below the swing decides, one above it does not") {
    OutputStage radio = stage(Drive::bridged);
    radio.rated = watts(15);
    CHECK(calculate_swing(radio, ohms(4)).clean->in(rms_volts) == Approx(7.746).margin(1e-3));
    CHECK(calculate_swing(radio, ohms(4)).clean_power->in(watts) == Approx(15));
    radio.rated = watts(50);
    CHECK(calculate_swing(radio, ohms(4)).clean->in(rms_volts) == Approx(9.122).margin(1e-3));
    radio.rating_kind = RatingKind::maximum;
    CHECK(calculate_swing(radio, ohms(4)).clean->in(rms_volts) == Approx(9.122).margin(1e-3));
}

TEST_CASE("a line output has its rated level, and clips to a square wave of the same peak") {
    OutputStage line = stage(Drive::line_differential);
    CHECK_FALSE(calculate_swing(line, ohms(10000)).clean);
    line.line_volts = rms_volts(2);
    const Swing swing = calculate_swing(line, std::nullopt);
    CHECK(swing.clean->in(rms_volts) == Approx(2));
    CHECK(swing.peak->in(peak_volts) == Approx(2.8284).margin(1e-4));
    CHECK(swing.clipped->in(rms_volts) == Approx(2.8284).margin(1e-4));
    CHECK_FALSE(swing.clean_power);
    CHECK_FALSE(swing.dc_each);
}

TEST_CASE("a digital feed has nothing to swing") {
    OutputStage digital = stage(Drive::digital);
    digital.rated = watts(20);
    const Swing swing = calculate_swing(digital, ohms(4));
    CHECK_FALSE(swing.peak);
    CHECK_FALSE(swing.clean);
    CHECK_FALSE(swing.clipped);
    CHECK_FALSE(swing.clean_power);
    CHECK_FALSE(swing.dc_each);
}

TEST_CASE("more loss never gives more volts, more supply never fewer, and nothing swings below zero") {
    REQUIRE(rc::check([] {
        const OutputStage output = arbitrary::output_stage();
        const DcVolts supply = arbitrary::between(dc_millivolts, 0, 16000);
        const DcVolts loss = arbitrary::between(dc_millivolts, 0, 9000);
        const auto guess = *rc::gen::element(SplitGuess::not_bridged, SplitGuess::bridged);
        const auto now = peak_limit(output, supply, loss, guess);
        const auto lossier = peak_limit(output, supply, loss + dc_volts(0.1), guess);
        const auto fuller = peak_limit(output, supply + dc_volts(0.5), loss, guess);
        RC_ASSERT(now.has_value() == lossier.has_value() && now.has_value() == fuller.has_value());
        if (!now) return;
        RC_ASSERT(*now >= peak_volts(0));
        RC_ASSERT(*lossier <= *now);
        RC_ASSERT(*fuller >= *now);
        RC_ASSERT(*lossless_swing(output, supply, guess) >= *now);
    }));
}
