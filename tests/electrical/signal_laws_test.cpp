// Do the predictions obey what must hold for every output, every rating and every reading?
#include <catch2/catch.hpp>
#include <vector>

#include "arbitrary.h"

using namespace tapbook;

namespace {

template <class Value>
bool in_order(const std::optional<Value>& a, const std::optional<Value>& b) {
    return !a || !b || *a <= *b;
}

template <class Range>
bool is_range(const Range& range) {
    return in_order(range.low, range.likely) && in_order(range.likely, range.high) && in_order(range.low, range.high);
}

std::vector<ToneReading> some_readings() {
    std::vector<ToneReading> readings;
    const int count = *rc::gen::inRange(0, 4);
    for (int i = 0; i < count; ++i) readings.push_back(arbitrary::complete_reading());
    return readings;
}

}  // namespace

TEST_CASE("high is never below likely, nor likely below low, for any drive") {
    REQUIRE(rc::check([] {
        const auto signal = predict_signal(arbitrary::output_stage(), some_readings(), hertz(40));
        RC_ASSERT(is_range(signal.clean));
        RC_ASSERT(is_range(signal.clipped));
        RC_ASSERT(is_range(signal.dc_each));
    }));
}

TEST_CASE("a clipped end is never below the clean end beside it") {
    REQUIRE(rc::check([] {
        const auto signal = predict_signal(arbitrary::output_stage(), some_readings(), hertz(40));
        RC_ASSERT(in_order(signal.clean.low, signal.clipped.low));
        RC_ASSERT(in_order(signal.clean.likely, signal.clipped.likely));
        RC_ASSERT(in_order(signal.clean.high, signal.clipped.high));
    }));
}

TEST_CASE("the measured high is never below any reading taken to full scale, the low never above") {
    REQUIRE(rc::check([] {
        const OutputStage output = arbitrary::output_stage();
        const auto readings = some_readings();
        const auto signal = predict_signal(output, readings, hertz(40));
        if (output.drive == Drive::digital || readings.empty()) return;
        RC_ASSERT(signal.source == SignalSource::measured);
        for (const ToneReading& reading : readings) {
            const RmsVolts volts = at_full_scale(reading.volts, *reading.level);
            RC_ASSERT(*signal.clean.high >= volts);
            RC_ASSERT(*signal.clean.low <= volts);
        }
    }));
}

TEST_CASE("one more reading never narrows the range") {
    REQUIRE(rc::check([] {
        const OutputStage output = arbitrary::output_stage();
        auto readings = some_readings();
        if (output.drive == Drive::digital) return;
        readings.push_back(arbitrary::complete_reading());
        const auto before = predict_signal(output, readings, hertz(40));
        readings.push_back(arbitrary::complete_reading());
        const auto after = predict_signal(output, readings, hertz(40));
        RC_ASSERT(*after.clean.low <= *before.clean.low);
        RC_ASSERT(*after.clean.high >= *before.clean.high);
    }));
}

TEST_CASE("the order of the readings does not matter") {
    REQUIRE(rc::check([] {
        const OutputStage output = arbitrary::output_stage();
        auto readings = some_readings();
        const auto forward = predict_signal(output, readings, hertz(40));
        std::reverse(readings.begin(), readings.end());
        const auto backward = predict_signal(output, readings, hertz(40));
        RC_ASSERT(forward.clean.low == backward.clean.low);
        RC_ASSERT(forward.clean.likely == backward.clean.likely);
        RC_ASSERT(forward.clean.high == backward.clean.high);
    }));
}

TEST_CASE("an unboosted bridge never exceeds its supply, whatever is printed on it") {
    REQUIRE(rc::check([] {
        OutputStage output = arbitrary::output_stage();
        output.drive = Drive::bridged;
        const auto signal = predict_signal(output, {}, hertz(40));
        RC_ASSERT(peak_of_sine(*signal.clean.high) <= peak_volts(14.4));
        RC_ASSERT(*signal.clipped.high == rms_volts(15));
    }));
}

TEST_CASE("readings are all accounted for") {
    REQUIRE(rc::check([] {
        auto readings = some_readings();
        for (ToneReading& reading : readings) {
            if (*rc::gen::arbitrary<bool>()) reading.frequency = hertz(1000);
            if (*rc::gen::arbitrary<bool>()) reading.supply.reset();
        }
        const auto signal = predict_signal(arbitrary::output_stage(), readings, hertz(40));
        const int counted = signal.readings_used + signal.readings_incomplete + signal.readings_out_of_band;
        RC_ASSERT(static_cast<std::size_t>(counted) == readings.size());
    }));
}
