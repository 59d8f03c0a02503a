// Does the signal reach rated power, and can it overload the input? The chain tap -> converter -> amplifier: reach at
// the likely input and largest gain, overload at the high input and smallest gain (without corner or divider). Also the
// volts to set the gain to. Ratios are V/V; 0 dB headroom fits.
#pragma once

#include <optional>
#include <stdexcept>

#include "electrical/amplifier.h"
#include "electrical/converter.h"
#include "electrical/signal.h"

namespace tapbook {

struct LevelChain {
    std::optional<RmsVolts> output_open;     // converter's output, nothing connected
    std::optional<RmsVolts> output;          // into the amplifier's input
    std::optional<Gain> shortfall;           // 0 dB when rated power is reached
    std::optional<Watts> reachable;          // rated x 10^(-shortfall/10)
    std::optional<RmsVolts> overload_volts;  // most the converter sends at its smallest gain
    std::optional<RmsVolts> overload_limit;  // the amplifier's largest input, else its sensitivity at lowest gain
    std::optional<bool> overloaded;          // overload_volts above overload_limit
};

struct LevelRequest {
    VoltageRange clean;        // of the tap
    Hertz lowest;              // lowest note played
    std::optional<Ohms> load;  // of the amplifier's output; absent: its reference row
    int added_taps = 1;        // taps added inside the converter
};

// The chain through `converter` into `amplifier`. Without an amplifier only output_open and overload_volts are set.
// Anything a missing value would decide is absent. A `direct` part has no output: rated power is reached when the
// likely tap volts lie inside its range; below the minimum the shortfall is their distance; it is overloaded when the
// high tap volts exceed its maximum.
LevelChain level_chain(const LevelRequest& request, const ConverterSpec& converter, const AmplifierSpec* amplifier);

// A value that cannot be meant: a tone level above digital full scale, a power or load that is not above zero.
class RefusedValue : public std::invalid_argument {
  public:
    using std::invalid_argument::invalid_argument;
};

// What the meter shall read at the amplifier's output, speaker disconnected, playing a tone of `tone` dBFS: sqrt(P x Z)
// x 10^(tone/20) x 10^(overlap/20). An overlap above 0 dB makes tracks recorded at full scale clip, on purpose.
// Throws RefusedValue when tone is above 0 dBFS, overlap below 0 dB, or power or load not above zero.
RmsVolts gain_target(Watts power, Ohms load, FullScaleLevel tone = dbfs(0), Gain overlap = decibels(0));

// The power to set the gain for: the smaller of the amplifier's at the connected load and the speaker's continuous
// power.
Watts power_to_set(Watts amplifier, std::optional<Watts> speaker);

}  // namespace tapbook
