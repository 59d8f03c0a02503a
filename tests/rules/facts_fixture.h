// Hand-made facts for the tests of this folder: one invented car with a plain and an amplified sound system, a few
// parts and an amplifier. Every value is chosen here; nothing comes from a store.
#pragma once

#include <string>
#include <vector>

#include "rules/rules.h"

namespace tapbook::fixture {

inline const std::string car_path = "orlin/brelk/sedan/2014";

inline Standing settled(std::string value, Grade grade = Grade::one_car) {
    Standing standing;
    standing.grade = grade;
    standing.value = value;
    standing.claims = {Claim{std::move(value), 3, 1, 1, 1, 1, 1, 1, 1, {}, {}, "metered", grade}};
    return standing;
}

inline Standing graded(Grade grade) {
    Standing standing;
    standing.grade = grade;
    return standing;
}

// A bridged output rated 18 W at 4 ohm: about 8.5 V.
inline OutputStage bridged_18_watts() {
    OutputStage stage;
    stage.drive = Drive::bridged;
    stage.rated = watts(18);
    stage.rated_at = ohms(4);
    return stage;
}

// A speaker tap at the radio, seen and metered as bridged, its conductors proved.
inline TapFacts radio_tap(const std::string& circuit, const std::string& system = "base") {
    TapFacts tap;
    tap.code = car_path + "/" + system + "/" + circuit + "/radio";
    tap.system = system;
    tap.circuit.path = car_path + "/" + system + "/" + circuit;
    tap.circuit.role = Role::speaker;
    tap.circuit.output = bridged_18_watts();
    tap.circuit.fed_by = FedBy::radio;
    tap.circuit.behind = Behind::none;
    tap.circuit.band_low = hertz(20);
    tap.circuit.band_high = hertz(20000);
    tap.tap.path = tap.code;
    tap.tap.place = "behind the radio";
    tap.tap.connector = "radio main";
    tap.tap.hazards_listed = true;
    tap.tap.minutes = 20;
    tap.pair.drive = settled("bridged");
    tap.pair.pair = settled("BN|WH", Grade::proven);
    tap.pair.polarity = settled("WH", Grade::proven);
    tap.pair.notes = 5;
    return tap;
}

inline SystemFacts plain_system(const std::string& code = "base") {
    SystemFacts system;
    system.code = code;
    system.entry.path = car_path + "/" + code;
    system.entry.name = code;
    system.entry.premium_expected = false;
    system.entry.band_split = false;
    system.entry.noise_cancelling = false;
    system.entry.engine_sound = false;
    system.entry.cuts_bass = false;
    system.entry.watches_load = false;
    system.premium = settled("false");
    return system;
}

// A transformer of the simplest kind: 10 V at 20 Hz, floating, two separate channels.
inline Converter basic_transformer(const std::string& path = "olb-two") {
    Converter part;
    part.path = path;
    part.maker = "Olb";
    part.name = "Two";
    ConverterSpec& spec = part.spec;
    spec.topology = Topology::transformer;
    spec.channels = 2;
    spec.adding = Adding::none;
    spec.input_min = rms_volts(0.5);
    spec.input_max = rms_volts(10);
    spec.input_max_at = hertz(20);
    spec.survives = rms_volts(20);
    spec.reference = Reference::floating;
    spec.negatives = Negatives::separate;
    spec.dc_difference_max = dc_volts(0.5);
    spec.gain_min = ratio(0.1);
    spec.gain_max = ratio(0.4);
    spec.output_impedance = ohms(600);
    spec.output_shield = OutputShield::isolated;
    spec.low_corner = hertz(15);
    spec.isolates_grounds = true;
    spec.needs_power = false;
    spec.turn_on = ConverterTurnOn::none;
    return part;
}

// A resistive divider that does not isolate, its shield tied to the minus.
inline Converter plain_divider(const std::string& path = "olb-divider") {
    Converter part = basic_transformer(path);
    part.name = "Divider";
    part.spec.topology = Topology::resistive;
    part.spec.input_max_at = std::nullopt;
    part.spec.output_shield = OutputShield::input_conductor;
    part.spec.isolates_grounds = false;
    return part;
}

inline Amplifier small_amplifier() {
    Amplifier amplifier;
    amplifier.path = "kelm-two";
    amplifier.maker = "Kelm";
    amplifier.name = "Two";
    AmplifierSpec& spec = amplifier.spec;
    spec.channels = 2;
    spec.use = AmplifierUse::full_range;
    spec.power_per_load = {{ohms(4), watts(75)}};
    spec.sensitivity_highest_gain = rms_volts(0.2);
    spec.sensitivity_lowest_gain = rms_volts(4);
    spec.input_max = rms_volts(6);
    spec.input_impedance = ohms(20000);
    spec.shield = AmplifierShield::chassis;
    return amplifier;
}

inline JobFacts plain_job() {
    JobFacts facts;
    facts.car.vehicle.path = car_path;
    facts.car.vehicle.make = "Orlin";
    facts.car.vehicle.model = "Brelk";
    facts.car.systems = {plain_system()};
    facts.car.taps = {radio_tap("front-left"), radio_tap("front-right")};
    facts.converters = {{basic_transformer(), {}}};
    facts.amplifier = small_amplifier();
    return facts;
}

// The same car with a separate amplifier feeding its speakers; its output is boosted and the rail is not known.
inline JobFacts premium_job() {
    JobFacts facts = plain_job();
    facts.car.systems = {plain_system("premium")};
    facts.car.systems.front().entry.premium_expected = true;
    facts.car.systems.front().premium = settled("true");
    facts.car.taps = {radio_tap("front-left", "premium"), radio_tap("front-right", "premium")};
    for (TapFacts& tap : facts.car.taps) tap.circuit.fed_by = FedBy::amplifier;
    return facts;
}

// A reading with every condition: 60 Hz, full scale, 14.0 V, true RMS.
inline ToneReading complete_reading(double volts) {
    ToneReading reading{rms_volts(volts), {}, {}, {}, {}, {}, {}, {}, {}};
    reading.frequency = hertz(60);
    reading.level = dbfs(0);
    reading.supply = dc_volts(14.0);
    reading.full_volume = true;
    reading.speaker_connected = true;
    reading.controls_flat = true;
    reading.true_rms = true;
    return reading;
}

inline const Finding* find_rule(const std::vector<Finding>& findings, std::string_view rule) {
    for (const Finding& finding : findings)
        if (finding.rule == rule) return &finding;
    return nullptr;
}

// Everything one candidate refers to, ready to be changed by a test before it is judged.
struct Bench {
    Vehicle vehicle;
    SystemFacts system = plain_system();
    TapFacts tap = radio_tap("front-left");
    EffectiveOutput output = effective_output(tap);
    TapSignal signal = predict_tap({}, tap, hertz(60));
    TapSurroundings surroundings;
    Converter converter = basic_transformer();
    Terms terms;
    std::optional<Amplifier> amplifier = small_amplifier();
    int pairs = 2;

    Candidate candidate() const {
        Candidate c{vehicle, system, tap, output, signal, surroundings, {hertz(60), 2, {}}};
        c.converter = &converter;
        c.terms = &terms;
        c.amplifier = amplifier ? &*amplifier : nullptr;
        c.chain = level_chain({signal.clean, hertz(60), {}, 1}, converter.spec, amplifier ? &amplifier->spec : nullptr);
        c.pairs = pairs;
        return c;
    }
};

}  // namespace tapbook::fixture
