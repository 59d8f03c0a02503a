// Does the signal reach rated power, and can it overload the amplifier? By hand from the signal specification, section
// 3, and by law.
#include "electrical/level_chain.h"

#include <catch2/catch.hpp>

#include "arbitrary.h"

using namespace tapbook;

namespace {

ConverterSpec converter() {
    ConverterSpec part;
    part.topology = Topology::active_speaker_level;
    part.gain_min = ratio(0.1);
    part.gain_max = ratio(0.5);
    part.output_max = rms_volts(8);
    part.output_impedance = ohms(100);
    part.low_corner = hertz(10);
    part.adding = Adding::unity;
    return part;
}

AmplifierSpec amplifier() {
    AmplifierSpec amplifier;
    amplifier.power_per_load = {{ohms(2), watts(600)}, {ohms(4), watts(400)}};
    amplifier.sensitivity_highest_gain = rms_volts(0.2);
    amplifier.sensitivity_lowest_gain = rms_volts(4);
    amplifier.input_impedance = ohms(10000);
    return amplifier;
}

LevelRequest request(double low, double likely, double high) {
    return LevelRequest{{rms_volts(low), rms_volts(likely), rms_volts(high)}, hertz(30), {}, 1};
}

}  // namespace

TEST_CASE("a signal above the sensitivity reaches rated power") {
    const AmplifierSpec amp = amplifier();
    const LevelChain chain = level_chain(request(7, 9, 9.6), converter(), &amp);
    CHECK(chain.output_open->in(rms_volts) == Approx(4.2691).margin(1e-4));  // 4.5 x 0.94868, corner 10 Hz at 30 Hz
    CHECK(chain.output->in(rms_volts) == Approx(4.2691 * 10000 / 10100).margin(1e-4));
    CHECK(chain.shortfall == decibels(0));
    CHECK(chain.reachable->in(watts) == Approx(400));
    CHECK(chain.overload_volts->in(rms_volts) == Approx(0.96));
    CHECK(chain.overloaded == false);
}

TEST_CASE("a shortfall of 6.02 dB leaves a quarter of the power") {
    AmplifierSpec amp = amplifier();
    ConverterSpec part = converter();
    part.low_corner.reset();
    part.output_impedance = ohms(0);
    amp.sensitivity_highest_gain = rms_volts(9);
    const LevelChain chain = level_chain(request(7, 9, 9.6), part, &amp);
    CHECK(chain.shortfall->in(decibels) == Approx(6.0206).margin(1e-4));
    CHECK(chain.reachable->in(watts) == Approx(100).margin(1e-6));
}

TEST_CASE("overload looks at the high input and smallest gain against the largest input, else the lowest sensitivity") {
    AmplifierSpec amp = amplifier();
    ConverterSpec part = converter();
    part.gain_min = ratio(0.5);
    CHECK(level_chain(request(7, 9, 9.6), part, &amp).overloaded == true);  // 4.8 V against 4 V
    amp.input_max = rms_volts(6);
    CHECK(level_chain(request(7, 9, 9.6), part, &amp).overloaded == false);
    part.output_max = rms_volts(4);
    amp.input_max = rms_volts(4);
    CHECK(level_chain(request(7, 9, 9.6), part, &amp).overloaded == false);  // 0 dB fits
    amp.input_max.reset();
    amp.sensitivity_lowest_gain.reset();
    CHECK_FALSE(level_chain(request(7, 9, 9.6), part, &amp).overloaded.has_value());
}

TEST_CASE("added taps raise overload in step and reach as unrelated") {
    const AmplifierSpec amp = amplifier();
    LevelRequest two = request(7, 8, 9);
    two.added_taps = 2;
    const LevelChain one = level_chain(request(7, 8, 9), converter(), &amp);
    const LevelChain both = level_chain(two, converter(), &amp);
    CHECK(gain_between(*one.overload_volts, *both.overload_volts).in(decibels) == Approx(6.0206).margin(1e-4));
    CHECK(gain_between(*one.output_open, *both.output_open).in(decibels) == Approx(3.0103).margin(1e-4));
    ConverterSpec unstated = converter();
    unstated.adding.reset();
    CHECK_FALSE(level_chain(two, unstated, &amp).output_open);
}

