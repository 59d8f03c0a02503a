// How many volts does a tap carry? A range for each quantity with the reason for each end. Measured outranks rated,
// rated outranks what the supply allows. What cannot be known is absent.
#pragma once

#include <optional>
#include <span>

#include "electrical/named.h"
#include "electrical/output_stage.h"
#include "electrical/supply.h"
#include "electrical/tone_reading.h"
#include "electrical/units.h"

namespace tapbook {

struct VoltageRange {
    std::optional<RmsVolts> low, likely, high;
};

struct DcRange {
    std::optional<DcVolts> low, likely, high;
};

// Where the clean range comes from, best first.
enum class SignalSource { measured, rated, supply_limited, line_rating, none };

template <>
struct NamedValues<SignalSource> {
    static constexpr Named<SignalSource> all[] = {{SignalSource::measured, "measured"},
                                                  {SignalSource::rated, "rated"},
                                                  {SignalSource::supply_limited, "supply_limited"},
                                                  {SignalSource::line_rating, "line_rating"},
                                                  {SignalSource::none, "none"}};
};

// Why an end of a range is what it is. The words complete "because it is ...".
enum class Why {
    swing_limit,
    rating,
    rating_with_margin,
    line_rating,
    saturated_line,
    saturated_output,
    lossless_swing,
    lowest_reading,
    median_reading,
    highest_reading,
    highest_reading_capped,
    not_below_clean,
    drive_unknown,
    rail_unknown,
    line_level_unknown,
    no_analogue_signal,
};

template <>
struct NamedValues<Why> {
    static constexpr Named<Why> all[] = {
        {Why::swing_limit, "the largest undistorted swing"},
        {Why::rating, "the rated power"},
        {Why::rating_with_margin, "the rated power and what typical parts exceed it by"},
        {Why::line_rating, "the rated line level"},
        {Why::saturated_line, "a saturated line output"},
        {Why::saturated_output, "a saturated output with its losses"},
        {Why::lossless_swing, "a saturated output without losses"},
        {Why::lowest_reading, "the lowest complete reading less the meter's tolerance"},
        {Why::median_reading, "the median of the complete readings"},
        {Why::highest_reading, "the highest complete reading with the meter's tolerance and a full supply"},
        {Why::highest_reading_capped, "the highest complete reading, capped by the largest undistorted swing"},
        {Why::not_below_clean, "not less than the clean volts"},
        {Why::drive_unknown, "not known, because the drive is not known"},
        {Why::rail_unknown, "not known, because the rail is not known"},
        {Why::line_level_unknown, "not known, because the line level is not known"},
        {Why::no_analogue_signal, "not there, because no analogue signal exists here"},
    };
};

// One end's reason with the numbers it rests on; numbers that play no part are absent.
struct Reason {
    Why why = Why::drive_unknown;
    std::optional<DcVolts> supply;  // vehicle supply, or the rail of a boosted stage
    std::optional<DcVolts> loss;    // per conducting side
    std::optional<Watts> rated;     // as printed
    std::optional<Ohms> rated_at;
    std::optional<RmsVolts> reading;  // at full scale
    std::optional<Ratio> tolerance;
    std::optional<Ratio> supply_factor;
    bool judged_as_bridged = false;  // the drive is not known
};

struct Reasons {
    Reason low, likely, high;
};

struct TapSignal {
    VoltageRange clean;                         // largest undistorted RMS volts across the pair
    VoltageRange clipped;                       // RMS of the saturated output: to be survived, not to be used
    DcRange dc_each;                            // bias on each conductor to chassis
    std::optional<DcVolts> common_mode_high;    // the highest of them
    std::optional<DcVolts> dc_difference_high;  // between the two conductors
    bool minus_is_driven = true;
    SignalSource source = SignalSource::none;
    Reasons clean_because;
    Reasons clipped_because;
    int readings_used = 0;         // complete, and within an octave of the lowest note
    int readings_out_of_band = 0;  // complete, but more than an octave away
    int readings_incomplete = 0;
};

// The signal of a tap on `output` down to the note `lowest`. `measured_dc_difference` (of the pair, either sign)
// overrides the predicted offset. Decisions where the specification of a case leaves room:
// - unknown drive: low and likely as bridged, high absent; with a complete reading, high from it, uncapped;
// - boosted_split, bridged or not unknown: low and likely as not bridged, high as bridged;
// - boosted without a rail: clean from the rating alone, clipped absent; without both: absent;
// - line: all three clean ends the rated level, clipped x sqrt 2; measured: less and more by the tolerance only;
// - digital: nothing, whatever was read;
// - a clipped end is never below the clean end beside it;
// - d.c.: bridged 0.3 / 0.5 / 0.55 of the low / likely / high supply; line_differential 0 to a quarter of the high
// supply,
//   likely absent; boosted_bridged half the rail; unknown from 0, likely as bridged, high absent; others 0;
// - d.c. difference: 0.150 V for every drive without a capacitor, 0 after one.
TapSignal predict_signal(const OutputStage& output, std::span<const ToneReading> readings, Hertz lowest,
                         const Supply& supply = {}, std::optional<DcVolts> measured_dc_difference = std::nullopt);

}  // namespace tapbook
