// What does an amplifier's output see, and may it? Ohms of voice coils in series and parallel are in the text of the
// load (load_text of the trade); here the sum is held against the least load, bridged or not, and against the printed
// rows.
#pragma once

#include <optional>

#include "electrical/amplifier.h"

namespace tapbook {

struct OutputLoad {
    Ohms load;
    bool bridged = false;
    std::optional<Ohms> least;    // of the amplifier, bridged when it is; absent: not printed
    std::optional<bool> allowed;  // load at or above the least; absent without it
    std::optional<Watts> rated;   // exactly the printed row; absent when that load is not printed, or bridged
};

// REQUIRES load above zero.
OutputLoad output_load(const AmplifierSpec& amplifier, Ohms load, bool bridged);

// A resistor in the place of a removed speaker that the radio watches.
struct LoadResistor {
    Ohms resistance;  // the largest that passes for a speaker: the speaker's own
    Watts power;      // it must stand
};

// `speaker`: nominal ohms of the removed one. Power by load_resistor_power() of return_path.h.
// REQUIRES speaker above zero.
LoadResistor load_resistor(RmsVolts clean_high, Ohms speaker);

}  // namespace tapbook
