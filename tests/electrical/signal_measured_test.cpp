// What does a tap carry when somebody has measured it? Values by hand from the signal specification, section 1.
#include <catch2/catch.hpp>
#include <vector>

#include "electrical/electrical.h"

using namespace tapbook;

namespace {

OutputStage stage(Drive drive) {
    OutputStage output;
    output.drive = drive;
    return output;
}

ToneReading reading(double volts, double supply = 14.4, bool true_rms = true) {
    return ToneReading{rms_volts(volts), hertz(40), dbfs(0), dc_volts(supply), true, true, true, true_rms, {}};
}

TapSignal predict(const OutputStage& output, std::vector<ToneReading> readings, double lowest = 30) {
    return predict_signal(output, readings, hertz(lowest));
}

}  // namespace

TEST_CASE("a complete reading is widened by its meter and by a fuller supply") {
    // 6.0 V at 12.8 V: 6 x 0.98; 6 x 1.02 x (14.4 - 0.8) / (12.8 - 0.8).
    const TapSignal signal = predict(stage(Drive::bridged), {reading(6, 12.8)});
    CHECK(signal.clean.low->in(rms_volts) == Approx(5.88));
    CHECK(signal.clean.likely->in(rms_volts) == Approx(6));
    CHECK(signal.clean.high->in(rms_volts) == Approx(6.936).margin(1e-3));
    CHECK(signal.source == SignalSource::measured);
    CHECK(signal.readings_used == 1);
    CHECK(signal.clean_because.high.supply_factor->in(ratio) == Approx(13.6 / 12));
    CHECK(signal.clean_because.low.tolerance == percent(2));
}

TEST_CASE("a single-ended reading grows by half the supply less one loss") {
    // 3.0 V at 12.8 V: 3 x 1.02 x (7.2 - 0.4) / (6.4 - 0.4).
    CHECK(predict(stage(Drive::single_ended), {reading(3, 12.8)}).clean.high->in(rms_volts) ==
          Approx(3.468).margin(1e-3));
}

TEST_CASE("a reading from a fuller supply than 14.4 V is not made smaller") {
    CHECK(predict(stage(Drive::bridged), {reading(6, 15.2)}).clean.high->in(rms_volts) == Approx(6.12));
}

TEST_CASE("a meter that is not known to be true-RMS is widened by 11 %") {
    ToneReading unstated = reading(6);
    unstated.true_rms.reset();
    for (const ToneReading& other : {reading(6, 14.4, false), unstated}) {
        const TapSignal signal = predict(stage(Drive::bridged), {other});
        CHECK(signal.clean.low->in(rms_volts) == Approx(5.34));
        CHECK(signal.clean.high->in(rms_volts) == Approx(6.66));
    }
}

TEST_CASE("a reading of a tone below full scale is taken to full scale first") {
    ToneReading quiet = reading(0.6);
    quiet.level = dbfs(-20);
    CHECK(predict(stage(Drive::bridged), {quiet}).clean.likely->in(rms_volts) == Approx(6));
}

TEST_CASE("the high end is capped by the largest swing but never lies below the reading") {
    const TapSignal capped = predict(stage(Drive::bridged), {reading(9.5, 13.0)});
    CHECK(capped.clean.high->in(rms_volts) == Approx(9.6167).margin(1e-3));
    CHECK(capped.clean_because.high.why == Why::highest_reading_capped);
    const TapSignal beyond = predict(stage(Drive::bridged), {reading(12)});
    CHECK(beyond.clean.high->in(rms_volts) == Approx(12));
    CHECK(beyond.clipped.low->in(rms_volts) == Approx(11.76));  // never below the clean end
    CHECK(beyond.clipped_because.low.why == Why::not_below_clean);
}

TEST_CASE("several readings: least of the lows, median, greatest of the highs") {
    const TapSignal three = predict(stage(Drive::bridged), {reading(7), reading(5), reading(6, 12.8, false)});
    CHECK(three.clean.low->in(rms_volts) == Approx(4.9));
    CHECK(three.clean.likely->in(rms_volts) == Approx(6));
    CHECK(three.clean.high->in(rms_volts) == Approx(6 * 1.11 * 13.6 / 12).margin(1e-3));
    CHECK(three.readings_used == 3);
    CHECK(predict(stage(Drive::bridged), {reading(7), reading(6)}).clean.likely->in(rms_volts) == Approx(6.5));
}

TEST_CASE("measured outranks rated, and rated outranks the supply") {
    OutputStage radio = stage(Drive::bridged);
    CHECK(predict(radio, {}).source == SignalSource::supply_limited);
    radio.rated = watts(15);
    radio.rated_at = ohms(4);
    CHECK(predict(radio, {}).source == SignalSource::rated);
    const TapSignal measured = predict(radio, {reading(9)});
    CHECK(measured.source == SignalSource::measured);
    CHECK(measured.clean.likely->in(rms_volts) == Approx(9));
}

TEST_CASE("an incomplete reading, music, and a tone more than an octave away are counted and no limit") {
    ToneReading incomplete = reading(12), music = reading(12), treble = reading(12);
    incomplete.full_volume = false;
    music.music = true;
    treble.frequency = hertz(1000);
    const TapSignal signal = predict(stage(Drive::bridged), {incomplete, music, treble});
    CHECK(signal.source == SignalSource::supply_limited);
    CHECK(signal.readings_incomplete == 2);
    CHECK(signal.readings_out_of_band == 1);
    CHECK(signal.readings_used == 0);
    CHECK(signal.clean.high->in(rms_volts) == Approx(9.6167).margin(1e-3));
}

TEST_CASE("an unknown drive with a reading has a high end, grown as a bridge and not capped") {
    const TapSignal signal = predict(stage(Drive::unknown), {reading(20, 12.8)});
    CHECK(signal.clean.high->in(rms_volts) == Approx(20 * 1.02 * 13.6 / 12).margin(1e-3));
    CHECK(signal.clean.low->in(rms_volts) == Approx(19.6));
    CHECK_FALSE(signal.clipped.high);
    CHECK(*signal.clipped.likely >= *signal.clean.likely);
    CHECK(signal.minus_is_driven);
}

TEST_CASE("a measured line level is widened by the meter only") {
    OutputStage line = stage(Drive::line_single_ended);
    line.line_volts = rms_volts(2);
    const TapSignal signal = predict(line, {reading(3, 12.0)});
    CHECK(signal.clean.low->in(rms_volts) == Approx(2.94));
    CHECK(signal.clean.high->in(rms_volts) == Approx(3.06));
    CHECK(signal.clipped.high->in(rms_volts) == Approx(3.06 * 1.41421356));
}

TEST_CASE("a measured boosted stage has no supply factor and is capped only when its rail is known") {
    OutputStage boosted = stage(Drive::boosted_split);
    CHECK(predict(boosted, {reading(20, 12.0)}).clean.high->in(rms_volts) == Approx(20.4));
    CHECK_FALSE(predict(boosted, {reading(20, 12.0)}).clipped.high);
    boosted.rail = dc_volts(29);
    boosted.split_is_bridged = false;
    CHECK(predict(boosted, {reading(20, 12.0)}).clean.high->in(rms_volts) == Approx(28.6 / 1.41421356));
}

TEST_CASE("a reading on a digital feed changes nothing") {
    const TapSignal signal = predict(stage(Drive::digital), {reading(6)});
    CHECK(signal.source == SignalSource::none);
    CHECK_FALSE(signal.clean.high);
}
