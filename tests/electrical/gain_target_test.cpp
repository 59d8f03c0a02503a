// What shall the meter read at the amplifier's output? the signal specification, section 3; outside values in
// power_grid_outside_test.cpp.
#include <catch2/catch.hpp>

#include "arbitrary.h"

using namespace tapbook;

TEST_CASE("a tone 10 dB below full scale makes the target 10 dB lower") {
    const RmsVolts full = gain_target(watts(400), ohms(4));
    const RmsVolts lower = gain_target(watts(400), ohms(4), dbfs(-10));
    CHECK(full.in(rms_volts) == Approx(40));
    CHECK(lower.in(rms_volts) == Approx(12.6491).margin(1e-4));
    CHECK(gain_between(full, lower).in(decibels) == Approx(-10));
}

TEST_CASE("an overlap raises the target on purpose") {
    CHECK(gain_target(watts(400), ohms(4), dbfs(-10), decibels(10)).in(rms_volts) == Approx(40));
}

TEST_CASE("what cannot be meant is refused") {
    CHECK_THROWS_AS(gain_target(watts(400), ohms(4), dbfs(0.1)), RefusedValue);
    CHECK_THROWS_AS(gain_target(watts(0), ohms(4)), RefusedValue);
    CHECK_THROWS_AS(gain_target(watts(-1), ohms(4)), RefusedValue);
    CHECK_THROWS_AS(gain_target(watts(400), ohms(0)), RefusedValue);
    CHECK_THROWS_AS(gain_target(watts(400), ohms(-4)), RefusedValue);
    CHECK_THROWS_AS(gain_target(watts(400), ohms(4), dbfs(0), decibels(-1)), RefusedValue);
    CHECK_THROWS_WITH(gain_target(watts(400), ohms(4), dbfs(3)), Catch::Contains("full scale"));
}

TEST_CASE("the power to set is the smaller of amplifier and speaker") {
    CHECK(power_to_set(watts(400), watts(300)) == watts(300));
    CHECK(power_to_set(watts(400), watts(500)) == watts(400));
    CHECK(power_to_set(watts(400), std::nullopt) == watts(400));
}

TEST_CASE("the target, measured at the load, is the power it was set for") {
    REQUIRE(rc::check([] {
        const Watts power = arbitrary::between(milliwatts, 1, 2000000);
        const Ohms load = arbitrary::between(milliohms, 500, 16000);
        RC_ASSERT(power_in(gain_target(power, load), load).in(watts) == Approx(power.in(watts)));
    }));
}
