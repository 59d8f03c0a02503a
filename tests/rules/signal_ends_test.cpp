// Does each end of the predicted range decide its own rule? For every drive only one end is moved at a time, and
// exactly the rules that may look at it change.
#include <catch2/catch.hpp>
#include <set>

#include "facts_fixture.h"

using namespace tapbook;
using namespace tapbook::fixture;

namespace {

// A part that takes 1 to 10 V and reaches an amplifier's 1.2 V from 4 V on (gain 0.3; no corner, no source impedance).
Bench bench_on(Drive drive) {
    Bench bench;
    bench.tap.pair.drive = drive == Drive::unknown ? graded(Grade::mixed) : settled(std::string(word_of(drive)));
    if (is_line(drive)) bench.tap.circuit.role = Role::line_level;
    bench.tap.circuit.level = LevelKind::follows_volume;
    bench.output = effective_output(bench.tap);
    bench.signal = predict_tap({}, bench.tap, hertz(60));
    bench.signal.clean = {rms_volts(2), rms_volts(5), rms_volts(8)};
    bench.signal.clipped = {rms_volts(8), rms_volts(10), rms_volts(15)};
    ConverterSpec& spec = bench.converter.spec;
    spec.topology = is_line(drive) ? Topology::active_line_level : Topology::active_speaker_level;
    spec.input_min = rms_volts(1);
    spec.input_max = rms_volts(10);
    spec.gain_max = ratio(0.3);
    spec.low_corner.reset();
    spec.output_impedance = ohms(0);
    bench.amplifier->spec.sensitivity_highest_gain = rms_volts(1.2);
    return bench;
}

std::set<std::string> firing(RuleBook& book, const Bench& bench) {
    std::set<std::string> rules;
    for (const Finding& finding : book.evaluate(bench.candidate()))
        if (finding.settled) rules.insert(finding.rule);
    return rules;
}

// Rules that fire on only one of the two.
std::set<std::string> changed(RuleBook& book, const Bench& before, const Bench& after) {
    const auto a = firing(book, before), b = firing(book, after);
    std::set<std::string> moved;
    for (const auto& rule : a)
        if (b.count(rule) == 0) moved.insert(rule);
    for (const auto& rule : b)
        if (a.count(rule) == 0) moved.insert(rule);
    return moved;
}

using Names = std::set<std::string>;

}  // namespace

TEST_CASE("for every drive the low end decides only whether there is enough for the input") {
    RuleBook book = RuleBook::shipped();
    for (const auto& drive : words_of<Drive>()) {
        INFO(drive.word);
        const Bench bench = bench_on(drive.value);
        Bench moved = bench;
        moved.signal.clean.low = rms_volts(0.9);
        CHECK(changed(book, bench, moved) == Names{"too-little-for-the-input"});
        moved.signal.clean.low = rms_volts(0.2);
        CHECK(changed(book, bench, moved) == Names{"far-too-little-for-the-input"});
    }
}

TEST_CASE("for every drive the likely end decides only whether the amplifier is reached") {
    RuleBook book = RuleBook::shipped();
    for (const auto& drive : words_of<Drive>()) {
        INFO(drive.word);
        const Bench bench = bench_on(drive.value);
        Bench moved = bench;
        moved.signal.clean.likely = rms_volts(3.9);
        CHECK(changed(book, bench, moved) == Names{"amplifier-stays-below-rated-power"});
    }
}

TEST_CASE("for every drive the high end decides only what can be too much") {
    RuleBook book = RuleBook::shipped();
    for (const auto& drive : words_of<Drive>()) {
        INFO(drive.word);
        const Bench bench = bench_on(drive.value);
        Bench moved = bench;
        moved.signal.clean.high = rms_volts(10.1);
        CHECK(changed(book, bench, moved) == Names{"overdriven-at-lowest-note"});
        moved = bench;
        moved.converter.spec.gain_min = ratio(0.7);
        Bench louder = moved;
        louder.signal.clean.high = rms_volts(9);
        CHECK(changed(book, moved, louder) == Names{"amplifier-input-overloaded"});
        moved = bench;
        moved.signal.clipped.high = rms_volts(21);
        CHECK(changed(book, bench, moved) == Names{"does-not-survive-clipping"});
    }
}

TEST_CASE("an end that is not known leaves its rules unsettled with what that is worth") {
    RuleBook book = RuleBook::shipped();
    Bench bench = bench_on(Drive::bridged);
    bench.signal.clean.high.reset();
    bench.signal.clipped.high.reset();
    const auto findings = book.evaluate(bench.candidate());
    for (const auto& [rule, effect] : {std::pair{"overdriven-at-lowest-note", Effect::care},
                                       {"does-not-survive-clipping", Effect::care},
                                       {"amplifier-input-overloaded", Effect::info}}) {
        INFO(rule);
        const Finding* finding = find_rule(findings, rule);
        REQUIRE(finding != nullptr);
        CHECK(finding->effect == effect);
        CHECK_FALSE(finding->settled);
    }
    bench.signal.clean.low.reset();
    const auto more = book.evaluate(bench.candidate());
    REQUIRE(find_rule(more, "too-little-for-the-input") != nullptr);
    CHECK(find_rule(more, "too-little-for-the-input")->effect == Effect::info);
}
