// How long does a capacitor across the supply last? Values computed outside this project from t = C dV/I and
// t = C (V1^2 - V2^2)/2P (GNU units gives the same), a problem statement on a large capacitor's resistance (17 mohm at
// 100 and 300 A), and a slow twin that lets the charge out step by step.
#include <catch2/catch.hpp>

#include <cmath>

#include "arbitrary.h"

using namespace tapbook;

namespace {

double milliseconds_held(double capacitance, Draw draw, double from, double to, double milliohm = 0) {
    return hold_up(farads(capacitance), milliohms(milliohm), draw, dc_volts(from), dc_volts(to)).time.in(milliseconds);
}

// Seconds until the terminals reach `to`, in `steps` equal steps of charge.
double step_by_step(double capacitance, double ohm, double power, double from, double to) {
    double inside = from, time = 0;
    const double step = (from - to) / 400000;
    for (;;) {
        const double root = inside * inside - 4 * power * ohm;
        if (root < 0) return time;
        const double terminals = (inside + std::sqrt(root)) / 2;
        if (terminals <= to) return time;
        time += capacitance * step / (power / terminals);
        inside -= step;
    }
}

}  // namespace

TEST_CASE("one farad carries 100 A for 18 ms and 1000 W for 24 ms") {
    CHECK(milliseconds_held(1, amps(50), 14.4, 12.6) == Approx(36.0).epsilon(1e-3));
    CHECK(milliseconds_held(1, amps(70), 14.4, 12.6) == Approx(25.7).epsilon(2e-3));
    CHECK(milliseconds_held(1, amps(100), 14.4, 12.6) == Approx(18.0).epsilon(1e-3));
    CHECK(milliseconds_held(1, amps(100), 14.4, 13.8) == Approx(6.0).epsilon(1e-3));
    CHECK(milliseconds_held(1, watts(500), 14.4, 12.6) == Approx(48.6).epsilon(1e-3));
    CHECK(milliseconds_held(1, watts(1000), 14.4, 12.6) == Approx(24.3).epsilon(1e-3));
}

TEST_CASE("17 mohm take 1.70 V at 100 A and 5.10 V at 300 A at once") {
    const auto step = [](double current) {
        return hold_up(farads(1), milliohms(17), amps(current), dc_volts(14.4), dc_volts(12.6)).step->in(dc_volts);
    };
    CHECK(step(100) == Approx(1.70));
    CHECK(step(300) == Approx(5.10));
    CHECK(milliseconds_held(1, amps(100), 14.4, 12.6, 17) == Approx(1.0));  // 0.1 V are left: 1 F x 0.1 V / 100 A
    CHECK(milliseconds_held(1, amps(300), 14.4, 12.6, 17) == 0);
    CHECK_FALSE(hold_up(farads(1), milliohms(17), amps(900), dc_volts(14.4), dc_volts(12.6)).step.has_value());
    CHECK_FALSE(hold_up(farads(1), milliohms(50), watts(1500), dc_volts(14.4), dc_volts(12)).step.has_value());
}

// A 10 A deficit over 60 s with 1.8 V of fall: 10 x 60 / 1.8 = 333.3 F.
TEST_CASE("what a long deficit would need is hundreds of farads") {
    const HoldUp held = hold_up(farads(1), ohms(0), amps(10), dc_volts(14.4), dc_volts(12.6), seconds(60));
    CHECK(held.needed.in(farads) == Approx(333.33).epsilon(1e-4));
    CHECK(held.note == seconds(60));
}

TEST_CASE("twice the capacitance holds twice as long, and what is needed holds exactly the note") {
    const bool holds = rc::check("hold-up is linear in capacitance", [] {
        const Farads capacitance = arbitrary::between(microfarads, 1000, 100000000);
        const Draw draw = *rc::gen::arbitrary<bool>() ? Draw(arbitrary::between(milliamps, 1000, 500000))
                                                      : Draw(arbitrary::between(milliwatts, 10000, 5000000));
        const DcVolts to = arbitrary::between(dc_millivolts, 9000, 13000);
        const DcVolts from = to + arbitrary::between(dc_millivolts, 1, 3000);
        const Ohms resistance = arbitrary::between(milliohms, 0, 20);
        const HoldUp once = hold_up(capacitance, resistance, draw, from, to);
        const HoldUp twice = hold_up(capacitance * 2, resistance, draw, from, to);
        RC_ASSERT(std::abs(twice.time.in(seconds)-2 * once.time.in(seconds)) <= 1e-12 + 1e-9 * twice.time.in(seconds));
        const HoldUp ideal = hold_up(once.needed, ohms(0), draw, from, to);
        RC_ASSERT(std::abs(ideal.time.in(seconds)-1) < 1e-9);
        RC_ASSERT(once.time <= hold_up(capacitance, ohms(0), draw, from, to).time);
    });
    CHECK(holds);
}

TEST_CASE("letting the charge out step by step takes as long as the closed form, with resistance") {
    struct Case {
        double capacitance, ohm, power, from, to;
    };
    const Case cases[] = {{1, 0.002, 1000, 14.4, 12.6}, {2, 0.005, 800, 14.4, 11}, {5, 0.010, 2000, 14.4, 12.0},
                          {1, 0.030, 1500, 14.4, 6},    {0.5, 0, 500, 13.8, 12.6}, {1, 0.05, 1500, 14.4, 12}};
    for (const auto& c : cases) {
        CAPTURE(c.ohm, c.power);
        const double closed = milliseconds_held(c.capacitance, watts(c.power), c.from, c.to, c.ohm * 1000) / 1000;
        CHECK(closed == Approx(step_by_step(c.capacitance, c.ohm, c.power, c.from, c.to)).margin(2e-5));
    }
}
