// The eight rules for two conductors at the car, in their fixed order, in integer millivolts.
#include "electrical/meter.h"

#include <algorithm>
#include <cstdlib>

namespace tapbook {

static_assert(table_is_sound<ReadsAs>());

namespace {

using Millivolts = std::int64_t;

constexpr Millivolts no_tone = 20;
constexpr Millivolts speaker_level = 4000;
constexpr Millivolts doubtful_level = 3000;
constexpr Millivolts grounded = 300;
constexpr Millivolts out_of_reach = 1'000'000'000;  // no meter reads more; keeps every product in range

Millivolts bounded(Millivolts reading) {
    return std::clamp(reading, -out_of_reach, out_of_reach);
}

std::optional<Millivolts> bounded(std::optional<Millivolts> reading) {
    if (!reading) return std::nullopt;
    return bounded(*reading);
}

MeterReadings bounded(MeterReadings r) {
    r.dc_positive_mv = bounded(r.dc_positive_mv);
    r.dc_negative_mv = bounded(r.dc_negative_mv);
    r.ac_mv = bounded(r.ac_mv);
    r.supply_mv = bounded(r.supply_mv);
    r.ac_positive_mv = bounded(r.ac_positive_mv);
    r.ac_negative_mv = bounded(r.ac_negative_mv);
    return r;
}

bool is_supply_beside_none(Millivolts one, Millivolts other, Millivolts supply) {
    return std::abs(one - supply) <= 1000 && std::abs(other) < 1000;
}

bool near_half(Millivolts dc, Millivolts supply) {
    return std::abs(2 * dc - supply) * 100 <= 15 * supply;
}

// Rule 5, both conductors near half the supply.
MeterVerdict judge_bridged(const MeterReadings& r) {
    using enum MeterSentence;
    MeterVerdict verdict{ReadsAs::bridged, false, 5, {both_half_supply}};
    const bool both_read = r.ac_positive_mv && r.ac_negative_mv;
    const bool tone_to_chassis = both_read && std::max(*r.ac_positive_mv, *r.ac_negative_mv) > no_tone;
    if (r.ac_mv <= no_tone && !tone_to_chassis) {
        verdict.sentences.push_back(no_tone_pair_not_proven);
        return verdict;
    }
    if (!both_read) return verdict;
    const Millivolts sum = *r.ac_positive_mv + *r.ac_negative_mv;
    if (std::abs(r.ac_mv - sum) * 100 <= 20 * sum) {
        verdict.sentences.push_back(pair_is_sum);
        return verdict;
    }
    if (r.ac_mv * 4 < sum) return {ReadsAs::fault, true, 5, {different_channels}};
    return {ReadsAs::unsettled, true, 5, {sum_does_not_match}};
}

// Rule 6, both conductors at ground.
MeterVerdict judge_grounded(const MeterReadings& r) {
    using enum MeterSentence;
    if (r.ac_mv <= no_tone) return {ReadsAs::unsettled, false, 6, {no_tone_or_grounds}};
    if (r.ac_mv >= speaker_level) return {ReadsAs::ground_centred, false, 6, {speaker_around_ground}};
    MeterVerdict verdict{ReadsAs::line_level, false, 6, {line_level_low}};
    if (r.ac_mv >= doubtful_level || r.full_volume != true) verdict.sentences.push_back(could_be_turned_down);
    return verdict;
}

MeterVerdict finding(const MeterReadings& r) {
    using enum MeterSentence;
    if (!r.supply_mv || *r.supply_mv < 9000 || *r.supply_mv > 16000) {
        return {ReadsAs::unsettled, false, 1, {read_supply_first}};
    }
    const Millivolts supply = *r.supply_mv;
    const Millivolts one = r.dc_positive_mv, other = r.dc_negative_mv;
    if (is_supply_beside_none(one, other, supply) || is_supply_beside_none(other, one, supply)) {
        return {ReadsAs::supply, true, 2, {one_is_supply}};
    }
    const Millivolts difference = std::abs(one - other);
    if (difference >= 2000) return {ReadsAs::fault, true, 3, {large_difference}};
    if (difference >= 150) return {ReadsAs::unsettled, true, 4, {small_difference}};
    if (near_half(one, supply) && near_half(other, supply)) return judge_bridged(r);
    const Millivolts higher = std::max(std::abs(one), std::abs(other));
    if (higher <= grounded) return judge_grounded(r);
    if (std::max(one, other) > grounded && 4 * higher < supply && r.ac_mv < speaker_level) {
        return {ReadsAs::line_level, false, 7, {line_level_differential}};
    }
    return {ReadsAs::unsettled, true, 8, {treat_as_bridged}};
}

// What to do next, given the finding.
void add_advice(MeterVerdict& verdict, bool tone) {
    using enum MeterSentence;
    switch (verdict.reads_as) {
        case ReadsAs::bridged:
        case ReadsAs::ground_centred:
        case ReadsAs::line_level:
            if (tone) verdict.sentences.push_back(balance_and_fader);
            verdict.sentences.insert(verdict.sentences.end(), {no_polarity, cell_test_limits, scope_ground});
            if (tone) verdict.sentences.push_back(meter_limits);
            break;
        case ReadsAs::fault:
            verdict.sentences.push_back(scope_ground);
            break;
        case ReadsAs::unsettled:
            if (verdict.stop) verdict.sentences.push_back(scope_ground);
            break;
        case ReadsAs::supply:
            break;
    }
}

}  // namespace

MeterVerdict judge(const MeterReadings& readings) {
    const MeterReadings r = bounded(readings);
    MeterVerdict verdict = finding(r);
    add_advice(verdict, r.ac_mv > no_tone);
    return verdict;
}

std::vector<std::string_view> MeterVerdict::says() const {
    std::vector<std::string_view> lines;
    for (const MeterSentence sentence : sentences) lines.push_back(word_of(sentence));
    return lines;
}

}  // namespace tapbook
