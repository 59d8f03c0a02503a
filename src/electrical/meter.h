// What does a meter at the car say about two conductors? Integer millivolts in; eight rules in fixed order; the first
// that applies gives the verdict. Then the advice that follows from it.
#pragma once

#include <cstdint>
#include <optional>
#include <string_view>
#include <vector>

#include "electrical/named.h"

namespace tapbook {

struct MeterReadings {
    std::int64_t dc_positive_mv = 0;  // each conductor to chassis
    std::int64_t dc_negative_mv = 0;
    std::int64_t ac_mv = 0;  // across the pair
    std::optional<std::int64_t> supply_mv;
    std::optional<std::int64_t> ac_positive_mv;  // each conductor to chassis; one alone counts as none
    std::optional<std::int64_t> ac_negative_mv;
    std::optional<bool> full_volume;  // was the volume confirmed at its full step?
};

enum class ReadsAs { bridged, ground_centred, line_level, supply, fault, unsettled };

template <>
struct NamedValues<ReadsAs> {
    static constexpr Named<ReadsAs> all[] = {
        {ReadsAs::bridged, "bridged"},       {ReadsAs::ground_centred, "ground_centred"},
        {ReadsAs::line_level, "line_level"}, {ReadsAs::supply, "supply"},
        {ReadsAs::fault, "fault"},           {ReadsAs::unsettled, "unsettled"}};
};

enum class MeterSentence {
    read_supply_first,
    one_is_supply,
    large_difference,
    small_difference,
    both_half_supply,
    pair_is_sum,
    no_tone_pair_not_proven,
    different_channels,
    sum_does_not_match,
    no_tone_or_grounds,
    speaker_around_ground,
    line_level_low,
    could_be_turned_down,
    line_level_differential,
    treat_as_bridged,
    balance_and_fader,
    no_polarity,
    cell_test_limits,
    scope_ground,
    meter_limits,
};

// The text of each sentence; words_of<MeterSentence>() is the one table of them.
template <>
struct NamedValues<MeterSentence> {
    static const Named<MeterSentence> all[20];
};

struct MeterVerdict {
    ReadsAs reads_as;
    bool stop;                             // true: do not connect anything
    int rule;                              // 1 to 8, the rule that decided
    std::vector<MeterSentence> sentences;  // the finding first, then the advice

    // The sentences as text, in order.
    std::vector<std::string_view> says() const;
};

// The verdict on one set of readings. Negative d.c. is judged by its size; a.c. is expected as zero or more.
MeterVerdict judge(const MeterReadings& readings);

}  // namespace tapbook
