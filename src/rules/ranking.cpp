// The two orders, key by key.
#include "rules/ranking.h"

#include <tuple>

namespace tapbook {
namespace {

// Absent values go last.
template <class T>
std::pair<bool, T> unknown_last(const std::optional<T>& value) {
    return {!value.has_value(), value.value_or(T{})};
}

// Larger headroom first.
std::pair<bool, double> headroom_key(const std::optional<Gain>& headroom) {
    return {!headroom.has_value(), headroom ? -headroom->in(decibels) : 0.0};
}

int source_rank(SignalSource source) {
    switch (source) {
        case SignalSource::measured:
            return 0;
        case SignalSource::rated:
        case SignalSource::line_rating:
            return 1;
        case SignalSource::supply_limited:
            return 2;
        case SignalSource::none:
            break;
    }
    return 3;
}

auto key_of(const JudgedCandidate& c) {
    return std::tuple(c.verdict, count_of(c.findings, Effect::care), c.topology, c.on_hand.value_or(0) <= 0,
                      unknown_last(c.cost_cents), headroom_key(c.headroom), std::string_view(c.name),
                      std::string_view(c.converter));
}

auto key_of(const TapRank& t) {
    const TapFacts& tap = *t.tap;
    return std::tuple(t.verdict == Verdict::no, t.cares, source_rank(t.source), grade_rank(tap.pair.pair.grade),
                      grade_rank(tap.pair.polarity.grade), tap.tap.plug_in_lead.empty(), unknown_last(tap.tap.minutes),
                      tap.tap.panels.size(), std::string_view(tap.code));
}

}  // namespace

int grade_rank(Grade grade) {
    switch (grade) {
        case Grade::proven:
            return 0;
        case Grade::matched:
            return 1;
        case Grade::year_split:
            return 2;
        case Grade::one_car:
            return 3;
        case Grade::paper:
            return 4;
        case Grade::blank:
            return 5;
        case Grade::pulled:
            return 6;
        case Grade::mixed:
            break;
    }
    return 7;
}

bool ranks_before(const JudgedCandidate& a, const JudgedCandidate& b) {
    return key_of(a) < key_of(b);
}

bool ranks_before(const TapRank& a, const TapRank& b) {
    return key_of(a) < key_of(b);
}

bool ranks_before(const RankedTap& a, const RankedTap& b) {
    const auto rank = [](const RankedTap& t) {
        return TapRank{&t.judged.tap, t.judged.signal.source, t.verdict, t.cares};
    };
    return ranks_before(rank(a), rank(b));
}

}  // namespace tapbook
