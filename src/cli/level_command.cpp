// calc level: one chain tap -> converter -> amplifier, typed instead of looked up.
#include "cli/command.h"

namespace tapbook {
namespace {

constexpr std::int64_t most_millivolts = 1'000'000;
constexpr std::int64_t most_millihertz = 1'000'000'000;
constexpr Unit<RatioTag, 1, 1'000'000> millionths;

std::optional<RmsVolts> volts(const Parsed& parsed, std::string_view option) {
    const auto typed = parsed.number(option, 3, 1, most_millivolts);
    return typed ? std::optional(rms_millivolts(*typed)) : std::nullopt;
}

std::optional<Ratio> gain(const Parsed& parsed, std::string_view option) {
    const auto typed = parsed.number(option, 6, 1, 1'000'000'000);
    return typed ? std::optional(millionths(*typed)) : std::nullopt;
}

std::optional<Ohms> resistance_of(const Parsed& parsed, std::string_view option, std::int64_t least) {
    const auto typed = parsed.number(option, 3, least, 100'000'000'000);
    return typed ? std::optional(milliohms(*typed)) : std::nullopt;
}

VoltageRange tap_volts(const Parsed& parsed) {
    const RmsVolts likely = rms_millivolts(parsed.need_number("--volts", 3, 1, most_millivolts));
    const RmsVolts low = volts(parsed, "--low").value_or(likely);
    const RmsVolts high = volts(parsed, "--high").value_or(likely);
    if (low > likely || high < likely)
        throw UsageError("--low, --volts and --high must rise", "for example --low 7 --volts 9 --high 9.6");
    return {low, likely, high};
}

ConverterSpec converter_of(const Parsed& parsed) {
    ConverterSpec converter;
    converter.topology = parsed.word<Topology>("--topology").value_or(Topology::transformer);
    converter.input_min = volts(parsed, "--input-min");
    converter.input_max = volts(parsed, "--input-max");
    if (const auto note = parsed.number("--input-max-hz", 3, 1, most_millihertz))
        converter.input_max_at = millihertz(*note);
    converter.gain_max = gain(parsed, "--gain");
    converter.gain_min = gain(parsed, "--least-gain");
    if (!converter.gain_min) converter.gain_min = converter.gain_max;
    if (!converter.gain_max) converter.gain_max = converter.gain_min;
    if (converter.gain_min > converter.gain_max)
        throw UsageError("--least-gain is above --gain", "write --gain as the largest, V/V, like --gain 0.5");
    if (const auto corner = parsed.number("--corner-hz", 3, 0, most_millihertz))
        converter.low_corner = millihertz(*corner);
    converter.output_impedance = resistance_of(parsed, "--output-ohms", 0);
    converter.output_max = volts(parsed, "--output-max");
    converter.adding = parsed.word<Adding>("--adding");
    return converter;
}

// Absent when nothing of an amplifier was typed.
std::optional<AmplifierSpec> amplifier_of(const Parsed& parsed) {
    AmplifierSpec amplifier;
    amplifier.input_impedance = resistance_of(parsed, "--amp-ohms", 1);
    amplifier.sensitivity_highest_gain = volts(parsed, "--sensitivity");
    amplifier.sensitivity_lowest_gain = volts(parsed, "--least-sensitivity");
    amplifier.input_max = volts(parsed, "--amp-max");
    const auto power = parsed.number("--watts", 3, 1, 20'000'000);
    if (power) amplifier.power_per_load = {{ohms(4), milliwatts(*power)}};
    if (amplifier.sensitivity_lowest_gain < amplifier.sensitivity_highest_gain &&
        amplifier.sensitivity_lowest_gain.has_value())
        throw UsageError("--least-sensitivity is below --sensitivity",
                         "an amplifier needs more volts at its lowest gain: --sensitivity 0.2 --least-sensitivity 4");
    const bool any = amplifier.input_impedance || amplifier.sensitivity_highest_gain ||
                     amplifier.sensitivity_lowest_gain || amplifier.input_max || power;
    return any ? std::optional(amplifier) : std::nullopt;
}

}  // namespace

Exit run_calc_level(Session& session, const Parsed& parsed) {
    const Hertz lowest = millihertz(parsed.number("--lowest-hz", 3, 1, most_millihertz).value_or(30000));
    const auto taps = static_cast<int>(parsed.number("--taps", 0, 1, 8).value_or(1));
    const LevelRequest request{tap_volts(parsed), lowest, std::nullopt, taps};
    const ConverterSpec converter = converter_of(parsed);
    if (taps > 1 && !converter.adding)
        throw UsageError("--taps needs to know how the converter adds them", "write --adding unity or averaging");
    const auto amplifier = amplifier_of(parsed);
    const LevelAnswer answer = calculate_level(request, converter, amplifier ? &*amplifier : nullptr);
    session.answer(level_text(answer, session.screen), level_json(answer));
    return answer.clips.value_or(false) ? Exit::answer_is_no : Exit::done;
}

}  // namespace tapbook
