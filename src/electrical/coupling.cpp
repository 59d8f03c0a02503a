// The capacitor for a corner. Formula and series in the header.
#include "electrical/coupling.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace tapbook {
namespace {

constexpr int tenths_of_series[] = {10, 15, 22, 33, 47, 68, 100};

// What a value that is the printed one but for rounding may exceed it by.
constexpr double rounding = 1 + 1e-9;

}  // namespace

Farads coupling_capacitor(Ohms load, Hertz corner) {
    return farads(1 / (2 * std::numbers::pi * load.in(ohms)*corner.in(hertz)));
}

Farads next_standard_capacitor(Farads capacitance) {
    const double wanted = capacitance.in(farads);
    // Rounding may put a decade's own value just below it, hence one decade lower and up again.
    double decade = std::pow(10, std::floor(std::log10(wanted)) - 1);
    while (decade * 10 * rounding < wanted) decade *= 10;
    const auto* const step =
        std::ranges::find_if(tenths_of_series, [&](int tenths) { return decade * tenths / 10 * rounding >= wanted; });
    return farads(decade * *step / 10);
}

}  // namespace tapbook
