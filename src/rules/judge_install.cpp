// Each part is computed by the electrical functions and then asked about: the rules of its relation say what it is
// worth.
#include "rules/judge_install.h"

#include <algorithm>

#include "rules/turn_on_choice.h"

namespace tapbook {
namespace {

constexpr Ohms usual_speaker = ohms(4);

const ShelfConverter* shelf_part(const JobFacts& facts, const std::string& path) {
    const auto found = std::find_if(facts.converters.begin(), facts.converters.end(),
                                    [&](const ShelfConverter& one) { return one.part.path == path; });
    return found == facts.converters.end() ? nullptr : &*found;
}

std::optional<Converter> direct_part(const JobFacts& facts, const JudgedCandidate& part) {
    if (part.converter != "direct" || !facts.amplifier) return std::nullopt;
    const auto spec = speaker_input_as_converter(facts.amplifier->spec);
    if (!spec) return std::nullopt;
    return Converter{"direct", facts.amplifier->maker, facts.amplifier->name, {}, *spec};
}

// Power of one output into the load that is really there: two channels bridged see half of it each.
std::optional<Watts> output_power(const AmplifierSpec& amplifier, const std::optional<Ohms>& load, bool bridged) {
    if (!bridged) return rated_power(amplifier, load);
    if (!load) return std::nullopt;
    const auto half = rated_power(amplifier, *load / 2);
    return half ? std::optional(*half * 2) : std::nullopt;
}

std::optional<Watts> whole_power(const AmplifierSpec& amplifier, const InstallAsk& ask) {
    auto one = output_power(amplifier, ask.load, ask.bridged);
    if (!one) one = rated_power(amplifier);
    if (!one || !amplifier.channels) return std::nullopt;
    const int outputs = ask.bridged ? std::max(1, *amplifier.channels / 2) : *amplifier.channels;
    return *one * outputs;
}

std::string missing_for_feed(const std::optional<Amplifier>& amplifier, const InstallAsk& ask) {
    if (!amplifier) return "no amplifier is chosen";
    if (!whole_power(amplifier->spec, ask)) return "the amplifier's power or its channels are not recorded";
    if (!amplifier->spec.amplifier_class && !amplifier->spec.efficiency)
        return "the amplifier's class and efficiency are not recorded";
    if (!ask.length) return "the way of the cable is not measured yet";
    return {};
}

ChargingSource source_of(Charging charging) {
    switch (charging) {
        case Charging::alternator:
        case Charging::smart_alternator:
            return ChargingSource::alternator;
        case Charging::dc_converter:
            return ChargingSource::dc_converter;
    }
    return ChargingSource::alternator;
}

// REQUIRES missing_for_feed() names nothing.
FeedFacts feed_facts(const Vehicle& car, const AmplifierSpec& amplifier, const InstallAsk& ask) {
    const AskedAmplifier asked{whole_power(amplifier, ask), amplifier.amplifier_class, amplifier.efficiency};
    const auto neighbours = sold_sizes(ask.size ? system_of(*ask.size) : SizeSystem::awg);
    Feed feed{running_supply, ohms(0), {neighbours.back(), *ask.length}, {}, BodyReturn{}, ask.conditions};
    feed.amplifiers = {fed_amplifier(asked, running_supply, false)};
    FeedFacts facts{feed_report(std::move(feed), {asked}, ask.size, neighbours), *ask.length};
    facts.report.average =
        average_draw(facts.report, amplifier.use.value_or(AmplifierUse::sub), amplifier.idle_current);
    if (car.charging && car.charging_current)
        facts.report.spare = spare_charging(source_of(*car.charging), *car.charging_current, facts.report.average);
    return facts;
}

std::optional<LoadFacts> load_facts(const std::optional<Amplifier>& amplifier, const InstallAsk& ask) {
    if (!amplifier || !ask.load) return std::nullopt;
    LoadFacts facts{output_load(amplifier->spec, *ask.load, ask.bridged), ask.speaker, std::nullopt};
    if (const auto power = output_power(amplifier->spec, ask.load, ask.bridged))
        facts.set_for = power_to_set(*power, ask.speaker);
    return facts;
}

void set_gain(Install& install, const AmplifierSpec& amplifier) {
    const Ohms load = install.ask.load.value_or(usual_speaker);
    auto power = output_power(amplifier, load, install.ask.bridged);
    if (!power && !install.ask.load) power = rated_power(amplifier);
    if (!power) return;
    install.gain_load = load;
    install.gain_power = power_to_set(*power, install.ask.speaker);
    install.gain_target = gain_target(*install.gain_power, load);
}

std::optional<StandingTime> standing_of_car(const Vehicle& car, const Converter* part, const AmplifierSpec* amplifier) {
    Amps added = amps(0);
    bool known = true;
    const auto add = [&](const std::optional<Amps>& standby) {
        if (standby) added = added + *standby;
        known = known && standby.has_value();
    };
    if (part != nullptr && part->path != "direct" && part->spec.needs_power != false) add(part->spec.standby_current);
    if (amplifier != nullptr) add(amplifier->standby_current);
    return standing_time(car.battery_capacity, car.battery_reserve_minutes, added, known);
}

}  // namespace

PlannedCandidate::PlannedCandidate(const JobFacts& facts, const Advice& advice, const JudgedCandidate& part)
    : direct_(direct_part(facts, part)),
      output_(effective_output(advice.tap.tap)),
      candidate_{advice.vehicle,
                 advice.system,
                 advice.tap.tap,
                 output_,
                 advice.tap.signal,
                 surroundings_,
                 {advice.lowest, advice.channels_wanted, facts.car.year}} {
    surroundings_.pairs_here = static_cast<int>(advice.pairs.size());
    const ShelfConverter* shelf = shelf_part(facts, part.converter);
    candidate_.converter = direct_ ? &*direct_ : shelf == nullptr ? nullptr : &shelf->part;
    candidate_.terms = shelf == nullptr ? nullptr : &shelf->terms;
    candidate_.amplifier = advice.amplifier ? &*advice.amplifier : nullptr;
}

Install judge_install(const JobFacts& facts, const Advice& advice, const JudgedCandidate& part, const InstallAsk& ask,
                      RuleBook& rules) {
    const PlannedCandidate planned(facts, advice, part);
    Candidate candidate = planned.candidate();
    const AmplifierSpec* amplifier = candidate.amplifier == nullptr ? nullptr : &candidate.amplifier->spec;
    const ConverterSpec* converter = candidate.converter == nullptr ? nullptr : &candidate.converter->spec;
    Install install;
    install.ask = ask;
    install.turn_ons =
        judge_turn_ons(turn_on_sources(facts.car, advice.system.code, converter, part.converter == "direct", amplifier),
                       candidate, rules);
    for (std::size_t i = 0; i < install.turn_ons.size(); ++i)
        if (install.turn_ons[i].facts.code == ask.turn_on) install.turn_on = i;
    install.feed_missing = missing_for_feed(advice.amplifier, ask);
    if (install.feed_missing.empty()) install.feed = feed_facts(advice.vehicle, *amplifier, ask);
    candidate.feed = install.feed ? &*install.feed : nullptr;
    if (install.feed) install.feed_findings = rules.evaluate_about("feed", candidate);
    install.load = load_facts(advice.amplifier, ask);
    candidate.load = install.load ? &*install.load : nullptr;
    if (install.load) install.load_findings = rules.evaluate_about("load", candidate);
    if (advice.system.entry.watches_load == true && advice.tap.signal.clean.high)
        install.resistor = load_resistor(*advice.tap.signal.clean.high,
                                         advice.tap.tap.circuit.output.rated_at.value_or(usual_speaker));
    if (converter != nullptr)
        install.levels = calculate_level({advice.tap.signal.clean, advice.lowest, ask.load, 1}, *converter, amplifier);
    if (amplifier != nullptr) set_gain(install, *amplifier);
    install.plan.standing = standing_of_car(advice.vehicle, candidate.converter, amplifier);
    return install;
}

}  // namespace tapbook
