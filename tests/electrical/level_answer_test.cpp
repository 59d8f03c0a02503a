// Which stage of a chain clips first? By hand, and by a slow twin that turns the tap up millivolt by millivolt.
#include <catch2/catch.hpp>

#include "arbitrary.h"

using namespace tapbook;

namespace {

LevelRequest playing(double volts) {
    return {{rms_volts(volts), rms_volts(volts), rms_volts(volts)}, hertz(30), std::nullopt, 1};
}

ConverterSpec transformer() {
    ConverterSpec part;
    part.input_min = rms_volts(1);
    part.input_max = rms_volts(10);
    part.input_max_at = hertz(40);
    part.gain_min = ratio(0.1);
    part.gain_max = ratio(0.2);
    part.output_max = rms_volts(2);
    part.output_impedance = ohms(1000);
    return part;
}

AmplifierSpec amplifier() {
    AmplifierSpec amplifier;
    amplifier.power_per_load = {{ohms(4), watts(300)}};
    amplifier.sensitivity_highest_gain = rms_volts(0.5);
    amplifier.sensitivity_lowest_gain = rms_volts(5);
    amplifier.input_impedance = ohms(10000);
    return amplifier;
}

}  // namespace

TEST_CASE("a transformer's winding clips first where the note is lower than the one its limit is stated at") {
    const AmplifierSpec amp = amplifier();
    const LevelAnswer answer = calculate_level(playing(9), transformer(), &amp);
    CHECK(answer.limit_at_lowest->in(rms_volts) == Approx(7.5));  // 10 V x 30/40
    CHECK(answer.headroom->in(decibels) == Approx(-1.5836).margin(1e-4));
    CHECK(answer.drive_margin->in(decibels) == Approx(19.0849).margin(1e-4));
    REQUIRE(answer.first_clip);
    CHECK(answer.first_clip->place == ClipPlace::converter_input);
    CHECK(answer.first_clip->tap.in(rms_volts) == Approx(7.5));
    CHECK(answer.clips == true);
    CHECK(answer.rated->in(watts) == Approx(300));
}

TEST_CASE("an amplifier with a small largest input clips before the converter does") {
    AmplifierSpec amp = amplifier();
    amp.input_max = rms_volts(0.6);
    const auto first = first_clip(playing(9), transformer(), &amp);
    REQUIRE(first);
    CHECK(first->place == ClipPlace::amplifier_input);
    CHECK(first->tap.in(rms_volts) == Approx(6));  // 6 V x 0.1
}

TEST_CASE("a converter's largest output clips first and then keeps the amplifier safe") {
    ConverterSpec part = transformer();
    part.topology = Topology::active_speaker_level;
    part.input_max = rms_volts(40);
    part.output_max = rms_volts(0.8);
    const AmplifierSpec amp = amplifier();
    const auto first = first_clip(playing(9), part, &amp);
    REQUIRE(first);
    CHECK(first->place == ClipPlace::converter_output);
    CHECK(first->tap.in(rms_volts) == Approx(8));
}

TEST_CASE("two taps added in step clip a unity adder at half the volts") {
    ConverterSpec part = transformer();
    part.topology = Topology::active_speaker_level;
    part.input_max = rms_volts(40);
    part.adding = Adding::unity;
    LevelRequest two = playing(9);
    two.added_taps = 2;
    const auto first = first_clip(two, part, nullptr);
    REQUIRE(first);
    CHECK(first->tap.in(rms_volts) == Approx(10).epsilon(1e-9));  // 2 V / 0.1 / 2
    part.adding.reset();
    CHECK(first_clip(two, part, nullptr)->place == ClipPlace::converter_input);  // how it adds is not known
}

TEST_CASE("the amplifier's own speaker-level input is the amplifier's input") {
    ConverterSpec direct;
    direct.topology = Topology::direct;
    direct.input_max = rms_volts(10);
    const LevelAnswer answer = calculate_level(playing(10), direct, nullptr);
    CHECK(answer.first_clip->place == ClipPlace::amplifier_input);
    CHECK(answer.clips == false);  // 0 dB fits
}

TEST_CASE("without any limit nothing is said of clipping") {
    ConverterSpec part;
    part.input_max = rms_volts(10);  // a transformer, at which note is not stated
    const LevelAnswer answer = calculate_level(playing(10), part, nullptr);
    CHECK_FALSE(answer.first_clip.has_value());
    CHECK_FALSE(answer.clips.has_value());
}

namespace {

ConverterSpec arbitrary_converter() {
    ConverterSpec part;
    part.topology = arbitrary::any_of<Topology>();
    part.input_max = arbitrary::perhaps(arbitrary::between(rms_millivolts, 500, 30000));
    part.input_max_at = arbitrary::perhaps(arbitrary::between(hertz, 10, 200));
    const Ratio least = arbitrary::between(thousandths, 10, 2000);
    part.gain_min = arbitrary::perhaps(least);
    part.gain_max = least + arbitrary::between(thousandths, 0, 500);
    part.output_max = arbitrary::perhaps(arbitrary::between(rms_millivolts, 100, 10000));
    return part;
}

// Does some stage clip with `volts` at the tap? Asked of limit and chain themselves, not of first_clip.
bool clips_at(RmsVolts volts, const ConverterSpec& part, const AmplifierSpec* amp) {
    const LevelRequest request{{volts, volts, volts}, hertz(30), std::nullopt, 1};
    const auto limit = limit_at(part, request.lowest);
    const bool input = limit && volts > *limit;
    if (part.topology == Topology::direct) return input;
    const bool output = part.gain_min && part.output_max && volts * *part.gain_min > *part.output_max;
    return input || output || level_chain(request, part, amp).overloaded.value_or(false);
}

}  // namespace

TEST_CASE("turning the tap up until something clips finds the same volts") {
    const bool agree = rc::check("slow twin of first_clip", [] {
        const ConverterSpec part = arbitrary_converter();
        AmplifierSpec amp;
        amp.input_max = arbitrary::perhaps(arbitrary::between(rms_millivolts, 100, 12000));
        amp.sensitivity_lowest_gain = arbitrary::perhaps(arbitrary::between(rms_millivolts, 100, 12000));
        const auto first = first_clip(playing(1), part, &amp);
        if (first) {
            RC_ASSERT_FALSE(clips_at(first->tap * 0.999999, part, &amp));
            RC_ASSERT(clips_at(first->tap * 1.000001, part, &amp));
        }
        for (int millivolts = 37; millivolts < 40000; millivolts += 997) {
            const RmsVolts volts = rms_millivolts(millivolts);
            RC_ASSERT(clips_at(volts, part, &amp) == (first && volts > first->tap));
        }
    });
    CHECK(agree);
}
