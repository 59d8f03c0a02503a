// Low corners against component data sheets. C1, C3, C4: Texas Instruments TPA302 SLOS174C table 1 and TPA311 SLOS207C
// (f = 1/(2 pi R C)); C5: a worked example on an audio forum; C6, C7: computed outside this project; T5: formula from a
// transformer note, values computed outside this project.
// Traps: f = 1/(R C) is off by 6.28; calling the corner the "-6 dB point" adds volts without quadrature.
#include <catch2/catch.hpp>

#include "electrical/electrical.h"

using namespace tapbook;

TEST_CASE("a coupling capacitor and its load have the published corner") {
    const auto corner = [](double load, double capacitance) {
        return coupling_corner(ohms(load), microfarads(capacitance)).in(hertz);
    };
    CHECK(corner(8, 68) == Approx(293).epsilon(0.005));          // C1
    CHECK(corner(32, 68) == Approx(73).epsilon(0.005));          // C1
    CHECK(corner(47000, 68) == Approx(0.05).epsilon(0.005));     // C1
    CHECK(corner(10000, 0.40) == Approx(40).epsilon(0.01));      // C3
    CHECK(corner(10000, 0.47) == Approx(33.86).epsilon(0.001));  // C3, the next standard part
    CHECK(corner(20000, 0.40) == Approx(20).epsilon(0.01));      // C4
    CHECK(corner(10000, 2) == Approx(7.95).epsilon(0.005));      // C5
    CHECK(corner(4, 1000) == Approx(39.79).epsilon(0.001));      // C6
    CHECK(corner(4, 2200) == Approx(18.09).epsilon(0.001));      // C6
    CHECK(corner(8, 1000) == Approx(19.89).epsilon(0.001));      // C6
}

TEST_CASE("a first-order corner costs 3.01 dB, an octave above 0.97 dB, an octave below 6.99 dB") {
    CHECK(first_order_loss(hertz(40), hertz(40)).in(decibels) == Approx(3.010).margin(1e-3));
    CHECK(first_order_loss(hertz(80), hertz(40)).in(decibels) == Approx(0.969).margin(1e-3));
    CHECK(first_order_loss(hertz(20), hertz(40)).in(decibels) == Approx(6.990).margin(1e-3));
}

TEST_CASE("a transformer's corner follows from source, load, turns and primary inductance") {
    const auto corner = [](double source, double load, double turns, double henry) {
        return transformer_corner(ohms(source), ohms(load), henries(henry), ratio(turns)).in(hertz);
    };
    CHECK(corner(4, 10000, 1, 0.050) == Approx(12.727).margin(1e-3));  // T5
    CHECK(corner(50, 10000, 0.5, 2) == Approx(3.974).margin(1e-3));    // T5
    CHECK(corner(100, 600, 1, 0.5) == Approx(27.284).margin(1e-3));    // T5
}
