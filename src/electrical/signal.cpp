// One tap's signal: sorts the readings, chooses the best source, and puts the ends together.
#include "electrical/signal.h"

#include <algorithm>

#include "electrical/rating.h"
#include "electrical/signal_ends.h"

namespace tapbook {

static_assert(table_is_sound<SignalSource>());
static_assert(table_is_sound<Why>());

namespace {

VoltageRange range_of(const Ends& ends) {
    return {ends.low.volts, ends.likely.volts, ends.high.volts};
}

Reasons reasons_of(const Ends& ends) {
    return {ends.low.reason, ends.likely.reason, ends.high.reason};
}

// The complete readings that hold at `lowest`; the others are only counted.
std::vector<ToneReading> usable_readings(std::span<const ToneReading> readings, Hertz lowest, const Supply& supply,
                                         TapSignal& signal) {
    std::vector<ToneReading> usable;
    for (const ToneReading& reading : readings) {
        if (!missing_conditions(reading, supply).empty()) {
            ++signal.readings_incomplete;
        } else if (!holds_at(reading, lowest)) {
            ++signal.readings_out_of_band;
        } else {
            ++signal.readings_used;
            usable.push_back(reading);
        }
    }
    return usable;
}

SignalSource source_without_reading(const OutputStage& output, const Ends& clean, const Supply& supply) {
    if (!clean.likely.volts) return SignalSource::none;
    if (is_line(output.drive)) return SignalSource::line_rating;
    return rated_volts(output, supply) ? SignalSource::rated : SignalSource::supply_limited;
}

DcVolts size_of(DcVolts volts) {
    return std::max(volts, -volts);
}

}  // namespace

TapSignal predict_signal(const OutputStage& output, std::span<const ToneReading> readings, Hertz lowest,
                         const Supply& supply, std::optional<DcVolts> measured_dc_difference) {
    TapSignal signal;
    const auto usable = usable_readings(readings, lowest, supply, signal);
    const bool measured = !usable.empty() && output.drive != Drive::digital;
    const Ends clean = measured ? clean_from_readings(output, usable, supply) : clean_without_reading(output, supply);
    const Ends clipped = clipped_ends(output, clean, supply);

    signal.source = measured ? SignalSource::measured : source_without_reading(output, clean, supply);
    signal.clean = range_of(clean);
    signal.clean_because = reasons_of(clean);
    signal.clipped = range_of(clipped);
    signal.clipped_because = reasons_of(clipped);
    signal.dc_each = bias_range(output, supply);
    signal.common_mode_high = signal.dc_each.high;
    signal.dc_difference_high =
        measured_dc_difference ? size_of(*measured_dc_difference) : largest_offset(output, supply);
    signal.minus_is_driven = minus_is_driven(output);
    return signal;
}

}  // namespace tapbook
