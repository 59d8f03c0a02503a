// Sources in the order in which they disturb the car least, then judged one by one.
#include "rules/turn_on_choice.h"

#include <algorithm>
#include <tuple>

namespace tapbook {
namespace {

using Loads = std::vector<std::optional<Amps>>;

std::optional<Amps> turn_on_input(const AmplifierSpec* amplifier) {
    return amplifier == nullptr ? std::nullopt : amplifier->turn_on_current;
}

// What the converter draws from the switched circuit that feeds it; nothing for one that needs no power.
std::optional<Amps> supply_of(const ConverterSpec* converter) {
    if (converter == nullptr || converter->needs_power == false) return amps(0);
    return converter->needs_power ? converter->power_current : std::nullopt;
}

bool may_wake_itself(const AmplifierSpec* amplifier) {
    return amplifier != nullptr && amplifier->speaker_input && amplifier->speaker_input->makes_turn_on != false;
}

bool makes_turn_on(const ConverterSpec& converter) {
    return converter.turn_on && *converter.turn_on != ConverterTurnOn::none;
}

TurnOnKind kind_of(const TapFacts& tap) {
    if (tap.circuit.role == Role::turn_on_lead) return TurnOnKind::existing_lead;
    if (!tap.switched.live) return TurnOnKind::other;
    switch (*tap.switched.live) {
        case SwitchedClass::accessory:
            return TurnOnKind::accessory;
        case SwitchedClass::ignition:
        case SwitchedClass::with_crank:
            return TurnOnKind::ignition;
        case SwitchedClass::constant:
        case SwitchedClass::other:
            break;
    }
    return TurnOnKind::other;
}

TurnOnFacts source_at(const TapFacts& tap, const ConverterSpec* converter, const AmplifierSpec* amplifier) {
    Loads loads = {turn_on_input(amplifier)};
    if (tap.circuit.role == Role::switched_power) loads.push_back(supply_of(converter));
    return {kind_of(tap), tap.code, tap, tap.switched.volts, turn_on_current(loads, tap.circuit.gives)};
}

auto key_of(const JudgedTurnOn& judged) {
    return std::tuple(judged.verdict, count_of(judged.findings, Effect::care), judged.facts.kind,
                      std::string_view(judged.facts.code));
}

}  // namespace

std::vector<TurnOnFacts> turn_on_sources(const CarFacts& car, const std::string& system, const ConverterSpec* converter,
                                         bool direct, const AmplifierSpec* amplifier) {
    std::vector<TurnOnFacts> sources;
    const ConverterSpec* part = direct ? nullptr : converter;
    if (direct && may_wake_itself(amplifier))
        sources.push_back({TurnOnKind::own_input, "own-input", {}, {}, turn_on_current({}, std::nullopt)});
    if (part != nullptr && makes_turn_on(*part)) {
        const Loads loads = {turn_on_input(amplifier)};
        sources.push_back({TurnOnKind::converter, "converter", {}, {}, turn_on_current(loads, part->turn_on_current)});
    }
    for (const TapFacts& tap : car.taps) {
        const Role role = tap.circuit.role;
        if (tap.system == system && (role == Role::turn_on_lead || role == Role::switched_power))
            sources.push_back(source_at(tap, part, amplifier));
    }
    return sources;
}

std::vector<JudgedTurnOn> judge_turn_ons(std::vector<TurnOnFacts> sources, const Candidate& base, RuleBook& rules) {
    std::vector<JudgedTurnOn> all;
    for (TurnOnFacts& source : sources) {
        JudgedTurnOn judged{std::move(source), Verdict::fits, {}};
        Candidate candidate = base;
        candidate.turn_on = &judged.facts;
        judged.findings = rules.evaluate_about("turn_on", candidate);
        judged.verdict = verdict_of(judged.findings);
        all.push_back(std::move(judged));
    }
    std::sort(all.begin(), all.end(), [](const auto& a, const auto& b) { return key_of(a) < key_of(b); });
    return all;
}

}  // namespace tapbook
