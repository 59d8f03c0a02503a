// refused: two levels added (two places do not add, only a place and a distance do)
#include "electrical/laws.h"

using namespace tapbook;

void snippet() {
    [[maybe_unused]] Level fair = dbv(6) + decibels(6);
    [[maybe_unused]] auto wrong = dbv(6) + dbv(6);  // refused
}
