// refused: the resistance of a length added to that of a metre (the length is missing)
#include "electrical/conductor.h"

using namespace tapbook;

void snippet() {
    [[maybe_unused]] Ohms fair = ohms(1) + length_resistance(ohms_per_metre(0.001), metres(5));
    [[maybe_unused]] auto wrong = ohms(1) + ohms_per_metre(0.001);  // refused
}
