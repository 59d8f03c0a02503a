// What does a line-output converter take, stand and give? Its data as printed, and the four numbers a tap is held
// against: limit at the lowest note, headroom, drive margin, output. Saturation: E = sqrt 2 x pi x f x N x B x A, so a
// winding's limit falls in proportion to frequency; no other topology has one.
#pragma once

#include <optional>

#include "electrical/adding.h"
#include "electrical/named.h"
#include "electrical/output_stage.h"
#include "electrical/supply.h"
#include "electrical/units.h"

namespace tapbook {

// In order of simplicity. `direct` is the amplifier's own speaker-level input judged like a converter; no part is
// recorded as `direct`.
enum class Topology { direct, transformer, resistive, active_line_level, active_speaker_level };

template <>
struct NamedValues<Topology> {
    static constexpr Named<Topology> all[] = {{Topology::direct, "direct"},
                                              {Topology::transformer, "transformer"},
                                              {Topology::resistive, "resistive"},
                                              {Topology::active_line_level, "active_line_level"},
                                              {Topology::active_speaker_level, "active_speaker_level"}};
};

// What the input refers its signal to.
enum class Reference { floating, differential, chassis, unknown };

template <>
struct NamedValues<Reference> {
    static constexpr Named<Reference> all[] = {{Reference::floating, "floating"},
                                               {Reference::differential, "differential"},
                                               {Reference::chassis, "chassis"},
                                               {Reference::unknown, "unknown"}};
};

// Are the minus inputs of the channels separate or one?
enum class Negatives { separate, joined, unknown };

template <>
struct NamedValues<Negatives> {
    static constexpr Named<Negatives> all[] = {
        {Negatives::separate, "separate"}, {Negatives::joined, "joined"}, {Negatives::unknown, "unknown"}};
};

// What the shield of the output lead is tied to.
enum class OutputShield { isolated, input_conductor, chassis };

template <>
struct NamedValues<OutputShield> {
    static constexpr Named<OutputShield> all[] = {{OutputShield::isolated, "isolated"},
                                                  {OutputShield::input_conductor, "input_conductor"},
                                                  {OutputShield::chassis, "chassis"}};
};

// How the part makes a turn-on signal of its own.
enum class ConverterTurnOn { none, half_supply, signal };

template <>
struct NamedValues<ConverterTurnOn> {
    static constexpr Named<ConverterTurnOn> all[] = {{ConverterTurnOn::none, "none"},
                                                     {ConverterTurnOn::half_supply, "half_supply"},
                                                     {ConverterTurnOn::signal, "signal"}};
};

struct ConverterSpec {
    Topology topology = Topology::transformer;
    std::optional<int> channels;
    std::optional<Adding> adding;
    std::optional<RmsVolts> input_min;
    std::optional<RmsVolts> input_max;
    std::optional<Hertz> input_max_at;  // the note at which the maximum holds (transformer)
    std::optional<RmsVolts> survives;   // what it stands without harm
    std::optional<Ohms> input_impedance;
    Reference reference = Reference::unknown;
    Negatives negatives = Negatives::unknown;
    std::optional<DcVolts> common_mode_max;
    std::optional<DcVolts> dc_difference_max;  // a winding saturates on difference, not on common mode
    std::optional<Ratio> gain_min;
    std::optional<Ratio> gain_max;
    std::optional<RmsVolts> output_max;
    std::optional<Ohms> output_impedance;
    std::optional<OutputShield> output_shield;
    std::optional<Hertz> low_corner;
    std::optional<bool> isolates_grounds;
    std::optional<bool> needs_power;
    std::optional<Amps> power_current;
    std::optional<Amps> standby_current;
    std::optional<DcVolts> least_supply;
    std::optional<ConverterTurnOn> turn_on;
    std::optional<DcVolts> half_supply_threshold;
    std::optional<RmsVolts> signal_threshold;
    std::optional<Seconds> turn_on_hold;
    std::optional<Amps> turn_on_current;  // what its turn-on output gives
    std::optional<Watts> watt_rating;     // when that is all that is printed
    std::optional<Ohms> watt_rating_at;
    std::optional<RatingKind> watt_rating_kind;
};

struct WattRatingLimit {
    RmsVolts volts;
    bool load_assumed;  // 4 ohm, because none is printed
    bool kind_assumed;  // continuous, because none is printed
};

// The input maximum a bare watt rating stands for: sqrt(continuous watts x stated load). Absent without a watt rating.
std::optional<WattRatingLimit> input_max_from_watt_rating(const ConverterSpec& converter, const Supply& supply = {});

// The input maximum as printed, else from the watt rating, else absent.
std::optional<RmsVolts> input_max(const ConverterSpec& converter, const Supply& supply = {});

// Largest clean input at `note`. Transformer: maximum x min(1, note / rated note), absent when the rated note is not
// stated. Other topologies: the maximum. Absent without a maximum. REQUIRES note above zero.
std::optional<RmsVolts> limit_at(const ConverterSpec& converter, Hertz note, const Supply& supply = {});

// Does it stand `volts`? True up to the larger of what it survives and its clean maximum; false above, when `survives`
// is known; absent when it is not known and `volts` lie above the maximum.
std::optional<bool> withstands(const ConverterSpec& converter, RmsVolts volts, const Supply& supply = {});

// Loss at `note` from the low corner, a positive number of dB; absent when the corner is not stated.
std::optional<Gain> corner_loss(const ConverterSpec& converter, Hertz note);

// 20 log10(limit at lowest / clean high). 0 dB fits. Absent when either is absent or the tap has no volts.
std::optional<Gain> headroom(const ConverterSpec& converter, Hertz lowest, std::optional<RmsVolts> clean_high,
                             const Supply& supply = {});

// 20 log10(clean low / input minimum). Absent when either is absent or zero.
std::optional<Gain> drive_margin(const ConverterSpec& converter, std::optional<RmsVolts> clean_low);

// Open-circuit output for `input` at the largest gain: min(input x gain x corner, largest output). Absent without input
// or gain. A corner that is not stated costs nothing here (its own rule says so); a largest output not stated does not
// cap.
std::optional<RmsVolts> output_open(const ConverterSpec& converter, Hertz note, std::optional<RmsVolts> input);

// `open` behind the divider of output impedance and amplifier input impedance; absent when any of the three is.
std::optional<RmsVolts> output_into(const ConverterSpec& converter, std::optional<RmsVolts> open,
                                    std::optional<Ohms> amplifier_input);

// Does an input of `input` ohms load a line output of `source` ohms by 0.5 dB or more (input below 16.9 x source)?
// Absent when either is not known.
std::optional<bool> loads_line_output(std::optional<Ohms> input, std::optional<Ohms> source);

}  // namespace tapbook
