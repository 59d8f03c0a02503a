// refused: a yes or no turned into volts
#include "electrical/laws.h"

using namespace tapbook;

void snippet() {
    [[maybe_unused]] RmsVolts fair = rms_volts(1);
    [[maybe_unused]] RmsVolts wrong = rms_volts(true);  // refused
}
