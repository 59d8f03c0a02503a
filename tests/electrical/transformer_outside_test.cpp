// The level a winding takes against frequency. T1: E = 4.44 f N B A (textbooks; the constant is sqrt 2 x pi
// = 4.442883). T2: N = 500, A = 0.5 cm^2, B = 0.8 T, computed outside this project. T3: a transformer note quoting a
// textbook: "saturates at 15 V at 6 Hz ... will saturate at 150 V at 60 Hz". Traps: a constant limit, or one falling
// with the root of frequency.
#include <catch2/catch.hpp>
#include <numbers>

#include "electrical/electrical.h"

using namespace tapbook;

namespace {

ConverterSpec winding(double volts, double note) {
    ConverterSpec converter;
    converter.topology = Topology::transformer;
    converter.input_max = rms_volts(volts);
    converter.input_max_at = hertz(note);
    return converter;
}

double limit(const ConverterSpec& converter, double note) {
    return limit_at(converter, hertz(note))->in(rms_volts);
}

}  // namespace

TEST_CASE("a winding rated at one note takes in proportion less below it") {
    const ConverterSpec at_100 = winding(8.8858, 100);
    CHECK(limit(at_100, 20) == Approx(1.7772).margin(1e-4));  // T2
    CHECK(limit(at_100, 40) == Approx(3.5543).margin(1e-4));
    CHECK(limit(at_100, 50) == Approx(4.4429).margin(1e-4));
    CHECK(limit(at_100, 80) == Approx(7.1086).margin(1e-4));
}

TEST_CASE("a winding that saturates at 150 V at 60 Hz saturates at 15 V at 6 Hz") {
    CHECK(limit(winding(150, 60), 6) == Approx(15));  // T3
}

TEST_CASE("the limit is the one of the EMF equation with the winding's own flux") {
    // sqrt 2 x pi x f x N x B x A of T2.
    const auto emf = [](double note) { return std::numbers::sqrt2 * std::numbers::pi * note * 500 * 0.8 * 0.5e-4; };
    CHECK(std::numbers::sqrt2 * std::numbers::pi == Approx(4.442883).epsilon(1e-6));  // T1
    const ConverterSpec converter = winding(emf(100), 100);
    for (const double note : {20.0, 31.5, 63.0, 100.0}) CHECK(limit(converter, note) == Approx(emf(note)));
}

TEST_CASE("above its rated note a winding is not promised more than its rating") {
    CHECK(limit(winding(8, 50), 100) == Approx(8));
    CHECK(limit(winding(8, 50), 1000) == Approx(8));
}
