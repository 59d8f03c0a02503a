// refused: volts compared with a number without a unit
#include "electrical/laws.h"

using namespace tapbook;

void snippet() {
    [[maybe_unused]] bool fair = rms_volts(9.4) > rms_volts(8);
    [[maybe_unused]] bool wrong = rms_volts(9.4) > 8.0;  // refused
}
