// refused: nothing is marked, so the check must report it
#include "electrical/laws.h"

void snippet() {
    [[maybe_unused]] bool wrong = tapbook::peak_volts(9) < tapbook::rms_volts(10);
}
