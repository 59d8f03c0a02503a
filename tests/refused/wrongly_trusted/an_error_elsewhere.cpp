// refused: nothing on the marked line; the error that follows from it is on another one, so the check must report it
#include "electrical/laws.h"

using namespace tapbook;

#define KIND peak_volts  // refused
#ifndef KIND
#define KIND rms_volts
#endif

void snippet() {
    [[maybe_unused]] bool wrong = KIND(9) < rms_volts(10);
}
