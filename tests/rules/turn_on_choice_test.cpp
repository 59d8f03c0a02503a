// Which sources are offered to wake the amplifier, what hangs on each, and in which order do they come out? A car made
// by hand; the order has a slow twin that compares every two.
#include "rules/turn_on_choice.h"

#include <rapidcheck.h>

#include <catch2/catch.hpp>

#include "facts_fixture.h"

using namespace tapbook;
using namespace tapbook::fixture;

namespace {

TapFacts power_tap(const std::string& circuit, Role role, std::optional<SwitchedClass> live) {
    TapFacts tap;
    tap.code = car_path + "/base/" + circuit + "/fuse-box";
    tap.system = "base";
    tap.circuit.role = role;
    tap.circuit.carries = "radio";
    tap.circuit.fuse = amps(10);
    tap.circuit.stays_live = seconds(0);
    tap.circuit.switching = Switching::plain;
    tap.switched.live = live;
    tap.switched.circuit = live ? settled(std::string(word_of(*live)), Grade::matched) : graded(Grade::mixed);
    if (live) tap.switched.volts = {dc_volts(0), dc_volts(12.4), dc_volts(14.0), dc_volts(10.5)};
    return tap;
}

CarFacts car_with_everything() {
    CarFacts car = plain_job().car;
    using Class = SwitchedClass;
    car.taps.push_back(power_tap("accessory", Role::switched_power, Class::accessory));
    car.taps.push_back(power_tap("constant", Role::constant_power, Class::constant));
    car.taps.push_back(power_tap("data", Role::data_pair, {}));
    car.taps.push_back(power_tap("disputed", Role::switched_power, {}));
    car.taps.push_back(power_tap("heater", Role::switched_power, Class::with_crank));
    car.taps.push_back(power_tap("lamps", Role::illumination, Class::accessory));
    car.taps.push_back(power_tap("remote", Role::turn_on_lead, Class::accessory));
    TapFacts elsewhere = power_tap("accessory", Role::switched_power, Class::accessory);
    elsewhere.system = "premium";
    car.taps.push_back(elsewhere);
    return car;
}

ConverterSpec active_part() {
    ConverterSpec part = basic_transformer().spec;
    part.topology = Topology::active_speaker_level;
    part.turn_on = ConverterTurnOn::signal;
    part.turn_on_hold = seconds(60);
    part.turn_on_current = milliamps(300);
    part.needs_power = true;
    part.power_current = milliamps(120);
    return part;
}

AmplifierSpec amplifier_drawing(int thousandths) {
    AmplifierSpec amplifier = small_amplifier().spec;
    amplifier.turn_on_current = milliamps(thousandths);
    return amplifier;
}

std::vector<std::string> kinds_of(const std::vector<TurnOnFacts>& sources) {
    std::vector<std::string> kinds;
    for (const TurnOnFacts& one : sources) kinds.emplace_back(word_of(one.kind));
    return kinds;
}

using Words = std::vector<std::string>;

}  // namespace

TEST_CASE("leads and switched power of the asked system are offered, constant power, lamps and data never") {
    const ConverterSpec part = active_part();
    const AmplifierSpec amplifier = amplifier_drawing(25);
    const auto sources = turn_on_sources(car_with_everything(), "base", &part, false, &amplifier);
    CHECK(kinds_of(sources) == Words{"converter", "accessory", "other", "ignition", "existing_lead"});
    CHECK(sources[0].code == "converter");
    CHECK(sources[1].code == car_path + "/base/accessory/fuse-box");
    CHECK(sources[1].volts.crank == dc_volts(10.5));
    CHECK_FALSE(sources[2].volts.run.has_value());
}

TEST_CASE("a part that makes no turn-on, or is not known to, offers none of its own") {
    ConverterSpec part = active_part();
    for (const auto turn_on : {std::optional(ConverterTurnOn::none), std::optional<ConverterTurnOn>()}) {
        part.turn_on = turn_on;
        CHECK(kinds_of(turn_on_sources(car_with_everything(), "base", &part, false, nullptr))[0] == "accessory");
    }
    CHECK(kinds_of(turn_on_sources(car_with_everything(), "base", nullptr, false, nullptr))[0] == "accessory");
}

TEST_CASE("the amplifier's own input is offered only when it is the part and is not known to wake nothing") {
    AmplifierSpec amplifier = amplifier_drawing(25);
    const auto first = [&](bool direct) {
        const auto own = speaker_input_as_converter(amplifier);
        return kinds_of(turn_on_sources(car_with_everything(), "base", own ? &*own : nullptr, direct, &amplifier))[0];
    };
    CHECK(first(true) == "accessory");  // it has no such input
    amplifier.speaker_input = SpeakerLevelInput{};
    CHECK(first(true) == "own_input");
    CHECK(first(false) == "accessory");
    amplifier.speaker_input->makes_turn_on = true;
    CHECK(first(true) == "own_input");
    amplifier.speaker_input->makes_turn_on = false;
    CHECK(first(true) == "accessory");
}

