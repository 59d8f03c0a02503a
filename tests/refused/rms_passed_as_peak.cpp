// refused: RMS volts passed where a peak is taken (the root of two would be taken twice)
#include "electrical/laws.h"

using namespace tapbook;

void snippet() {
    [[maybe_unused]] RmsVolts fair = rms_of_sine(peak_volts(12.9));
    [[maybe_unused]] RmsVolts wrong = rms_of_sine(rms_volts(9.1));  // refused
}
