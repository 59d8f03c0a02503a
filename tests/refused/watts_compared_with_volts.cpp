// refused: watts compared with volts (a printed power is no level)
#include "electrical/laws.h"

using namespace tapbook;

void snippet() {
    [[maybe_unused]] bool fair = watts(50) > watts(20);
    [[maybe_unused]] bool wrong = watts(50) > rms_volts(20);  // refused
}
