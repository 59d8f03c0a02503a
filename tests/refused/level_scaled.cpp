// refused: a level multiplied by a number (twice a place means nothing)
#include "electrical/laws.h"

using namespace tapbook;

void snippet() {
    [[maybe_unused]] Gain fair = decibels(6) * 2;
    [[maybe_unused]] auto wrong = dbv(6) * 2;  // refused
}
