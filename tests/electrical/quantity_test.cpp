// Do quantities keep their numbers exactly and their kinds apart? What must not compile is tested in tests/refused.
#include "electrical/quantity.h"

#include <catch2/catch.hpp>
#include <cstdint>
#include <type_traits>

#include "arbitrary.h"

using namespace tapbook;

TEST_CASE("a whole number of small units becomes the double nearest to the decimal fraction") {
    CHECK(rms_millivolts(9400).in(rms_volts) == 9.4);
    CHECK(milliohms(std::int64_t{3300}).in(ohms) == 3.3);
    CHECK(milliwatts(22500).in(watts) == 22.5);
    CHECK(millihertz(31500).in(hertz) == 31.5);
    CHECK(microfarads(470).in(farads) == 470e-6);
    CHECK(percent(11).in(ratio) == 0.11);
}

TEST_CASE("what went in as a whole number of small units comes out as the same whole number") {
    REQUIRE(rc::check([] {
        const auto stored = *rc::gen::inRange<std::int64_t>(-1'000'000'000, 1'000'000'000);
        RC_ASSERT(dc_millivolts(stored).in(dc_millivolts) == Approx(static_cast<double>(stored)).epsilon(1e-15));
    }));
}

TEST_CASE("quantities of one kind add, subtract, stretch and divide to a ratio") {
    CHECK(ohms(4) + milliohms(500) == ohms(4.5));
    CHECK(amps(3) - amps(5) == -amps(2));
    CHECK(2 * watts(20) == watts(20) * 2);
    CHECK(rms_volts(9) / 3 == rms_volts(3));
    CHECK(rms_volts(9) / rms_volts(3) == ratio(3));
    CHECK(rms_volts(9) * percent(50) == rms_volts(4.5));
    CHECK(rms_volts(9) / ratio(2) == rms_volts(4.5));
}

TEST_CASE("quantities of one kind compare by size, whatever unit they were spoken in") {
    CHECK(rms_millivolts(9400) == rms_volts(9.4));
    CHECK(rms_millivolts(9399) < rms_volts(9.4));
    CHECK(hertz(40) >= millihertz(40000));
}

TEST_CASE("two levels differ by a gain, and a level moved by a gain is a level") {
    CHECK(dbv(6) - dbv(-12) == decibels(18));
    CHECK(dbv(6) + decibels(3) == dbv(9));
    CHECK(dbfs(0) - decibels(10) == dbfs(-10));
    CHECK(celsius(75) - celsius(20) == kelvins(55));
    static_assert(std::is_same_v<decltype(dbv(1) - dbv(0)), Gain>);
    static_assert(std::is_same_v<decltype(celsius(1) + kelvins(1)), Celsius>);
}

TEST_CASE("no quantity exists without a value") {
    STATIC_REQUIRE_FALSE(std::is_default_constructible_v<RmsVolts>);
    STATIC_REQUIRE_FALSE(std::is_convertible_v<double, RmsVolts>);
    STATIC_REQUIRE_FALSE(std::is_convertible_v<RmsVolts, double>);
    STATIC_REQUIRE_FALSE(std::is_constructible_v<RmsVolts, PeakVolts>);
    STATIC_REQUIRE_FALSE(std::is_invocable_v<decltype(rms_volts), bool>);
}
