// What does a tap carry when nobody has measured it? Values by hand from the signal specification, section 1.
#include "electrical/signal.h"

#include <catch2/catch.hpp>

#include "electrical/electrical.h"

using namespace tapbook;

namespace {

OutputStage stage(Drive drive) {
    OutputStage output;
    output.drive = drive;
    return output;
}

OutputStage rated(Drive drive, double power, double load = 4) {
    OutputStage output = stage(drive);
    output.rated = watts(power);
    output.rated_at = ohms(load);
    return output;
}

TapSignal predict(const OutputStage& output) {
    return predict_signal(output, {}, hertz(30));
}

void check_range(const VoltageRange& range, double low, double likely, double high) {
    CHECK(range.low->in(rms_volts) == Approx(low).margin(1e-3));
    CHECK(range.likely->in(rms_volts) == Approx(likely).margin(1e-3));
    CHECK(range.high->in(rms_volts) == Approx(high).margin(1e-3));
}

void check_absent(const VoltageRange& range) {
    CHECK_FALSE(range.low);
    CHECK_FALSE(range.likely);
    CHECK_FALSE(range.high);
}

}  // namespace

TEST_CASE("a bridge is limited by 12.6, 14.4 and 14.4 V less its losses, and survives 15 V") {
    const TapSignal signal = predict(stage(Drive::bridged));
    check_range(signal.clean, 7.2125, 9.1217, 9.6167);  // 10.2, 12.9, 13.6 V peak
    check_range(signal.clipped, 10.2, 12.9, 15.0);
    CHECK(signal.source == SignalSource::supply_limited);
    CHECK(signal.minus_is_driven);
    CHECK(signal.clean_because.low.why == Why::swing_limit);
    CHECK(signal.clean_because.low.supply == dc_volts(12.6));
    CHECK(signal.clean_because.low.loss == dc_volts(1.2));
    CHECK(signal.clipped_because.high.why == Why::lossless_swing);
    CHECK(signal.clipped_because.high.supply == dc_volts(15));
}

TEST_CASE("a bridge's bias is 0.3, 0.5 and 0.55 of the low, likely and high supply") {
    const TapSignal signal = predict(stage(Drive::bridged));
    CHECK(signal.dc_each.low->in(dc_volts) == Approx(3.78));
    CHECK(signal.dc_each.likely->in(dc_volts) == Approx(7.2));
    CHECK(signal.dc_each.high->in(dc_volts) == Approx(8.25));
    CHECK(signal.common_mode_high == signal.dc_each.high);
}

TEST_CASE("a single-ended stage has half the supply, no bias and a quiet minus") {
    const TapSignal signal = predict(stage(Drive::single_ended));
    check_range(signal.clean, 3.6062, 4.5608, 4.8083);  // 5.1, 6.45, 6.8 V peak
    check_range(signal.clipped, 5.1, 6.45, 7.5);
    CHECK(signal.common_mode_high == dc_volts(0));
    CHECK(signal.dc_difference_high == dc_volts(0));
    CHECK_FALSE(signal.minus_is_driven);
}

TEST_CASE("a rating below the swing sets low and likely, and may be exceeded by an eighth") {
    const TapSignal signal = predict(rated(Drive::bridged, 10));  // 6.3246 V
    check_range(signal.clean, 6.3246, 6.3246, 7.1151);
    CHECK(signal.source == SignalSource::rated);
    CHECK(signal.clean_because.likely.why == Why::rating);
    CHECK(signal.clean_because.likely.rated == watts(10));
    CHECK(signal.clean_because.high.why == Why::rating_with_margin);
    check_range(signal.clipped, 10.2, 12.9, 15.0);
}

TEST_CASE("a rating above the swing is held at the swing, each end for its own reason") {
    const TapSignal signal = predict(rated(Drive::bridged, 18));  // 8.4853 V
    check_range(signal.clean, 7.2125, 8.4853, 9.5459);
    CHECK(signal.clean_because.low.why == Why::swing_limit);
    CHECK(signal.clean_because.likely.why == Why::rating);
    CHECK(signal.source == SignalSource::rated);
}

TEST_CASE("an impossible rating and a label do not count as ratings") {
    CHECK(predict(rated(Drive::bridged, 60)).source == SignalSource::supply_limited);
    OutputStage label = rated(Drive::bridged, 60);
    label.rating_kind = RatingKind::maximum;
    CHECK(predict(label).source == SignalSource::supply_limited);
    check_range(predict(label).clean, 7.2125, 9.1217, 9.6167);
}

TEST_CASE("the load of the rating counts, not any other") {
    CHECK(predict(rated(Drive::bridged, 5, 2)).clean.likely->in(rms_volts) == Approx(3.1623).margin(1e-4));
    CHECK(predict(rated(Drive::bridged, 5, 8)).clean.likely->in(rms_volts) == Approx(6.3246).margin(1e-4));
}

