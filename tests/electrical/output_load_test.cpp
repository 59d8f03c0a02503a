// May this load hang on the output, what is printed for it, and what stands in for a speaker? The square wave of a
// saturated output carries twice the power of its largest clean sine (crest factors of sine and square wave).
#include "electrical/output_load.h"

#include <catch2/catch.hpp>
#include <cmath>

#include "arbitrary.h"

using namespace tapbook;

namespace {

AmplifierSpec two_loads() {
    AmplifierSpec amplifier;
    amplifier.channels = 2;
    amplifier.power_per_load = {{ohms(4), watts(75)}, {ohms(2), watts(110)}};
    amplifier.least_load = ohms(2);
    amplifier.least_load_bridged = ohms(4);
    return amplifier;
}

}  // namespace

TEST_CASE("2 ohm are allowed where 2 is the least, and not on two channels bridged") {
    CHECK(output_load(two_loads(), ohms(2), false).allowed == true);
    CHECK(output_load(two_loads(), ohms(1.999), false).allowed == false);
    CHECK(output_load(two_loads(), ohms(2), true).allowed == false);
    CHECK(output_load(two_loads(), ohms(4), true).allowed == true);
    CHECK(output_load(two_loads(), ohms(2), true).least == ohms(4));
}

TEST_CASE("a least load that is not printed leaves it open whether the load is allowed") {
    AmplifierSpec amplifier = two_loads();
    amplifier.least_load_bridged.reset();
    CHECK(output_load(amplifier, ohms(4), false).allowed == true);
    CHECK_FALSE(output_load(amplifier, ohms(4), true).allowed.has_value());
    CHECK_FALSE(output_load(amplifier, ohms(4), true).least.has_value());
}

TEST_CASE("the power is that of exactly the printed load, and bridged nothing is printed") {
    CHECK(output_load(two_loads(), ohms(4), false).rated == watts(75));
    CHECK(output_load(two_loads(), ohms(2), false).rated == watts(110));
    CHECK_FALSE(output_load(two_loads(), ohms(3), false).rated.has_value());
    CHECK_FALSE(output_load(two_loads(), ohms(4.001), false).rated.has_value());
    CHECK_FALSE(output_load(two_loads(), ohms(4), true).rated.has_value());
}

TEST_CASE("equal coils side by side reach the printed row and the least load exactly") {
    const bool holds = rc::check("n coils of n times the load are the load", [] {
        const int load = *rc::gen::inRange(100, 16000);
        const int coils = *rc::gen::inRange(1, 33);
        double conductance = 0;
        for (int i = 0; i < coils; ++i) conductance += 1 / (load * 0.001 * coils);
        AmplifierSpec amplifier;
        amplifier.power_per_load = {{milliohms(load), watts(100)}};
        amplifier.least_load = milliohms(load);
        const OutputLoad seen = output_load(amplifier, ohms(1 / conductance), false);
        RC_ASSERT(seen.allowed == true);
        RC_ASSERT(seen.rated == watts(100));
    });
    CHECK(holds);
}

TEST_CASE("more ohms are never less allowed") {
    const bool holds = rc::check("the least load is an end, not a window", [] {
        AmplifierSpec amplifier = two_loads();
        amplifier.least_load = arbitrary::between(milliohms, 500, 8000);
        const Ohms load = arbitrary::between(milliohms, 100, 16000);
        const Ohms more = load + arbitrary::between(milliohms, 0, 16000);
        const bool bridged = *rc::gen::arbitrary<bool>();
        RC_ASSERT(!*output_load(amplifier, load, bridged).allowed || *output_load(amplifier, more, bridged).allowed);
        RC_ASSERT(*output_load(amplifier, load, false).allowed == (load >= *amplifier.least_load));
    });
    CHECK(holds);
}

// 9.122 V is the largest clean sine of a bridged output at 14.4 V: 20.80 W in 4 ohm, so the resistor stands 41.6 W.
TEST_CASE("a resistor in the place of a 4 ohm speaker on a bridged radio stands 42 W") {
    const LoadResistor resistor = load_resistor(rms_volts(9.122), ohms(4));
    CHECK(resistor.resistance == ohms(4));
    CHECK(resistor.power.in(watts) == Approx(41.6).epsilon(1e-3));
}

TEST_CASE("half the ohms take twice the watts, twice the volts four times") {
    const bool holds = rc::check("the power law", [] {
        const RmsVolts volts = arbitrary::between(rms_millivolts, 100, 30000);
        const Ohms speaker = arbitrary::between(milliohms, 1000, 16000);
        const double once = load_resistor(volts, speaker).power.in(watts);
        RC_ASSERT(std::abs(load_resistor(volts, speaker / 2.0).power.in(watts) / once - 2) < 1e-9);
        RC_ASSERT(std::abs(load_resistor(volts * 2.0, speaker).power.in(watts) / once - 4) < 1e-9);
    });
    CHECK(holds);
}
