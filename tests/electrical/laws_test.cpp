// Do the formulas obey the laws of physics, whatever the values?
#include "electrical/laws.h"

#include <catch2/catch.hpp>

#include "arbitrary.h"

using namespace tapbook;
using arbitrary::between;

namespace {

bool close(double a, double b) {
    return a == Approx(b).epsilon(1e-9).margin(1e-12);
}

}  // namespace

TEST_CASE("power from volts and load agrees with power from amps and load") {
    REQUIRE(rc::check([] {
        const RmsVolts volts = between(rms_millivolts, 1, 100000);
        const Ohms load = between(milliohms, 100, 100000);
        RC_ASSERT(close(power_in(volts, load).in(watts), power_in(current_through(volts, load), load).in(watts)));
    }));
}

TEST_CASE("the volts of a power give that power back in the same load") {
    REQUIRE(rc::check([] {
        const Watts power = between(milliwatts, 1, 2000000);
        const Ohms load = between(milliohms, 100, 100000);
        RC_ASSERT(close(power_in(sine_volts(power, load), load).in(watts), power.in(watts)));
    }));
}

TEST_CASE("four times the power needs twice the volts, and twice the load 1.414 times") {
    REQUIRE(rc::check([] {
        const Watts power = between(milliwatts, 1, 2000000);
        const Ohms load = between(milliohms, 100, 100000);
        const RmsVolts once = sine_volts(power, load);
        RC_ASSERT(close((sine_volts(4 * power, load) / once).in(ratio), 2));
        RC_ASSERT(close((sine_volts(power, 2 * load) / once).in(ratio), 1.4142135623730951));
    }));
}

TEST_CASE("a square wave carries twice the power of a sine of equal peak") {
    REQUIRE(rc::check([] {
        const PeakVolts peak = between(peak_millivolts, 1, 100000);
        const Watts sine = power_in(rms_of_sine(peak), ohms(4));
        RC_ASSERT(close((power_in(rms_of_square(peak), ohms(4)) / sine).in(ratio), 2));
        RC_ASSERT(close(peak_of_sine(rms_of_sine(peak)).in(peak_volts), peak.in(peak_volts)));
    }));
}

TEST_CASE("a gain and its ratio are one thing, and raising back undoes raising") {
    REQUIRE(rc::check([] {
        const Gain gain = between(millidecibels, -60000, 60000);
        const RmsVolts volts = between(rms_millivolts, 1, 100000);
        RC_ASSERT(close(gain_of(ratio_of(gain)).in(decibels), gain.in(decibels)));
        RC_ASSERT(close(raised(raised(volts, gain), -gain).in(rms_volts), volts.in(rms_volts)));
        RC_ASSERT(close(gain_between(volts, raised(volts, gain)).in(decibels), gain.in(decibels)));
    }));
}

TEST_CASE("raising the volts by a gain raises their power by the same number of decibels") {
    REQUIRE(rc::check([] {
        const Gain gain = between(millidecibels, -40000, 40000);
        const RmsVolts volts = between(rms_millivolts, 1, 100000);
        const Watts one_way = power_in(raised(volts, gain), ohms(4));
        RC_ASSERT(close(one_way.in(watts), raised(power_in(volts, ohms(4)), gain).in(watts)));
    }));
}

TEST_CASE("the gain between two voltages is the difference of their levels") {
    REQUIRE(rc::check([] {
        const RmsVolts a = between(rms_millivolts, 1, 100000), b = between(rms_millivolts, 1, 100000);
        RC_ASSERT(close(gain_between(a, b).in(decibels), (level_dbv(b) - level_dbv(a)).in(decibels)));
        RC_ASSERT(close(volts_at(level_dbv(a)).in(rms_volts), a.in(rms_volts)));
    }));
}

TEST_CASE("a tone recorded 20 dB down reads a tenth of full scale") {
    CHECK(at_full_scale(rms_millivolts(940), dbfs(-20)).in(rms_volts) == Approx(9.4));
    CHECK(at_full_scale(rms_volts(9.4), dbfs(0)) == rms_volts(9.4));
}

TEST_CASE("a load equal to the source halves the voltage, and a larger load takes less") {
    CHECK(loaded(rms_volts(4), ohms(1000), ohms(1000)) == rms_volts(2));
    REQUIRE(rc::check([] {
        const Ohms source = between(ohms, 1, 10000), load = between(ohms, 1, 100000);
        const RmsVolts now = loaded(rms_volts(1), source, load);
        RC_ASSERT(now < rms_volts(1));
        RC_ASSERT(loaded(rms_volts(1), source, load * 2) > now);
    }));
}
