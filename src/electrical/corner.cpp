// First-order low corners, by the formulas named in the header.
#include "electrical/corner.h"

#include <cmath>
#include <numbers>

namespace tapbook {

Hertz coupling_corner(Ohms load, Farads capacitance) {
    return hertz(1 / (2 * std::numbers::pi * load.in(ohms)*capacitance.in(farads)));
}

Hertz transformer_corner(Ohms source, Ohms load, Henries primary, Ratio turns) {
    const double squared = turns.in(ratio)*turns.in(ratio);
    const double parallel = source.in(ohms)*load.in(ohms) / (squared * source.in(ohms) + load.in(ohms));
    return hertz(parallel / (2 * std::numbers::pi * primary.in(henries)));
}

Gain first_order_loss(Hertz note, Hertz corner) {
    const double below = (corner / note).in(ratio);
    return decibels(10 * std::log10(1 + below * below));
}

}  // namespace tapbook
