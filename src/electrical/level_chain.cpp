// The chain tap -> converter -> amplifier, and the volts to set a gain to. Formulas in the header.
#include "electrical/level_chain.h"

#include <algorithm>

#include "electrical/adding.h"
#include "electrical/laws.h"

namespace tapbook {

namespace {

std::optional<RmsVolts> behind_adding(const LevelRequest& request, const ConverterSpec& converter,
                                      std::optional<RmsVolts> input, Gain (*gain)(Adding, int)) {
    if (!input || request.added_taps <= 1) return input;
    if (!converter.adding) return std::nullopt;
    return raised(*input, gain(*converter.adding, request.added_taps));
}

std::optional<RmsVolts> sent_at_smallest_gain(const ConverterSpec& converter, std::optional<RmsVolts> input) {
    if (!input || !converter.gain_min) return std::nullopt;
    const RmsVolts sent = *input * *converter.gain_min;
    return converter.output_max ? std::min(sent, *converter.output_max) : sent;
}

// How far `reached` is below `needed`; 0 dB when it is not.
std::optional<Gain> shortfall_of(std::optional<RmsVolts> reached, std::optional<RmsVolts> needed) {
    if (!reached || !needed || *reached <= rms_volts(0)) return std::nullopt;
    return std::max(decibels(0), gain_between(*reached, std::max(*needed, *reached)));
}

void settle(LevelChain& chain, const AmplifierSpec& amplifier, std::optional<Ohms> load) {
    const auto power = rated_power(amplifier, load);
    if (power && chain.shortfall) chain.reachable = raised(*power, -*chain.shortfall);
    if (chain.overload_volts && chain.overload_limit) chain.overloaded = *chain.overload_volts > *chain.overload_limit;
}

LevelChain direct_chain(const LevelRequest& request, const ConverterSpec& direct, const AmplifierSpec* amplifier) {
    LevelChain chain;
    chain.overload_volts = request.clean.high;
    chain.overload_limit = input_max(direct);
    chain.shortfall = shortfall_of(request.clean.likely, direct.input_min);
    if (amplifier) settle(chain, *amplifier, request.load);
    return chain;
}

}  // namespace

LevelChain level_chain(const LevelRequest& request, const ConverterSpec& converter, const AmplifierSpec* amplifier) {
    if (converter.topology == Topology::direct) return direct_chain(request, converter, amplifier);
    LevelChain chain;
    const auto likely = behind_adding(request, converter, request.clean.likely, unrelated_gain);
    const auto high = behind_adding(request, converter, request.clean.high, coherent_gain);
    chain.output_open = output_open(converter, request.lowest, likely);
    chain.overload_volts = sent_at_smallest_gain(converter, high);
    if (!amplifier) return chain;
    chain.output = output_into(converter, chain.output_open, amplifier->input_impedance);
    chain.shortfall = shortfall_of(chain.output, amplifier->sensitivity_highest_gain);
    chain.overload_limit = amplifier->input_max ? amplifier->input_max : amplifier->sensitivity_lowest_gain;
    settle(chain, *amplifier, request.load);
    return chain;
}

RmsVolts gain_target(Watts power, Ohms load, FullScaleLevel tone, Gain overlap) {
    if (!(power > watts(0))) throw RefusedValue("the power must be above zero");
    if (!(load > ohms(0))) throw RefusedValue("the load must be above zero");
    if (!(tone <= dbfs(0))) throw RefusedValue("a tone cannot be recorded above 0 dB full scale");
    if (!(overlap >= decibels(0))) throw RefusedValue("an overlap cannot be below 0 dB");
    return raised(sine_volts(power, load), (tone - dbfs(0)) + overlap);
}

Watts power_to_set(Watts amplifier, std::optional<Watts> speaker) {
    return speaker ? std::min(amplifier, *speaker) : amplifier;
}

}  // namespace tapbook
