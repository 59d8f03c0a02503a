// refused: nothing here; this file compiles, so the check must report it
#include "electrical/laws.h"

using namespace tapbook;

void snippet() {
    [[maybe_unused]] bool fair = rms_volts(9) < rms_volts(10);  // refused
}
