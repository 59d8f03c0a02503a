// refused: a peak reading compared with an RMS limit (off by a factor of 1.414)
#include "electrical/laws.h"

using namespace tapbook;

void snippet() {
    [[maybe_unused]] bool fair = rms_volts(9) < rms_volts(10);
    [[maybe_unused]] bool safe = peak_volts(12) < rms_volts(10);  // refused
}
