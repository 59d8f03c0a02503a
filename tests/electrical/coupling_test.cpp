// Which capacitor for a corner? Component data sheets: 10 kohm and flat to 40 Hz is 0.40 uF, choose 0.47; 20 kohm and
// 20 Hz is 0.40 uF (Texas Instruments TPA311 SLOS207C). Series E6: IEC 60063.
#include <catch2/catch.hpp>

#include <cmath>

#include "arbitrary.h"

using namespace tapbook;

namespace {

double next_microfarads(double wanted) {
    return next_standard_capacitor(microfarads(wanted)).in(microfarads);
}

}  // namespace

TEST_CASE("the published capacitors for 40 Hz and 20 Hz") {
    CHECK(coupling_capacitor(ohms(10000), hertz(40)).in(microfarads) == Approx(0.40).epsilon(0.01));
    CHECK(coupling_capacitor(ohms(20000), hertz(20)).in(microfarads) == Approx(0.40).epsilon(0.01));
    CHECK(next_microfarads(0.40) == Approx(0.47));
}

TEST_CASE("every value of the series is its own next, in every decade") {
    for (const double decade : {1e-6, 1e-3, 1.0, 1e3, 1e6})
        for (const double step : {1.0, 1.5, 2.2, 3.3, 4.7, 6.8}) {
            CAPTURE(decade, step);
            CHECK(next_microfarads(step * decade) == Approx(step * decade).epsilon(1e-6));
        }
    CHECK(next_microfarads(6.81) == Approx(10));
    CHECK(next_microfarads(1.001) == Approx(1.5));
}

TEST_CASE("a capacitor for a corner has that corner, and the one to buy is not above it") {
    const bool holds = rc::check("corner and capacitor are inverse", [] {
        const Ohms load = arbitrary::between(milliohms, 500, 2000000000);
        const Hertz corner = arbitrary::between(millihertz, 10, 100000000);
        const Farads exact = coupling_capacitor(load, corner);
        RC_ASSERT(std::abs((coupling_corner(load, exact) / corner).in(ratio)-1) < 1e-12);
        const Farads bought = next_standard_capacitor(exact);
        RC_ASSERT(bought >= exact * (1 - 1e-8));
        RC_ASSERT(bought <= exact * 1.5001);
        RC_ASSERT(coupling_corner(load, bought) <= corner * (1 + 1e-8));
    });
    CHECK(holds);
}
