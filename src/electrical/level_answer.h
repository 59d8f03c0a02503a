// What does one chain tap -> converter -> amplifier come to, and which of its stages clips first? The numbers a tap is
// held against (converter.h), the chain behind it (level_chain.h), and the tap volts at which each stage runs out,
// taken at the converter's smallest gain: the least of them clips first.
#pragma once

#include <optional>

#include "electrical/level_chain.h"
#include "electrical/named.h"

namespace tapbook {

// In the order the signal meets them.
enum class ClipPlace { converter_input, converter_output, amplifier_input };

template <>
struct NamedValues<ClipPlace> {
    static constexpr Named<ClipPlace> all[] = {{ClipPlace::converter_input, "converter_input"},
                                               {ClipPlace::converter_output, "converter_output"},
                                               {ClipPlace::amplifier_input, "amplifier_input"}};
};

struct FirstClip {
    ClipPlace place;
    RmsVolts tap;  // across the pair, from which on it clips
};

// The stage that clips at the least tap volts; the earlier one when two are equal. Only limits that are known count;
// absent when none is. The amplifier's input cannot clip where the converter's largest output does not exceed it. The
// limit of a `direct` part is the amplifier's input. REQUIRES gains above zero.
std::optional<FirstClip> first_clip(const LevelRequest& request, const ConverterSpec& converter,
                                    const AmplifierSpec* amplifier);

struct LevelAnswer {
    LevelRequest request;
    Topology topology;
    std::optional<RmsVolts> limit_at_lowest;
    std::optional<Gain> headroom;
    std::optional<Gain> drive_margin;
    std::optional<Gain> corner_loss;
    LevelChain chain;
    std::optional<Watts> rated;  // of the amplifier at its load
    std::optional<FirstClip> first_clip;
    std::optional<bool> clips;  // the tap's high volts lie above the first clip; 0 dB fits
};

// Everything above for one chain. Without an amplifier the chain ends at the converter's open output.
LevelAnswer calculate_level(const LevelRequest& request, const ConverterSpec& converter,
                            const AmplifierSpec* amplifier);

}  // namespace tapbook
