// What does an amplifier draw from its supply? Watts over efficiency and volts. A class without a printed efficiency
// has a range: class D 0.70 to 0.90, class AB 0.45 to 0.65 (practice, from whole amplifiers, not from output stages).
#pragma once

#include "electrical/amplifier.h"
#include "electrical/units.h"

namespace tapbook {

struct EfficiencyRange {
    Ratio low, likely, high;
};

EfficiencyRange efficiency_of(AmplifierClass amplifier_class);

// Full current: P / (efficiency x V). REQUIRES efficiency and supply above zero.
Amps supply_current(Watts output, Ratio efficiency, DcVolts supply);

}  // namespace tapbook
