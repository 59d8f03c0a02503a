// A converter against a tap: limit, headroom, drive margin, output. Formulas and sources in the header.
#include "electrical/converter.h"

#include <algorithm>

#include "electrical/corner.h"
#include "electrical/laws.h"
#include "electrical/rating.h"

namespace tapbook {

static_assert(table_is_sound<Topology>());
static_assert(table_is_sound<Reference>());
static_assert(table_is_sound<Negatives>());
static_assert(table_is_sound<OutputShield>());
static_assert(table_is_sound<ConverterTurnOn>());

namespace {

// A load of 16.9 times the source costs 0.5 dB: 20 log10(1 + 1/16.9) = 0.499.
constexpr Ratio least_bridging = ratio(16.9);

std::optional<Gain> gain_if_audible(std::optional<RmsVolts> from, std::optional<RmsVolts> to) {
    const RmsVolts nothing = rms_volts(0);
    if (!from || !to || *from <= nothing || *to <= nothing) return std::nullopt;
    return gain_between(*from, *to);
}

}  // namespace

std::optional<WattRatingLimit> input_max_from_watt_rating(const ConverterSpec& converter, const Supply& supply) {
    if (!converter.watt_rating) return std::nullopt;
    const RatingKind kind = converter.watt_rating_kind.value_or(RatingKind::continuous);
    const Ohms load = converter.watt_rating_at.value_or(ohms(4));
    return WattRatingLimit{sine_volts(continuous_watts(*converter.watt_rating, kind, supply), load),
                           !converter.watt_rating_at.has_value(), !converter.watt_rating_kind.has_value()};
}

std::optional<RmsVolts> input_max(const ConverterSpec& converter, const Supply& supply) {
    if (converter.input_max) return converter.input_max;
    const auto from_watts = input_max_from_watt_rating(converter, supply);
    if (!from_watts) return std::nullopt;
    return from_watts->volts;
}

std::optional<RmsVolts> limit_at(const ConverterSpec& converter, Hertz note, const Supply& supply) {
    const auto most = input_max(converter, supply);
    if (!most || converter.topology != Topology::transformer) return most;
    if (!converter.input_max_at) return std::nullopt;
    return *most * std::min(ratio(1), note / *converter.input_max_at);
}

std::optional<bool> withstands(const ConverterSpec& converter, RmsVolts volts, const Supply& supply) {
    const auto most = input_max(converter, supply);
    if ((most && volts <= *most) || (converter.survives && volts <= *converter.survives)) return true;
    if (converter.survives) return false;
    return std::nullopt;
}

std::optional<Gain> corner_loss(const ConverterSpec& converter, Hertz note) {
    if (!converter.low_corner) return std::nullopt;
    return first_order_loss(note, *converter.low_corner);
}

std::optional<Gain> headroom(const ConverterSpec& converter, Hertz lowest, std::optional<RmsVolts> clean_high,
                             const Supply& supply) {
    return gain_if_audible(clean_high, limit_at(converter, lowest, supply));
}

std::optional<Gain> drive_margin(const ConverterSpec& converter, std::optional<RmsVolts> clean_low) {
    return gain_if_audible(converter.input_min, clean_low);
}

std::optional<RmsVolts> output_open(const ConverterSpec& converter, Hertz note, std::optional<RmsVolts> input) {
    if (!input || !converter.gain_max) return std::nullopt;
    const Gain loss = corner_loss(converter, note).value_or(decibels(0));
    const RmsVolts sent = raised(*input * *converter.gain_max, -loss);
    return converter.output_max ? std::min(sent, *converter.output_max) : sent;
}

std::optional<RmsVolts> output_into(const ConverterSpec& converter, std::optional<RmsVolts> open,
                                    std::optional<Ohms> amplifier_input) {
    if (!open || !converter.output_impedance || !amplifier_input) return std::nullopt;
    return loaded(*open, *converter.output_impedance, *amplifier_input);
}

std::optional<bool> loads_line_output(std::optional<Ohms> input, std::optional<Ohms> source) {
    if (!input || !source) return std::nullopt;
    return *input < *source * least_bridging;
}

}  // namespace tapbook
