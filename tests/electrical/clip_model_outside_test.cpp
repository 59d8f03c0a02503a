// The power of a clipped sine at a stated distortion, found here by clipping a sine and measuring it: Fourier sum for
// the fundamental, RMS for the whole. Nothing of the program is used but the three factors being checked. Trap:
// distortion relative to the whole instead of the fundamental moves the 10 % factor by more than the tolerance.
#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <numbers>

#include "electrical/electrical.h"

using namespace tapbook;

namespace {

struct Clipped {
    double distortion;      // of the fundamental
    double power_over_top;  // relative to the undistorted sine that just touches the limit
};

// A sine of amplitude `drive` clipped at 1.
Clipped clip(double drive) {
    constexpr int points = 1 << 14;
    double square = 0, fundamental = 0;
    for (int i = 0; i < points; ++i) {
        const double sine = std::sin(2 * std::numbers::pi * (i + 0.5) / points);
        const double out = std::clamp(drive * sine, -1.0, 1.0);
        square += out * out / points;
        fundamental += 2 * out * sine / points;
    }
    const double power_of_fundamental = fundamental * fundamental / 2;
    return {std::sqrt(std::max(0.0, square / power_of_fundamental - 1)), square / 0.5};
}

double power_at(double distortion) {
    double low = 1, high = 4;
    for (int i = 0; i < 60; ++i) {
        const double middle = (low + high) / 2;
        (clip(middle).distortion < distortion ? low : high) = middle;
    }
    return clip(low).power_over_top;
}

}  // namespace

TEST_CASE("the factors for 1 %, 10 % and full saturation are those of a clipped sine") {
    const Supply supply;
    CHECK(supply.clip_power_1_percent.in(ratio) == Approx(power_at(0.01)).margin(1e-4));
    CHECK(supply.clip_power_10_percent.in(ratio) == Approx(power_at(0.10)).margin(1e-4));
    CHECK(supply.clip_power_square.in(ratio) == Approx(clip(1e6).power_over_top).margin(1e-3));
}

TEST_CASE("a 10 % rating is worth 1 / 1.229 and a saturated one 1 / 1.909 of itself") {
    CHECK(continuous_watts(watts(20), RatingKind::continuous) == watts(20));
    const double at_10 = continuous_watts(watts(100), RatingKind::at_10_percent).in(watts);
    CHECK(at_10 == Approx(100 * power_at(0.01) / power_at(0.10)).epsilon(1e-4));
    CHECK(continuous_watts(watts(100), RatingKind::maximum).in(watts) == Approx(100 / 1.909).epsilon(1e-3));
}

// pi / (2 sqrt 2): textbook form factor; the largest error of an averaging meter on a clipped signal.
TEST_CASE("an averaging meter reads a square wave 11 % high, the tolerance of meters that are not true-RMS") {
    const double high = std::numbers::pi / (2 * std::numbers::sqrt2) - 1;
    CHECK(Supply{}.other_meter_tolerance.in(ratio) == Approx(high).margin(1.1e-3));
}
