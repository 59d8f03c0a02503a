// Arbitrary quantities and output stages for the laws: rapidcheck draws whole numbers in small units, as the store
// does.
#pragma once

#include <rapidcheck.h>

#include "electrical/electrical.h"

namespace tapbook::arbitrary {

// A quantity between low and high (inclusive), in thousandths of `unit`'s base when a milli unit is given.
template <class Tag, long numerator, long denominator>
Quantity<Tag> between(Unit<Tag, numerator, denominator> unit, int low, int high) {
    return unit(*rc::gen::inRange(low, high + 1));
}

template <class Enum>
Enum any_of() {
    const auto table = words_of<Enum>();
    return table[*rc::gen::inRange<std::size_t>(0, table.size())].value;
}

template <class Value>
std::optional<Value> perhaps(Value value) {
    return *rc::gen::arbitrary<bool>() ? std::optional<Value>(value) : std::nullopt;
}

inline OutputStage output_stage() {
    OutputStage output;
    output.drive = any_of<Drive>();
    output.common_stage = any_of<Stage>();
    output.rating_kind = any_of<RatingKind>();
    output.rail = perhaps(between(dc_millivolts, 13000, 60000));
    output.split_is_bridged = perhaps(*rc::gen::arbitrary<bool>());
    output.rated = perhaps(between(milliwatts, 1000, 200000));
    output.rated_at = perhaps(between(milliohms, 1000, 16000));
    output.line_volts = perhaps(between(rms_millivolts, 100, 8000));
    return output;
}

// A complete reading at 40 Hz, as a shop would take it.
inline ToneReading complete_reading() {
    ToneReading reading{between(rms_millivolts, 50, 30000), hertz(40), {}, {}, true, true, true, {}, {}};
    reading.level = between(thousandths_dbfs, -20000, 0);
    reading.supply = between(dc_millivolts, 11000, 15500);
    reading.true_rms = perhaps(*rc::gen::arbitrary<bool>());
    return reading;
}

}  // namespace tapbook::arbitrary
