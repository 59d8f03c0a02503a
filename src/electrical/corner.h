// Where does the bass end? First-order low corners of coupling capacitors and transformers, and the loss below them.
// Sources: f = 1/(2 pi R C), component data sheets; f = (rg || n^2-reflected load)/(2 pi Lp), transformer handbooks.
#pragma once

#include "electrical/units.h"

namespace tapbook {

// Corner (-3 dB) of a capacitor feeding `load`. REQUIRES both above zero.
Hertz coupling_corner(Ohms load, Farads capacitance);

// Corner of a transformer: `source` on the primary, `load` on the secondary, `turns` = secondary / primary,
// `primary` its primary inductance. f = rg RL / (2 pi Lp (n^2 rg + RL)). REQUIRES all above zero.
Hertz transformer_corner(Ohms source, Ohms load, Henries primary, Ratio turns);

// Loss at `note` of a first-order corner, as a positive number of dB: 10 log10(1 + (corner/note)^2).
// 3.01 dB at the corner itself. REQUIRES note above zero.
Gain first_order_loss(Hertz note, Hertz corner);

}  // namespace tapbook
