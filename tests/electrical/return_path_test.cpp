// What the amplifier's current loses in the body, and what a load resistor must stand. Expected values are worked by
// hand beside each check.
#include "electrical/return_path.h"

#include <catch2/catch.hpp>

using namespace tapbook;

namespace {

AmplifierSpec amplifier_of(int channels, double power, std::optional<Ratio> efficiency,
                           std::optional<AmplifierClass> kind) {
    AmplifierSpec amplifier;
    amplifier.channels = channels;
    amplifier.power_per_load = {{ohms(4), watts(power)}};
    amplifier.efficiency = efficiency;
    amplifier.amplifier_class = kind;
    return amplifier;
}

}  // namespace

TEST_CASE("full current is all channels' power over efficiency and 13.8 V") {
    // 4 x 75 W / 0.8 / 13.8 V = 27.174 A
    CHECK(full_current(amplifier_of(4, 75, ratio(0.8), {}))->in(amps) == Approx(27.1739).margin(1e-3));
    // class AB, likely 0.55: 150 W / 0.55 / 13.8 V = 19.763 A
    CHECK(full_current(amplifier_of(1, 150, {}, AmplifierClass::ab))->in(amps) == Approx(19.7628).margin(1e-3));
    // the printed efficiency counts before the class
    CHECK(full_current(amplifier_of(1, 138, ratio(0.5), AmplifierClass::d))->in(amps) == Approx(20.0));
}

TEST_CASE("what is not printed leaves the current not known") {
    CHECK_FALSE(full_current(amplifier_of(4, 75, {}, {})).has_value());
    CHECK_FALSE(full_current(amplifier_of(4, 75, ratio(0), AmplifierClass::d)).has_value());
    AmplifierSpec without_power = amplifier_of(4, 75, ratio(0.8), {});
    without_power.power_per_load.clear();
    CHECK_FALSE(return_drop(without_power).has_value());
    AmplifierSpec without_channels = amplifier_of(4, 75, ratio(0.8), {});
    without_channels.channels.reset();
    CHECK_FALSE(return_drop(without_channels).has_value());
}

TEST_CASE("a milliohm of body under 27.2 A loses 27.2 mV, five lose five times as much") {
    const AmplifierSpec amplifier = amplifier_of(4, 75, ratio(0.8), {});
    CHECK(return_drop(amplifier)->in(dc_millivolts) == Approx(27.1739).margin(1e-3));
    CHECK(return_drop(amplifier, ohms(0.005))->in(dc_millivolts) == Approx(135.87).margin(1e-2));
    CHECK(return_drop(amplifier, ohms(0))->in(dc_millivolts) == Approx(0).margin(1e-12));
}

TEST_CASE("a load resistor stands twice the power of the largest clean sine") {
    CHECK(load_resistor_power(rms_volts(9), ohms(4)).in(watts) == Approx(40.5));      // 2 x 81 / 4
    CHECK(load_resistor_power(rms_volts(9), ohms(33)).in(watts) == Approx(4.90909));  // 2 x 81 / 33
}
