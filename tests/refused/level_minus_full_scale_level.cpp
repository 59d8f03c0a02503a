// refused: a level in dBV less a level in dBFS (their zeros are different places)
#include "electrical/laws.h"

using namespace tapbook;

void snippet() {
    [[maybe_unused]] Gain fair = dbv(6) - dbv(3);
    [[maybe_unused]] auto wrong = dbv(6) - dbfs(-3);  // refused
}