TEST_CASE("on a switched circuit hang the amplifier's input and the part's supply, on a lead the input alone") {
    const ConverterSpec part = active_part();
    const AmplifierSpec amplifier = amplifier_drawing(25);
    const auto sources = turn_on_sources(car_with_everything(), "base", &part, false, &amplifier);
    CHECK(sources[0].current.loads->in(milliamps) == Approx(25));
    CHECK(sources[0].current.limit.in(milliamps) == 300);
    CHECK_FALSE(sources[0].current.limit_assumed);
    CHECK(sources[1].current.loads->in(milliamps) == Approx(145));
    CHECK(sources[1].current.limit_assumed);
    CHECK(sources[1].current.carried == true);
    CHECK(sources[4].current.loads->in(milliamps) == Approx(25));
}

TEST_CASE("a part that needs no power adds nothing, one of which that is not known leaves the sum unknown") {
    ConverterSpec part = active_part();
    const AmplifierSpec amplifier = amplifier_drawing(25);
    const auto on_accessory = [&] {
        return turn_on_sources(car_with_everything(), "base", &part, false, &amplifier)[1].current.loads;
    };
    part.needs_power = false;
    CHECK(on_accessory()->in(milliamps) == Approx(25));
    part.needs_power.reset();
    CHECK_FALSE(on_accessory().has_value());
    part.needs_power = true;
    part.power_current.reset();
    CHECK_FALSE(on_accessory().has_value());
}

TEST_CASE("a circuit gives what is recorded for it, and its fuse is not taken for that") {
    CarFacts car = plain_job().car;
    car.taps = {power_tap("accessory", Role::switched_power, SwitchedClass::accessory)};
    const AmplifierSpec amplifier = amplifier_drawing(25);
    CHECK(turn_on_sources(car, "base", nullptr, false, &amplifier)[0].current.limit == unknown_source_limit);
    car.taps[0].circuit.gives = amps(2);
    CHECK(turn_on_sources(car, "base", nullptr, false, &amplifier)[0].current.limit == amps(2));
}

TEST_CASE("what is judged comes out best first, in whatever order it came") {
    RuleBook rules = RuleBook::shipped(RuleCases::left_out);
    Bench bench;
    bench.converter.spec = active_part();
    bench.amplifier->spec = amplifier_drawing(25);
    CarFacts car = car_with_everything();
    car.taps.push_back(power_tap("watched", Role::switched_power, SwitchedClass::accessory));
    car.taps.back().circuit.protects = {Protects::brakes, Protects::emergency_call};
    const auto sources = turn_on_sources(car, "base", &bench.converter.spec, false, &bench.amplifier->spec);
    const auto judged = judge_turn_ons(sources, bench.candidate(), rules);
    REQUIRE(judged.size() == sources.size());
    CHECK(judged.front().facts.kind == TurnOnKind::converter);
    CHECK(judged.back().verdict == Verdict::no);
    CHECK(find_rule(judged.back().findings, "turn-on-circuit-protects")->says ==
          "this circuit feeds brakes, emergency call: it is never tapped, for no purpose");
    const auto stands_before = [](const JudgedTurnOn& a, const JudgedTurnOn& b) {
        if (a.verdict != b.verdict) return a.verdict < b.verdict;
        const int cares_a = count_of(a.findings, Effect::care), cares_b = count_of(b.findings, Effect::care);
        if (cares_a != cares_b) return cares_a < cares_b;
        return a.facts.kind != b.facts.kind ? a.facts.kind < b.facts.kind : a.facts.code < b.facts.code;
    };
    for (std::size_t i = 0; i < judged.size(); ++i)
        for (std::size_t j = i + 1; j < judged.size(); ++j) CHECK(stands_before(judged[i], judged[j]));
    const auto turned = judge_turn_ons({sources.rbegin(), sources.rend()}, bench.candidate(), rules);
    for (std::size_t i = 0; i < judged.size(); ++i) CHECK(turned[i].facts.code == judged[i].facts.code);
}

TEST_CASE("a circuit whose class is disputed is a care, and its volts are not held against it") {
    RuleBook rules = RuleBook::shipped(RuleCases::left_out);
    const Bench bench;
    CarFacts car = plain_job().car;
    car.taps = {power_tap("disputed", Role::switched_power, {})};
    const auto judged = judge_turn_ons(turn_on_sources(car, "base", nullptr, false, nullptr), bench.candidate(), rules);
    CHECK(judged[0].verdict == Verdict::care);
    CHECK(find_rule(judged[0].findings, "turn-on-class-disputed")->says ==
          "notes disagree about when this circuit is live (MIXED): meter it in all four positions of the key");
    CHECK(find_rule(judged[0].findings, "turn-on-dead-in-run") == nullptr);
}

TEST_CASE("a rule about the turn-on says how long the battery lasts with the amplifier awake") {
    RuleBook rules = RuleBook::shipped(RuleCases::left_out);
    Bench bench;
    bench.vehicle.battery_capacity = amp_hours(60);
    bench.amplifier->spec.idle_current = milliamps(950);
    CarFacts car = plain_job().car;
    car.taps = {power_tap("socket", Role::switched_power, SwitchedClass::constant)};
    car.taps[0].switched.volts.off = dc_volts(12.6);
    const auto judged = judge_turn_ons(turn_on_sources(car, "base", nullptr, false, nullptr), bench.candidate(), rules);
    CHECK(judged[0].verdict == Verdict::no);
    // 0.4 x 60 Ah at 50 mA of the car and 950 mA of the amplifier: 24 hours.
    CHECK(find_rule(judged[0].findings, "turn-on-live-with-key-off")->says ==
          "12.6 V with the key off: the amplifier would never sleep, and the battery would no longer start the engine "
          "after 1.0 days");
}
