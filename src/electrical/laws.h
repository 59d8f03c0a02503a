// Which law turns one quantity into another? Ohm's law, the power law and the decibel, each spelled once.
// Sources: textbook; 0 dBV = 1 V RMS (audio handbooks). REQUIRES everywhere: powers, volts and loads are not negative,
// and what is divided by or taken the logarithm of is above zero.
#pragma once

#include "electrical/units.h"

namespace tapbook {

// RMS volts that put `power` into `load`: sqrt(P x R).
RmsVolts sine_volts(Watts power, Ohms load);

// Power of `volts` (of any waveform, being RMS) in `load`: V^2 / R.
Watts power_in(RmsVolts volts, Ohms load);

// Power of `current` (RMS or d.c.) in `load`: I^2 x R.
Watts power_in(Amps current, Ohms load);

// Current through `load`: V / R, as RMS amps.
Amps current_through(RmsVolts volts, Ohms load);

// RMS of a sine of this peak: peak / sqrt 2.
RmsVolts rms_of_sine(PeakVolts peak);

// RMS of a square wave of this peak, i.e. of a fully saturated output: equal to the peak.
RmsVolts rms_of_square(PeakVolts peak);

// Peak of a sine of this RMS: RMS x sqrt 2.
PeakVolts peak_of_sine(RmsVolts volts);

// 20 log10(to / from): positive when `to` is the larger.
Gain gain_between(RmsVolts from, RmsVolts to);

// 20 log10 of a voltage ratio, and back.
Gain gain_of(Ratio volts_per_volt);
Ratio ratio_of(Gain gain);

// `volts` raised by `gain`.
RmsVolts raised(RmsVolts volts, Gain gain);

// `power` raised by `gain`: x 10^(gain / 10).
Watts raised(Watts power, Gain gain);

// dB above 1 V RMS, and back.
Level level_dbv(RmsVolts volts);
RmsVolts volts_at(Level level);

// What a tone recorded at `level` would have read at digital full scale: x 10^(-level / 20).
RmsVolts at_full_scale(RmsVolts volts, FullScaleLevel level);

// What is left of an open-circuit voltage behind `source` when `load` is connected: V x load / (source + load).
RmsVolts loaded(RmsVolts open, Ohms source, Ohms load);

}  // namespace tapbook
