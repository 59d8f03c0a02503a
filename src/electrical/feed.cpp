// The feed judged. Rules in the header.
#include "electrical/feed.h"

#include <algorithm>

namespace tapbook {

static_assert(table_is_sound<FeedGrade>());

namespace {

// Ohms of the cable, out and, where it comes back through its equal, back.
Ohms ohms_of(const FeedCable& cable, const Feed& feed) {
    const Ohms out = length_resistance(cable_resistance(cable.size, feed.conditions.metal, feed.temperature).per_metre,
                                       cable.length);
    return std::holds_alternative<EqualCableReturn>(feed.back) ? out * 2.0 : out;
}

std::optional<FeedState> state_with(const Feed& feed, Ohms back) {
    FeedNetwork network{feed.supply, feed.source + ohms_of(feed.main, feed) + back, {}};
    for (const FedAmplifier& one : feed.amplifiers)
        network.limbs.push_back({one.branch ? ohms_of(*one.branch, feed) : ohms(0), one.draw});
    return settle(network);
}

std::optional<FedAt> fed_at(const std::optional<FeedState>& state, const Feed& feed, std::size_t index) {
    if (!state) return std::nullopt;
    const AtLimb& limb = state->limbs[index];
    const DcVolts battery = feed.supply - dc_volts(state->total.in(amps)*feed.source.in(ohms));
    return FedAt{limb.volts, limb.current, (battery - limb.volts) / feed.supply};
}

// As if nothing were lost.
Amps unhindered(const Draw& draw, DcVolts supply) {
    if (const Amps* current = std::get_if<Amps>(&draw)) return *current;
    return amps(std::get<Watts>(draw).in(watts) / supply.in(dc_volts));
}

Amps likely_current(const FedResult& result, const FedAmplifier& amplifier, DcVolts supply) {
    return result.at.likely ? result.at.likely->current : unhindered(amplifier.draw, supply);
}

JudgedFuse judged_fuse(const CableSize& size, Amps current, std::optional<Amps> most, const Feed& feed) {
    const auto allowed = cable_ampacity(size, feed.conditions);
    if (!allowed) return {std::nullopt, false};
    const CableFuse fuse = fuse_for(*allowed, current, feed.conditions);
    return {fuse, may_blow(fuse, most)};
}

bool exists(const JudgedFuse& judged) {
    return judged.fuse && judged.fuse->verdict == FuseVerdict::fits;
}

FedResult judged_amplifier(const Feed& feed, std::size_t index, const FedRange& range) {
    const FedAmplifier& amplifier = feed.amplifiers[index];
    FedResult result{range, range.likely ? grade_of(range.likely->drop) : FeedGrade::too_thin, std::nullopt};
    if (amplifier.branch && cross_section(amplifier.branch->size) < cross_section(feed.main.size))
        result.branch = judged_fuse(amplifier.branch->size, likely_current(result, amplifier, feed.supply),
                                    amplifier.most_current, feed);
    return result;
}

// All amplifiers at their most, counting the likely current of those whose most is not known; absent when none is.
std::optional<Amps> most_of_all(const Feed& feed, const std::vector<FedResult>& results) {
    Amps sum = amps(0);
    bool known = false;
    for (std::size_t i = 0; i < results.size(); ++i) {
        const auto& most = feed.amplifiers[i].most_current;
        known = known || most;
        sum = sum + most.value_or(likely_current(results[i], feed.amplifiers[i], feed.supply));
    }
    return known ? std::optional(sum) : std::nullopt;
}

std::optional<Ohms> limit_of_one(const Feed& feed) {
    const Watts* power = std::get_if<Watts>(&feed.amplifiers.front().draw);
    if (feed.amplifiers.size() != 1 || power == nullptr) return std::nullopt;
    return most_resistance(feed.supply, *power);
}

BodyReturn range_of(const FeedReturn& back) {
    if (const BodyReturn* body = std::get_if<BodyReturn>(&back)) return *body;
    return {ohms(0), ohms(0), ohms(0)};  // its ohms lie in the cables
}

}  // namespace

FeedGrade grade_of(Ratio drop) {
    if (drop <= most_good_drop) return FeedGrade::good;
    return drop <= most_care_drop ? FeedGrade::care : FeedGrade::too_thin;
}

FeedAnswer judge_feed(const Feed& feed) {
    const BodyReturn back = range_of(feed.back);
    const auto low = state_with(feed, back.low), likely = state_with(feed, back.likely),
               high = state_with(feed, back.high);
    FeedAnswer answer{{}, FeedGrade::good, {}, amps(0), limit_of_one(feed), true};
    for (std::size_t i = 0; i < feed.amplifiers.size(); ++i) {
        const FedRange range{fed_at(low, feed, i), fed_at(likely, feed, i), fed_at(high, feed, i)};
        const FedResult& result = answer.amplifiers.emplace_back(judged_amplifier(feed, i, range));
        answer.grade = std::max(answer.grade, result.grade);
        answer.total = answer.total + likely_current(result, feed.amplifiers[i], feed.supply);
        answer.fused = answer.fused && (!result.branch || exists(*result.branch));
    }
    answer.main_fuse = judged_fuse(feed.main.size, answer.total, most_of_all(feed, answer.amplifiers), feed);
    answer.fused = answer.fused && exists(answer.main_fuse);
    return answer;
}

bool is_good(const FeedAnswer& answer) {
    return answer.grade == FeedGrade::good && answer.fused;
}

std::optional<Ratio> worst_drop(const FeedAnswer& answer) {
    Ratio worst = ratio(0);
    for (const FedResult& one : answer.amplifiers) {
        if (!one.at.likely) return std::nullopt;
        worst = std::max(worst, one.at.likely->drop);
    }
    return worst;
}

std::optional<CableSize> thinnest_good(Feed feed, std::span<const CableSize> sizes) {
    std::vector<CableSize> rising(sizes.begin(), sizes.end());
    std::ranges::stable_sort(rising, {}, cross_section);
    for (const CableSize& size : rising) {
        feed.main.size = size;
        if (is_good(judge_feed(feed))) return size;
    }
    return std::nullopt;
}

std::optional<NextSize> next_size(Feed feed, std::span<const CableSize> sizes) {
    const SquareMillimetres present = cross_section(feed.main.size);
    const CableSize* next = nullptr;
    for (const CableSize& size : sizes) {
        if (cross_section(size) <= present) continue;
        if (next == nullptr || cross_section(size) < cross_section(*next)) next = &size;
    }
    if (next == nullptr) return std::nullopt;
    const auto before = worst_drop(judge_feed(feed));
    feed.main.size = *next;
    const FeedAnswer answer = judge_feed(feed);
    const auto after = worst_drop(answer);
    return NextSize{*next, answer.grade, after, before && after ? std::optional(*before - *after) : std::nullopt};
}

}  // namespace tapbook
