// Levels behind an adding point, by addition of volts (coherent) or of power (unrelated).
#include "electrical/adding.h"

#include <cmath>
#include <numbers>

#include "electrical/laws.h"

namespace tapbook {

static_assert(table_is_sound<Adding>());

Gain coherent_gain(Adding adding, int taps) {
    switch (adding) {
        case Adding::unity:
            return gain_of(ratio(taps));
        case Adding::none:
        case Adding::averaging:
            break;
    }
    return decibels(0);
}

Gain unrelated_gain(Adding adding, int taps) {
    switch (adding) {
        case Adding::unity:
            return gain_of(ratio(std::sqrt(taps)));
        case Adding::averaging:
            return -gain_of(ratio(std::sqrt(taps)));
        case Adding::none:
            break;
    }
    return decibels(0);
}

Gain delay_loss(Hertz note, Seconds delay) {
    const double turns = note.in(hertz)*delay.in(seconds);
    return -gain_of(ratio(std::abs(std::cos(std::numbers::pi * turns))));
}

}  // namespace tapbook
