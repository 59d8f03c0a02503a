// By which terminal number do wiring diagrams usually call a circuit that is live like this? From the class that
// readings gave to the number of DIN 72552: where to look in a diagram, never what was found there.
#pragma once

#include "trade/terminals.h"
#include "trade/terms.h"

namespace tapbook {

// constant: 30. accessory: 75. ignition and with_crank: 15, which the numbers do not tell apart. other: nullptr.
const Terminal* usual_terminal(SwitchedClass live);

}  // namespace tapbook
