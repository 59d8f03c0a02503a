// How are gauges read, and how do temperature, metal and length act on resistance?
#include "electrical/conductor.h"

#include <catch2/catch.hpp>

#include "arbitrary.h"

using namespace tapbook;

TEST_CASE("gauges are read as written on cable") {
    CHECK(parse_awg("4")->number == 4);
    CHECK(parse_awg("40")->number == 40);
    CHECK(parse_awg("1/0")->number == 0);
    CHECK(parse_awg("0")->number == 0);
    CHECK(parse_awg("4/0")->number == -3);
    CHECK(parse_awg("0000")->number == -3);
    CHECK(parse_awg("00")->number == -1);
    for (int number = -3; number <= 40; ++number) CHECK(parse_awg(awg_text(Awg{number}))->number == number);
}

TEST_CASE("what is no gauge is refused") {
    for (const char* bad : {"", " 4", "4 ", "41", "99", "5/0", "0/0", "2/1", "00000", "04", "-1", "-3", "+4", "4.0",
                            "4AWG", "#4", "1/", "/0", "four"}) {
        CAPTURE(bad);
        CHECK_FALSE(parse_awg(bad));
    }
    CHECK_FALSE(is_listed(Awg{-4}));
    CHECK_FALSE(is_listed(Awg{41}));
}

TEST_CASE("copper-clad aluminium of conductivity 0.63 has 1/0.63 of the resistance") {
    const auto copper = resistance(Awg{4}).per_metre;
    const auto clad = resistance(Awg{4}, celsius(20), Metal::copper_clad).per_metre;
    CHECK((copper / clad).in(ratio) == Approx(0.63));
    const auto given = resistance(square_millimetres(25), celsius(20), Metal::copper_clad, ratio(0.6)).per_metre;
    CHECK(given.in(milliohms_per_metre) == Approx(0.743 / 0.6));
}

TEST_CASE("warmer copper has more resistance, 0.393 % per kelvin of its value at 20 C") {
    CHECK((resistance(Awg{4}, celsius(70)).per_metre / resistance(Awg{4}).per_metre).in(ratio) == Approx(1.1965));
    CHECK((resistance(Awg{4}, celsius(-10)).per_metre / resistance(Awg{4}).per_metre).in(ratio) == Approx(0.8821));
}

TEST_CASE("the drop is in proportion to length and current and counts this length only") {
    REQUIRE(rc::check([] {
        const Metres length = arbitrary::between(millimetres, 1, 20000);
        const Amps current = arbitrary::between(milliamps, 1, 300000);
        const OhmsPerMetre cable = resistance(Awg{*rc::gen::inRange(-3, 41)}).per_metre;
        const DcVolts once = drop(cable, length, current);
        RC_ASSERT((drop(cable, 2 * length, current) / once).in(ratio) == Approx(2));
        RC_ASSERT((drop(cable, length, 2 * current) / once).in(ratio) == Approx(2));
        RC_ASSERT(once.in(dc_volts) == Approx(length_resistance(cable, length).in(ohms)*current.in(amps)));
    }));
}

TEST_CASE("a thicker cable never has more resistance, printed or computed") {
    REQUIRE(rc::check([] {
        const auto thin = arbitrary::between(thousandths_of_square_millimetre, 350, 120000);
        const auto thick = thin * 1.2;
        RC_ASSERT(resistance(thick).per_metre < resistance(thin).per_metre);
    }));
}
