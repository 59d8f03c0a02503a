// refused: leaving the type in a unit of another kind
#include "electrical/laws.h"

using namespace tapbook;

void snippet() {
    [[maybe_unused]] double fair = rms_volts(9.4).in(rms_millivolts);
    [[maybe_unused]] double wrong = rms_volts(9.4).in(peak_volts);  // refused
}
