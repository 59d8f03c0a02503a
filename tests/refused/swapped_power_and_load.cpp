// refused: arguments of sine_volts swapped (the product would hide it)
#include "electrical/laws.h"

using namespace tapbook;

void snippet() {
    [[maybe_unused]] RmsVolts fair = sine_volts(watts(22), ohms(4));
    [[maybe_unused]] RmsVolts wrong = sine_volts(ohms(4), watts(22));  // refused
}