TEST_CASE("a split stage is low and likely as not bridged and high as bridged when nobody knows") {
    OutputStage split = stage(Drive::boosted_split);
    split.rail = dc_volts(30);
    const TapSignal open = predict(split);
    check_range(open.clean, 20.3647, 20.6829, 41.8607);  // 28.8, 29.25, 59.2 V peak
    check_range(open.clipped, 28.8, 29.25, 60);
    CHECK(open.minus_is_driven);
    split.split_is_bridged = false;
    check_range(predict(split).clean, 20.3647, 20.6829, 20.9304);
    check_range(predict(split).clipped, 28.8, 29.25, 30);
    CHECK_FALSE(predict(split).minus_is_driven);
    split.split_is_bridged = true;
    check_range(predict(split).clean, 40.7294, 41.3657, 41.8607);
    CHECK(predict(split).minus_is_driven);
    CHECK(predict(split).common_mode_high == dc_volts(0));
    CHECK(predict(split).dc_difference_high == dc_millivolts(150));
}

TEST_CASE("a boosted bridge swings by its rail and rests at half of it") {
    OutputStage boosted = stage(Drive::boosted_bridged);
    boosted.rail = dc_volts(24);
    check_range(predict(boosted).clean, 15.2735, 15.9099, 16.4049);  // 21.6, 22.5, 23.2 V peak
    check_range(predict(boosted).clipped, 21.6, 22.5, 24);
    CHECK(predict(boosted).common_mode_high == dc_volts(12));
    CHECK(predict(boosted).clean_because.low.supply == dc_volts(24));
}

TEST_CASE("a boosted stage without a rail has its rating, and no clipped volts") {
    const TapSignal signal = predict(rated(Drive::boosted_bridged, 100));
    check_range(signal.clean, 20, 20, 22.5);
    check_absent(signal.clipped);
    CHECK(signal.clipped_because.high.why == Why::rail_unknown);
    CHECK_FALSE(signal.common_mode_high);
}

TEST_CASE("a boosted stage without rail and rating is unknown, never zero") {
    const TapSignal signal = predict(stage(Drive::boosted_split));
    check_absent(signal.clean);
    check_absent(signal.clipped);
    CHECK(signal.source == SignalSource::none);
    CHECK(signal.clean_because.likely.why == Why::rail_unknown);
}

TEST_CASE("a line output has its level at all three ends") {
    OutputStage line = stage(Drive::line_differential);
    line.line_volts = rms_volts(4);
    const TapSignal signal = predict(line);
    check_range(signal.clean, 4, 4, 4);
    check_range(signal.clipped, 5.6569, 5.6569, 5.6569);
    CHECK(signal.source == SignalSource::line_rating);
    CHECK(signal.minus_is_driven);
    CHECK(signal.dc_each.high == dc_volts(3.75));
    CHECK_FALSE(signal.dc_each.likely);
    line.drive = Drive::line_single_ended;
    CHECK_FALSE(predict(line).minus_is_driven);
    CHECK(predict(line).dc_difference_high == dc_volts(0));
    line.line_volts.reset();
    check_absent(predict(line).clean);
    check_absent(predict(line).clipped);
    CHECK(predict(line).clean_because.low.why == Why::line_level_unknown);
}

TEST_CASE("an unknown drive is judged as bridged with its high end open") {
    const TapSignal signal = predict(stage(Drive::unknown));
    CHECK(signal.clean.low->in(rms_volts) == Approx(7.2125).margin(1e-3));
    CHECK(signal.clean.likely->in(rms_volts) == Approx(9.1217).margin(1e-3));
    CHECK_FALSE(signal.clean.high);
    CHECK_FALSE(signal.clipped.high);
    CHECK(signal.clean_because.low.judged_as_bridged);
    CHECK(signal.clean_because.high.why == Why::drive_unknown);
    CHECK(signal.dc_each.low == dc_volts(0));
    CHECK(signal.dc_each.likely == dc_volts(7.2));
    CHECK_FALSE(signal.common_mode_high);
    CHECK(signal.dc_difference_high == dc_millivolts(150));
    CHECK(signal.minus_is_driven);
}

TEST_CASE("a common return without a stage is as unknown as an unknown drive") {
    OutputStage common = stage(Drive::common_return);
    CHECK_FALSE(predict(common).clean.high);
    CHECK(predict(common).minus_is_driven);
    common.common_stage = Stage::single_ended;
    check_range(predict(common).clean, 3.6062, 4.5608, 4.8083);
    CHECK_FALSE(predict(common).minus_is_driven);
    common.common_stage = Stage::bridged;
    check_range(predict(common).clean, 7.2125, 9.1217, 9.6167);
    CHECK(predict(common).minus_is_driven);
}

TEST_CASE("a digital feed carries no analogue volts at all") {
    const TapSignal signal = predict(rated(Drive::digital, 20));
    check_absent(signal.clean);
    check_absent(signal.clipped);
    CHECK_FALSE(signal.common_mode_high);
    CHECK_FALSE(signal.dc_difference_high);
    CHECK(signal.source == SignalSource::none);
    CHECK(signal.clean_because.high.why == Why::no_analogue_signal);
}

TEST_CASE("a measured difference of d.c. overrides the predicted one, either way round") {
    const OutputStage bridged = stage(Drive::bridged);
    CHECK(predict_signal(bridged, {}, hertz(30), {}, dc_millivolts(40)).dc_difference_high == dc_millivolts(40));
    CHECK(predict_signal(bridged, {}, hertz(30), {}, dc_millivolts(-300)).dc_difference_high == dc_millivolts(300));
}
