// What happens to the level when several taps are added? Equal levels: coherent signals add as volts, unrelated ones as
// power; an averaging adder divides by the number of taps. Coherent decides overload, unrelated decides reach.
#pragma once

#include "electrical/named.h"
#include "electrical/units.h"

namespace tapbook {

enum class Adding { none, unity, averaging };

template <>
struct NamedValues<Adding> {
    static constexpr Named<Adding> all[] = {
        {Adding::none, "none"}, {Adding::unity, "unity"}, {Adding::averaging, "averaging"}};
};

// Gain behind the adding point over one tap, for `taps` equal signals in step. Two taps: unity +6.02 dB, averaging 0
// dB, none 0 dB. REQUIRES taps >= 1.
Gain coherent_gain(Adding adding, int taps = 2);

// The same for unrelated signals of equal level. Two taps: unity +3.01 dB, averaging -3.01 dB, none 0 dB.
Gain unrelated_gain(Adding adding, int taps = 2);

// What a delay between two equal taps costs at `note`, as a positive number of dB: -20 log10|cos(pi f dt)|.
// Grows without bound towards the null at f dt = 1/2.
Gain delay_loss(Hertz note, Seconds delay);

}  // namespace tapbook
