// refused: volts made from a number without a unit (millivolts would pass for volts)
#include "electrical/laws.h"

using namespace tapbook;

void snippet() {
    [[maybe_unused]] RmsVolts fair = rms_volts(9.4);
    [[maybe_unused]] RmsVolts wrong = 9.4;  // refused
}
