// Does a part fit a tap? Limit, headroom, drive margin and output of a converter, by hand and by law.
#include "electrical/converter.h"

#include <catch2/catch.hpp>

#include "arbitrary.h"

using namespace tapbook;
using arbitrary::between;

namespace {

ConverterSpec part(Topology topology = Topology::resistive) {
    ConverterSpec converter;
    converter.topology = topology;
    converter.input_min = rms_volts(2);
    converter.input_max = rms_volts(8);
    converter.input_max_at = hertz(60);
    converter.gain_max = ratio(0.25);
    converter.gain_min = ratio(0.1);
    return converter;
}

}  // namespace

TEST_CASE("a transformer without a rated note has no limit, other parts need none") {
    ConverterSpec converter = part(Topology::transformer);
    converter.input_max_at.reset();
    CHECK_FALSE(limit_at(converter, hertz(30)));
    for (const auto topology : {Topology::resistive, Topology::active_line_level, Topology::active_speaker_level}) {
        converter.topology = topology;
        CHECK(limit_at(converter, hertz(30)) == rms_volts(8));
    }
}

TEST_CASE("a transformer rated at 60 Hz takes half at 30 Hz") {
    CHECK(limit_at(part(Topology::transformer), hertz(30))->in(rms_volts) == Approx(4));
}

TEST_CASE("a bare watt rating is the volts of that power in 4 ohm unless another load is printed") {
    ConverterSpec converter;
    converter.topology = Topology::resistive;
    CHECK_FALSE(input_max_from_watt_rating(converter));
    CHECK_FALSE(limit_at(converter, hertz(30)));
    converter.watt_rating = watts(50);
    CHECK(limit_at(converter, hertz(30))->in(rms_volts) == Approx(14.142).margin(1e-3));
    CHECK(input_max_from_watt_rating(converter)->load_assumed);
    CHECK(input_max_from_watt_rating(converter)->kind_assumed);
    converter.watt_rating_at = ohms(8);
    converter.watt_rating_kind = RatingKind::maximum;
    CHECK(input_max_from_watt_rating(converter)->volts.in(rms_volts) ==
          Approx(std::sqrt(50 / 1.9093 * 8)).margin(1e-3));
    CHECK_FALSE(input_max_from_watt_rating(converter)->load_assumed);
    converter.input_max = rms_volts(6);
    CHECK(limit_at(converter, hertz(30)) == rms_volts(6));
}

TEST_CASE("headroom is the limit at the lowest note over the highest clean volts") {
    CHECK(headroom(part(), hertz(30), rms_volts(8))->in(decibels) == Approx(0).margin(1e-12));
    CHECK(headroom(part(), hertz(30), rms_volts(4))->in(decibels) == Approx(6.02).margin(0.01));
    CHECK(headroom(part(Topology::transformer), hertz(30), rms_volts(8))->in(decibels) == Approx(-6.02).margin(0.01));
    CHECK_FALSE(headroom(part(), hertz(30), std::nullopt));
    CHECK_FALSE(headroom(part(), hertz(30), rms_volts(0)));
}

TEST_CASE("headroom of a transformer falls 6.02 dB per octave below its rated note and not above it") {
    REQUIRE(rc::check([] {
        const ConverterSpec converter = part(Topology::transformer);
        const Hertz note = between(millihertz, 10000, 60000);
        const RmsVolts high = between(rms_millivolts, 100, 20000);
        const Gain here = *headroom(converter, note, high);
        const Gain octave_below = *headroom(converter, note / 2, high);
        RC_ASSERT((here - octave_below).in(decibels) == Approx(6.0206).margin(1e-4));
        RC_ASSERT(*headroom(converter, note + hertz(60), high) == *headroom(converter, hertz(60), high));
    }));
}

TEST_CASE("a higher tap never has more headroom and never less drive margin") {
    REQUIRE(rc::check([] {
        const ConverterSpec converter = part();
        const RmsVolts volts = between(rms_millivolts, 100, 20000);
        const RmsVolts more = volts + rms_millivolts(10);
        RC_ASSERT(*headroom(converter, hertz(40), more) < *headroom(converter, hertz(40), volts));
        RC_ASSERT(*drive_margin(converter, more) > *drive_margin(converter, volts));
    }));
}

TEST_CASE("the drive margin is the lowest clean volts over the least input") {
    CHECK(drive_margin(part(), rms_volts(4))->in(decibels) == Approx(6.02).margin(0.01));
    CHECK(drive_margin(part(), rms_volts(1))->in(decibels) == Approx(-6.02).margin(0.01));
    CHECK_FALSE(drive_margin(part(), std::nullopt));
    CHECK_FALSE(drive_margin(ConverterSpec{}, rms_volts(1)));
}

TEST_CASE("the open output is input times largest gain times corner, held at the largest output") {
    ConverterSpec converter = part();
    CHECK(output_open(converter, hertz(40), rms_volts(8))->in(rms_volts) == Approx(2));
    converter.low_corner = hertz(40);
    CHECK(output_open(converter, hertz(40), rms_volts(8))->in(rms_volts) == Approx(1.41421).margin(1e-5));
    CHECK(corner_loss(converter, hertz(40))->in(decibels) == Approx(3.010).margin(1e-3));
    converter.output_max = rms_volts(1);
    CHECK(output_open(converter, hertz(40), rms_volts(8)) == rms_volts(1));
    converter.gain_max.reset();
    CHECK_FALSE(output_open(converter, hertz(40), rms_volts(8)));
    CHECK_FALSE(output_open(part(), hertz(40), std::nullopt));
    CHECK_FALSE(corner_loss(part(), hertz(40)));
}

TEST_CASE("the loaded output needs both impedances") {
    ConverterSpec converter = part();
    CHECK_FALSE(output_into(converter, rms_volts(2), ohms(10000)));
    converter.output_impedance = ohms(2500);
    CHECK(output_into(converter, rms_volts(2), ohms(10000))->in(rms_volts) == Approx(1.6));
    CHECK_FALSE(output_into(converter, rms_volts(2), std::nullopt));
    CHECK_FALSE(output_into(converter, std::nullopt, ohms(10000)));
}

TEST_CASE("an input of 16.9 times the source costs half a decibel and no more") {
    CHECK(loads_line_output(ohms(1689), ohms(100)) == true);
    CHECK(loads_line_output(ohms(1690), ohms(100)) == false);
    const RmsVolts left = loaded(rms_volts(1), ohms(100), ohms(1690));
    CHECK(gain_between(rms_volts(1), left).in(decibels) == Approx(-0.5).margin(0.005));
    CHECK_FALSE(loads_line_output(std::nullopt, ohms(100)));
    CHECK_FALSE(loads_line_output(ohms(100), std::nullopt));
}

TEST_CASE("a part withstands what it survives and what it takes clean, and is doubted in between") {
    ConverterSpec converter = part();
    CHECK(withstands(converter, rms_volts(8)) == true);
    CHECK_FALSE(withstands(converter, rms_volts(9)).has_value());
    converter.survives = rms_volts(15);
    CHECK(withstands(converter, rms_volts(15)) == true);
    CHECK(withstands(converter, rms_volts(15.1)) == false);
    CHECK_FALSE(withstands(ConverterSpec{}, rms_volts(1)).has_value());
}
