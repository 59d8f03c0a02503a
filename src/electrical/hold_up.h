// How long does a capacitor across the supply carry a load, and how long would it have to? At constant current
// t = C dV / I; at constant power t = C/P ((Va^2 - Vb^2)/2 - P R ln(Va/Vb)) with R the capacitor's own resistance and
// Va, Vb the volts at its terminals, which without R is C (V1^2 - V2^2) / 2P. Textbook; the charging system counts as
// absent.
#pragma once

#include <optional>
#include <variant>

#include "electrical/units.h"

namespace tapbook {

// How long a bass note is held, to compare with. Practice.
inline constexpr Seconds bass_note = seconds(1);

struct HoldUp {
    Seconds time;                 // until the terminals reach `to`; 0 when they fall below it at once
    std::optional<DcVolts> step;  // what the resistance takes from the volts at once; absent when it takes all of them
    Farads needed;                // capacitance without resistance that would last the note
    Seconds note;
};

// What is drawn: constant amps, or constant electrical watts (more amps as the volts fall).
using Draw = std::variant<Amps, Watts>;

// `capacitance` with `resistance`, charged to `from`, until its terminals reach `to`. REQUIRES capacitance, draw and
// note above zero, resistance not negative, from above to, to above zero.
HoldUp hold_up(Farads capacitance, Ohms resistance, Draw draw, DcVolts from, DcVolts to, Seconds note = bass_note);

}  // namespace tapbook
