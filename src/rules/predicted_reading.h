// What should the meter show at a tap, and what does it mean when it shows something else? One list feeds the plan
// (what to read, in order) and the explanation of what was read.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "rules/effective_output.h"

namespace tapbook {

// Millivolts; an end that cannot be known is absent.
struct MillivoltRange {
    std::optional<std::int64_t> low, likely, high;
};

struct PredictedReading {
    std::string_view field;   // as people write it: "ac_v"
    std::string_view stored;  // "ac_mv"
    std::string what;         // what to hold the meter to
    MillivoltRange range;
    std::string why;  // what the range rests on; "" when that is plain
};

// In the order in which they are taken: supply, d.c. of both conductors, a.c. across the pair at the highest clean
// volume step, a.c. of each conductor. `level`: of the test tone.
std::vector<PredictedReading> predicted_readings(const TapSignal& signal, const EffectiveOutput& output, Hertz tone,
                                                 FullScaleLevel level);

enum class Against { inside, below, above, other_volume, not_predicted };
template <>
struct NamedValues<Against> {
    static constexpr Named<Against> all[] = {{Against::inside, "inside"},
                                             {Against::below, "below"},
                                             {Against::above, "above"},
                                             {Against::other_volume, "not at full volume"},
                                             {Against::not_predicted, "not predicted"}};
};
static_assert(table_is_sound<Against>());

// Both ends belong to the range; an absent end excludes nothing.
Against held_against(const MillivoltRange& range, std::int64_t millivolts);

// What a reading outside its range usually means and what to do, in one sentence; "" inside it. Common practice.
std::string_view meaning_of(std::string_view field, Against against);

}  // namespace tapbook
