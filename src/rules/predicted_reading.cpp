// The ranges come from the tap's signal; conductors of a driven pair carry half of its volts each, a quiet minus none.
#include "rules/predicted_reading.h"

#include <fmt/format.h>

#include <cmath>

namespace tapbook {
namespace {

template <class Quantity, class Unit>
std::optional<std::int64_t> scaled_by(const std::optional<Quantity>& volts, Unit unit, double factor) {
    return volts ? std::optional(std::llround(volts->in(unit)*factor)) : std::nullopt;
}

MillivoltRange millivolts_of(const VoltageRange& range, double factor) {
    return {scaled_by(range.low, rms_millivolts, factor), scaled_by(range.likely, rms_millivolts, factor),
            scaled_by(range.high, rms_millivolts, factor)};
}

MillivoltRange millivolts_of(const DcRange& range) {
    return {scaled_by(range.low, dc_millivolts, 1), scaled_by(range.likely, dc_millivolts, 1),
            scaled_by(range.high, dc_millivolts, 1)};
}

std::string clean_words(const TapSignal& signal) {
    switch (signal.source) {
        case SignalSource::measured:
            return "from complete readings of this tap";
        case SignalSource::rated:
            return "from the rating";
        case SignalSource::supply_limited:
            return "from what the supply allows";
        case SignalSource::line_rating:
            return "from the rated line level";
        case SignalSource::none:
            break;
    }
    return "nothing is known to predict it from";
}

// One predicted value is not hit exactly: a conductor at ground lies within 0.3 V of it, one at half a rail within 15 %
// (the bounds of the meter's own rules).
MillivoltRange conductor_dc(const TapSignal& signal) {
    MillivoltRange range = millivolts_of(signal.dc_each);
    constexpr std::int64_t around_zero_mv = 300;
    if (!range.low || range.low != range.high) return range;
    const std::int64_t value = *range.low;
    const std::int64_t margin = value == 0 ? around_zero_mv : std::llround(static_cast<double>(value) * 0.15);
    return {value - margin, value, value + margin};
}

}  // namespace

std::vector<PredictedReading> predicted_readings(const TapSignal& signal, const EffectiveOutput& output, Hertz tone,
                                                 FullScaleLevel level) {
    const Supply supply;
    const double factor = std::pow(10.0, level.in(dbfs) / 20);
    const bool is_quiet = !signal.minus_is_driven && !minus_is_driven(output.stage);
    const MillivoltRange dc = conductor_dc(signal);
    const MillivoltRange pair = millivolts_of(signal.clean, factor);
    const MillivoltRange half = millivolts_of(signal.clean, factor / 2);
    const auto whole = [](DcVolts volts) { return std::optional(std::llround(volts.in(dc_millivolts))); };
    std::vector<PredictedReading> list;
    list.push_back({"supply_v",
                    "supply_mv",
                    "the battery, at the same time as the others",
                    {whole(supply.low), whole(supply.likely), whole(supply.high)},
                    "engine off to cold regulator"});
    list.push_back({"dc_positive_v", "dc_positive_mv", "d.c. of the positive conductor to chassis, radio on, no tone",
                    dc, fmt::format("drive {}", word_of(output.stage.drive))});
    list.push_back({"dc_negative_v", "dc_negative_mv", "d.c. of the negative conductor to chassis", dc,
                    "both alike within 0.15 V, else stop"});
    list.push_back(
        {"ac_v", "ac_mv",
         fmt::format("a.c. across the pair: tone {:g} Hz at {:g} dB, highest clean volume step, controls flat, "
                     "speaker connected",
                     tone.in(hertz), level.in(dbfs)),
         pair, clean_words(signal)});
    if (is_quiet) {
        list.push_back({"ac_positive_v", "ac_positive_mv", "a.c. of the positive conductor to chassis", pair, ""});
        list.push_back({"ac_negative_v",
                        "ac_negative_mv",
                        "a.c. of the negative conductor to chassis",
                        {0, 0, 300},
                        "the minus rests at chassis"});
    } else if (pair.likely) {
        list.push_back({"ac_positive_v", "ac_positive_mv", "a.c. of the positive conductor to chassis", half,
                        "half of the pair's volts each, when bridged"});
        list.push_back({"ac_negative_v", "ac_negative_mv", "a.c. of the negative conductor to chassis", half,
                        "the pair is the sum of both"});
    }
    return list;
}

Against held_against(const MillivoltRange& range, std::int64_t millivolts) {
    if (!range.low && !range.high) return Against::not_predicted;
    if (range.low && millivolts < *range.low) return Against::below;
    if (range.high && millivolts > *range.high) return Against::above;
    return Against::inside;
}

std::string_view meaning_of(std::string_view field, Against against) {
    if (against != Against::above && against != Against::below) return {};
    const bool is_above = against == Against::above;
    if (field == "supply_v")
        return is_above ? "the charging is not in order, or it is no 12 V supply: find out before going on"
                        : "the battery is weak: charge it, the other readings are too low with it";
    if (field == "dc_positive_v" || field == "dc_negative_v")
        return is_above ? "more than the expected drive rests at: a boosted output, or no speaker conductor"
                        : "less than the expected drive rests at: another drive, or the radio is off or asleep";
    if (field == "ac_v")
        return is_above ? "a boosted output, a clipped tone, or a meter that is not true-RMS; choose "
                          "the converter by this reading, not by the prediction"
                        : "volume below its full step, tone or fader not flat, a tone below 0 dB, "
                          "bass taken away at high volume, or another pair";
    return is_above ? "more than its share of the pair: a quiet minus on the other conductor, or another drive"
                    : "less than its share of the pair: the conductors may belong to two channels";
}

}  // namespace tapbook
