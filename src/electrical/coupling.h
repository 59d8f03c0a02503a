// Which capacitor goes with which load? The corner f = 1/(2 pi R C) read the other way, and the next capacitor one can
// buy: series E6 of IEC 60063 (1.0, 1.5, 2.2, 3.3, 4.7, 6.8 and their decades).
#pragma once

#include "electrical/units.h"

namespace tapbook {

// Capacitance that puts the -3 dB corner of `load` at `corner`: 1/(2 pi R f). REQUIRES both above zero.
Farads coupling_capacitor(Ohms load, Hertz corner);

// The smallest value of series E6 that is not smaller: its corner lies at or below the one asked for. REQUIRES
// capacitance above zero.
Farads next_standard_capacitor(Farads capacitance);

}  // namespace tapbook
