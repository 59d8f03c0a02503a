// Volts lost along a cable against worked examples of FAA AC 43.13-1B CHG 1, tables 11-7 and 11-8 and paragraph 11-66,
// a marine wiring instruction sheet, and a design case computed outside this project. Trap: counting the return twice
// doubles every row; two rows of the same tables are misprints and are NOT matched.
#include <catch2/catch.hpp>

#include "electrical/electrical.h"

using namespace tapbook;

namespace {

constexpr double foot = 0.3048;

double lost(double current, double feet, double ohm_per_foot) {
    return drop(ohms_per_metre(ohm_per_foot / foot), metres(feet * foot), amps(current)).in(dc_volts);
}

}  // namespace

TEST_CASE("the printed drops of the aircraft tables are reproduced") {
    CHECK(lost(20, 107, 0.00044) == Approx(0.942).margin(0.001));  // VD1, table 11-7, No. 6
    CHECK(lost(20, 90, 0.00028) == Approx(0.504).margin(0.001));   // VD2, No. 4
    CHECK(lost(20, 39, 0.00126) == Approx(0.98).margin(0.01));     // VD4, table 11-8, No. 10
    CHECK(lost(20, 156, 0.00126) == Approx(3.93).margin(0.01));    // VD5
}

TEST_CASE("39 ft is the longest No. 10 that loses no more than 1 V at 20 A") {
    CHECK(lost(20, 39, 0.00126) <= 1);  // VD7
    CHECK(lost(20, 40, 0.00126) > 1);
}

TEST_CASE("two misprinted rows are not matched") {
    CHECK(lost(20, 88, 0.00202) == Approx(3.555).margin(0.001));    // printed 3.60
    CHECK(lost(20, 19.5, 0.00126) == Approx(0.491).margin(0.001));  // printed .366
    CHECK(lost(20, 88, 0.00202) != Approx(3.60).margin(0.01));
    CHECK(lost(20, 19.5, 0.00126) != Approx(0.366).margin(0.01));
}

TEST_CASE("a warm conductor may be shorter by the published rule") {
    // VD8: L2 = 254.5 L1 / (234.5 + T2), here at 75 C: 0.8223.
    const auto warm = resistance(Awg{10}, celsius(75)).per_metre;
    CHECK((resistance(Awg{10}).per_metre / warm).in(ratio) == Approx(254.5 / 309.5).margin(1e-4));
    // 0.00393/K: 60 C 1.1572, 105 C 1.3341.
    CHECK((resistance(Awg{10}, celsius(60)).per_metre / resistance(Awg{10}).per_metre).in(ratio) ==
          Approx(1.1572).margin(1e-4));
    CHECK((resistance(Awg{10}, celsius(105)).per_metre / resistance(Awg{10}).per_metre).in(ratio) ==
          Approx(1.3341).margin(1e-4));
}

TEST_CASE("the marine example of 1800 ft A at 1.2 V is met by gauge 8 and by no thinner one") {
    const double needed = 10.75 * 1800 / 1.2;  // VD10: 16 125 circular mil; 1 cmil = 5.067075e-4 mm^2
    CHECK(area(Awg{8}).in(square_millimetres) / 5.067075e-4 >= needed);
    CHECK(area(Awg{9}).in(square_millimetres) / 5.067075e-4 < needed);
}

TEST_CASE("800 W of class D over 5 m one way: gauge 8 loses 5.4 % of 13.8 V, gauge 4 2.1 %") {
    // 800 / (0.80 x 13.8) = 72.46 A; drops of one length only.
    const auto share = [](int number) {
        return (drop(resistance(Awg{number}).per_metre, metres(5), amps(72.46)) / dc_volts(13.8)).in(percent);
    };
    CHECK(share(8) == Approx(5.41).margin(0.01));
    CHECK(share(4) == Approx(2.14).margin(0.01));
    CHECK(share(2) == Approx(1.35).margin(0.01));
    CHECK(share(0) == Approx(0.85).margin(0.01));
    CHECK(length_resistance(resistance(Awg{8}).per_metre, metres(5)).in(milliohms) == Approx(10.305).margin(1e-3));
}
