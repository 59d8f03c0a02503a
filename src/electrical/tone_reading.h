// Is a meter reading of a test tone complete enough to be a limit? Complete: frequency, level, supply, full volume
// step, speaker connected, controls flat. Anything less is shown and never a limit.
#pragma once

#include <optional>
#include <span>
#include <vector>

#include "electrical/named.h"
#include "electrical/output_stage.h"
#include "electrical/supply.h"
#include "electrical/units.h"

namespace tapbook {

struct ToneReading {
    RmsVolts volts;  // across the pair, as read
    std::optional<Hertz> frequency;
    std::optional<FullScaleLevel> level;  // of the recorded tone
    std::optional<DcVolts> supply;        // read at the same time
    std::optional<bool> full_volume;
    std::optional<bool> speaker_connected;
    std::optional<bool> controls_flat;
    std::optional<bool> true_rms;  // not stated counts as not true-RMS
    std::optional<bool> music;     // music instead of a tone

    friend bool operator==(const ToneReading&, const ToneReading&) = default;
};

enum class MissingCondition { volts, frequency, level, supply, full_volume, speaker_connected, controls_flat, tone };

template <>
struct NamedValues<MissingCondition> {
    static constexpr Named<MissingCondition> all[] = {
        {MissingCondition::volts, "no volts read"},
        {MissingCondition::frequency, "frequency not stated"},
        {MissingCondition::level, "level of the tone not stated"},
        {MissingCondition::supply, "supply not read"},
        {MissingCondition::full_volume, "not at the full volume step"},
        {MissingCondition::speaker_connected, "speaker not connected"},
        {MissingCondition::controls_flat, "tone controls not flat"},
        {MissingCondition::tone, "music instead of a tone"},
    };
};

// What keeps the reading from being complete, in order of the enumeration; empty when it is complete. A level above 0
// dBFS and a supply too small to overcome the losses count as not stated.
std::vector<MissingCondition> missing_conditions(const ToneReading& reading, const Supply& supply = {});

// Is `note` within one octave of the frequency of the reading (limits included)? False without a frequency.
bool holds_at(const ToneReading& reading, Hertz note);

// The three ends one complete reading stands for, taken to full scale.
struct WidenedReading {
    RmsVolts low;      // less the meter's tolerance
    RmsVolts reading;  // at full scale
    RmsVolts high;     // more by the tolerance and by a fuller supply, capped by the peak limit, never below `reading`
    Ratio tolerance;
    Ratio supply_factor;  // 1 when the supply plays no part
    bool capped;
};

// REQUIRES missing_conditions(reading) is empty. Supply factor: bridged and unknown (14.4 - 2 x 0.4)/(read - 2 x 0.4),
// single-ended the same with half the supply less 0.4, at least 1; line and boosted drives 1. The cap is the
// peak limit at the high end; unknown drives, line drives and boosted ones without a rail have none.
WidenedReading widen(const ToneReading& reading, const OutputStage& output, const Supply& supply = {});

}  // namespace tapbook
