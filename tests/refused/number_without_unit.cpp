// refused: leaving the type without naming the unit
#include "electrical/laws.h"

using namespace tapbook;

void snippet() {
    [[maybe_unused]] double fair = rms_volts(9.4).in(rms_volts);
    [[maybe_unused]] double wrong = rms_volts(9.4);  // refused
}
