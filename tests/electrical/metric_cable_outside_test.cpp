// Metric vehicle cable against DIN ISO 6722 part 3 (largest d.c. resistance at 20 C, mohm/m), as reproduced in a public
// vehicle-electrics wiki; 0.35 to 0.75 mm^2 from memory. Trap: rho over the nominal area is 5 to 11 % too optimistic.
#include <catch2/catch.hpp>

#include "electrical/electrical.h"

using namespace tapbook;

namespace {

struct Row {
    double size, most, ideal;
};

constexpr Row printed[] = {
    {0.35, 54.4, 49.26}, {0.5, 37.1, 34.48},  {0.75, 24.7, 22.99}, {1, 18.5, 17.24},     {1.5, 12.7, 11.49},
    {4, 4.71, 4.310},    {6, 3.14, 2.874},    {10, 1.82, 1.724},   {16, 1.16, 1.078},    {25, 0.743, 0.6897},
    {50, 0.368, 0.3448}, {70, 0.259, 0.2463}, {95, 0.196, 0.1815}, {120, 0.153, 0.1437},
};

double milliohm(double size) {
    return resistance(square_millimetres(size)).per_metre.in(milliohms_per_metre);
}

}  // namespace

TEST_CASE("a printed size has exactly its printed resistance and is not marked computed") {
    for (const Row& row : printed) {
        CAPTURE(row.size);
        CHECK(milliohm(row.size) == Approx(row.most).epsilon(1e-12));
        CHECK_FALSE(resistance(square_millimetres(row.size)).computed);
    }
}

TEST_CASE("vehicle cable is 5 to 11 % more resistive than its nominal area of ideal copper") {
    for (const Row& row : printed) {
        CAPTURE(row.size);
        CHECK(milliohm(row.size) / row.ideal > 1.05);
        CHECK(milliohm(row.size) / row.ideal < 1.11);
    }
}

// 17.241 / A x 1.08: computed by hand for sizes the table lacks.
TEST_CASE("sizes that are not printed are computed and say so") {
    CHECK(milliohm(2.5) == Approx(7.448).margin(1e-3));
    CHECK(milliohm(35) == Approx(0.5320).margin(1e-4));
    CHECK(milliohm(21) == Approx(0.8867).margin(1e-4));
    CHECK(resistance(square_millimetres(2.5)).computed);
    CHECK(resistance(square_millimetres(35)).computed);
}

// Published for power cable (IEC 60228 class 1/2 and 5/6): a computed size must not be better than the lower of them.
TEST_CASE("computed sizes agree with power cable of the same area within 10 %") {
    CHECK(milliohm(2.5) == Approx(7.41).epsilon(0.10));
    CHECK(milliohm(35) == Approx(0.524).epsilon(0.10));
}
