// Volts for a power in a load, against a grid computed outside this project (calculator, sqrt(P x R), to 1e-3 V).
// Traps: sqrt(2 P R) (peak for RMS) and P x R without the root miss every row but those of 0 W.
#include <catch2/catch.hpp>

#include "electrical/electrical.h"

using namespace tapbook;

namespace {

struct Row {
    int power;
    double at_1, at_2, at_3_2, at_4, at_6, at_8;
};

constexpr Row grid[] = {
    {1, 1.0000, 1.4142, 1.7889, 2.0000, 2.4495, 2.8284},
    {5, 2.2361, 3.1623, 4.0000, 4.4721, 5.4772, 6.3246},
    {15, 3.8730, 5.4772, 6.9282, 7.7460, 9.4868, 10.9545},
    {18, 4.2426, 6.0000, 7.5895, 8.4853, 10.3923, 12.0000},
    {20, 4.4721, 6.3246, 8.0000, 8.9443, 10.9545, 12.6491},
    {25, 5.0000, 7.0711, 8.9443, 10.0000, 12.2474, 14.1421},
    {35, 5.9161, 8.3666, 10.5830, 11.8322, 14.4914, 16.7332},
    {50, 7.0711, 10.0000, 12.6491, 14.1421, 17.3205, 20.0000},
    {75, 8.6603, 12.2474, 15.4919, 17.3205, 21.2132, 24.4949},
    {100, 10.0000, 14.1421, 17.8885, 20.0000, 24.4949, 28.2843},
    {150, 12.2474, 17.3205, 21.9089, 24.4949, 30.0000, 34.6410},
    {300, 17.3205, 24.4949, 30.9839, 34.6410, 42.4264, 48.9898},
    {500, 22.3607, 31.6228, 40.0000, 44.7214, 54.7723, 63.2456},
    {800, 28.2843, 40.0000, 50.5964, 56.5685, 69.2820, 80.0000},
    {1000, 31.6228, 44.7214, 56.5685, 63.2456, 77.4597, 89.4427},
};

void check(int power, Ohms load, double expected) {
    CAPTURE(power, load.in(ohms));
    CHECK(sine_volts(watts(power), load).in(rms_volts) == Approx(expected).margin(1e-3));
    CHECK(gain_target(watts(power), load).in(rms_volts) == Approx(expected).margin(1e-3));
}

}  // namespace

TEST_CASE("the gain target without tone level is the grid of volts by power and load") {
    for (const Row& row : grid) {
        check(row.power, ohms(1), row.at_1);
        check(row.power, ohms(2), row.at_2);
        check(row.power, ohms(3.2), row.at_3_2);
        check(row.power, ohms(4), row.at_4);
        check(row.power, ohms(6), row.at_6);
        check(row.power, ohms(8), row.at_8);
    }
}

// 2.83 V is the published reference of loudspeaker sensitivity.
TEST_CASE("2.83 V is one watt in 8 ohm, two in 4 ohm and four in 2 ohm") {
    CHECK(sine_volts(watts(1), ohms(8)).in(rms_volts) == Approx(2.828427).margin(1e-4));
    CHECK(power_in(rms_volts(2.828427), ohms(4)).in(watts) == Approx(2).margin(1e-4));
    CHECK(power_in(rms_volts(2.828427), ohms(2)).in(watts) == Approx(4).margin(1e-4));
}
