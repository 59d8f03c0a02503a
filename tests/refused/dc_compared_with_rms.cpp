// refused: d.c. compared with the RMS of a signal (a supply is no tone)
#include "electrical/laws.h"

using namespace tapbook;

void snippet() {
    [[maybe_unused]] bool fair = dc_volts(12) < dc_volts(14.4);
    [[maybe_unused]] bool safe = dc_volts(12) < rms_volts(10);  // refused
}
