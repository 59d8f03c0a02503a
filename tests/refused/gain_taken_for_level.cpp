// refused: a gain used where a level is meant (a distance is no place)
#include "electrical/laws.h"

using namespace tapbook;

void snippet() {
    [[maybe_unused]] RmsVolts fair = volts_at(dbv(6));
    [[maybe_unused]] RmsVolts wrong = volts_at(decibels(6));  // refused
}
