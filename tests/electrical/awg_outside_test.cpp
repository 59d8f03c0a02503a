// AWG resistance against a printed table: wire gauge table of HyperPhysics (data credited to Floyd, "Electric Circuit
// Fundamentals", 2nd ed.), ohm per 1000 ft at 20 C, 0.1 %; sizes by the formula of ASTM B258; and GNU units 2.22
// (wiregauge(), IACS), 1e-6. Traps: 92^(1/36) or IACS 1.7241e-8 taken per foot; and a widespread faulty copy, below.
#include <catch2/catch.hpp>
#include <string>

#include "electrical/electrical.h"

using namespace tapbook;

namespace {

constexpr double foot = 0.3048;

struct Row {
    const char* size;
    double ohm_per_kft;
};

constexpr Row printed[] = {
    {"4/0", 0.049}, {"3/0", 0.0618}, {"2/0", 0.078}, {"1/0", 0.0983}, {"1", 0.124},  {"2", 0.1563},  {"3", 0.197},
    {"4", 0.2485},  {"5", 0.3133},   {"6", 0.3951},  {"8", 0.6282},   {"9", 0.7921}, {"10", 0.9989}, {"11", 1.26},
    {"12", 1.588},  {"14", 2.525},   {"15", 3.184},  {"16", 4.016},   {"17", 5.064}, {"18", 6.385},  {"19", 8.051},
    {"20", 10.15},  {"21", 12.8},    {"22", 16.14},  {"23", 20.36},   {"24", 25.67}, {"25", 32.37},  {"26", 40.81},
    {"27", 51.47},  {"28", 64.9},    {"29", 81.83},  {"30", 103.2},
};

double ohm_per_kft(const char* size) {
    return resistance(*parse_awg(size)).per_metre.in(ohms_per_metre)*foot * 1000;
}

}  // namespace

TEST_CASE("each gauge has the printed resistance within 0.1 %") {
    for (const Row& row : printed) {
        CAPTURE(row.size);
        CHECK(ohm_per_kft(row.size) == Approx(row.ohm_per_kft).epsilon(1e-3));
    }
}

// GNU units: `wiregauge(4)^2*pi/4` in mm^2, and 1/IACS over that in ohm/km.
TEST_CASE("area and resistance are those of GNU units") {
    CHECK(area(Awg{4}).in(square_millimetres) == Approx(21.15063943).epsilon(1e-6));
    CHECK(area(Awg{8}).in(square_millimetres) == Approx(8.36556406).epsilon(1e-6));
    CHECK(area(Awg{18}).in(square_millimetres) == Approx(0.82304683).epsilon(1e-6));
    CHECK(area(Awg{30}).in(square_millimetres) == Approx(0.050926019).epsilon(1e-6));
    CHECK(resistance(Awg{4}).per_metre.in(milliohms_per_metre) == Approx(0.8151705943).epsilon(1e-6));
    CHECK(resistance(Awg{8}).per_metre.in(milliohms_per_metre) == Approx(2.060994236).epsilon(1e-6));
    CHECK(resistance(Awg{22}).per_metre.in(milliohms_per_metre) == Approx(52.963385).epsilon(1e-6));
}

// ASTM B258: 4/0 is 0.4600 in and 36 is 0.0050 in, by definition.
TEST_CASE("the two anchors of the gauge have their defined diameters") {
    const auto square_inches = [](double diameter) { return 0.7853981634 * diameter * diameter * 645.16; };
    CHECK(area(*parse_awg("4/0")).in(square_millimetres) == Approx(square_inches(0.46)).epsilon(1e-9));
    CHECK(area(Awg{36}).in(square_millimetres) == Approx(square_inches(0.005)).epsilon(1e-9));
}

TEST_CASE("each step of one gauge changes the resistance by 1.2610, three by 2.0050, ten by 10.164") {
    for (int number = -3; number < 40; ++number) {
        const auto step = resistance(Awg{number + 1}).per_metre / resistance(Awg{number}).per_metre;
        CHECK(step.in(ratio) == Approx(1.2610).epsilon(1e-4));
    }
    CHECK((area(Awg{5}) / area(Awg{8})).in(ratio) == Approx(2.0050).epsilon(1e-4));
    CHECK((area(Awg{10}) / area(Awg{20})).in(ratio) == Approx(10.164).epsilon(1e-4));
}

// An old copy of an electronics dictionary's table prints 0.6529 for 8 and 0.8441 for 10: both wrong.
TEST_CASE("the faulty copy of the table is not what we compute") {
    CHECK(ohm_per_kft("8") != Approx(0.6529).epsilon(0.02));
    CHECK(ohm_per_kft("10") != Approx(0.8441).epsilon(0.02));
}