TEST_CASE("what is not known stays unknown along the chain") {
    AmplifierSpec amp = amplifier();
    amp.input_impedance.reset();
    const LevelChain chain = level_chain(request(7, 9, 9.6), converter(), &amp);
    CHECK(chain.output_open);
    CHECK_FALSE(chain.output);
    CHECK_FALSE(chain.shortfall);
    CHECK_FALSE(chain.reachable);
    LevelRequest unknown{{}, hertz(30), {}, 1};
    CHECK_FALSE(level_chain(unknown, converter(), &amp).output_open);
    CHECK_FALSE(level_chain(unknown, converter(), &amp).overloaded.has_value());
    ConverterSpec part = converter();
    part.gain_min.reset();
    CHECK_FALSE(level_chain(request(7, 9, 9.6), part, &amp).overload_volts);
    CHECK(level_chain(request(7, 9, 9.6), part, &amp).output_open);
}

TEST_CASE("without an amplifier only the converter's own output is known") {
    const LevelChain chain = level_chain(request(7, 9, 9.6), converter(), nullptr);
    CHECK(chain.output_open);
    CHECK(chain.overload_volts);
    CHECK_FALSE(chain.output);
    CHECK_FALSE(chain.overload_limit);
}

TEST_CASE("rated power is the row of the load, and without one the 4 ohm row") {
    AmplifierSpec amp = amplifier();
    CHECK(rated_power(amp, ohms(2)) == watts(600));
    CHECK_FALSE(rated_power(amp, ohms(3)));
    CHECK(rated_power(amp) == watts(400));
    amp.power_per_load = {{ohms(2), watts(600)}};
    CHECK(rated_power(amp) == watts(600));
    CHECK_FALSE(rated_power(AmplifierSpec{}));
}

TEST_CASE("the amplifier's own speaker-level input is judged by its range alone") {
    AmplifierSpec amp = amplifier();
    CHECK_FALSE(speaker_input_as_converter(amp));
    amp.speaker_input = SpeakerLevelInput{rms_volts(2),        rms_volts(10), Reference::differential,
                                          Negatives::separate, dc_volts(12),  false};
    const ConverterSpec direct = *speaker_input_as_converter(amp);
    CHECK(direct.topology == Topology::direct);
    CHECK(direct.reference == Reference::differential);
    CHECK(direct.negatives == Negatives::separate);
    CHECK(direct.common_mode_max == dc_volts(12));
    CHECK(direct.turn_on == ConverterTurnOn::none);
    CHECK(direct.isolates_grounds == true);
    CHECK(limit_at(direct, hertz(30)) == rms_volts(10));
    CHECK(level_chain(request(7, 9, 9.6), direct, &amp).reachable == watts(400));
    CHECK(level_chain(request(7, 9, 9.6), direct, &amp).overloaded == false);
    CHECK(level_chain(request(7, 9, 10.5), direct, &amp).overloaded == true);
    CHECK(level_chain(request(0.5, 1, 1.5), direct, &amp).reachable->in(watts) == Approx(100));
    CHECK_FALSE(level_chain(request(7, 9, 9.6), direct, &amp).output_open);
}

TEST_CASE("more signal never leaves less power") {
    REQUIRE(rc::check([] {
        AmplifierSpec amp = amplifier();
        amp.sensitivity_highest_gain = rms_volts(4);
        const int likely = *rc::gen::inRange(100, 20000);
        const LevelRequest less{{{}, rms_millivolts(likely), {}}, hertz(30), {}, 1};
        const LevelRequest more{{{}, rms_millivolts(likely + 50), {}}, hertz(30), {}, 1};
        const Watts before = *level_chain(less, converter(), &amp).reachable;
        const Watts after = *level_chain(more, converter(), &amp).reachable;
        RC_ASSERT(after >= before);
        RC_ASSERT(after <= watts(400));
    }));
}
