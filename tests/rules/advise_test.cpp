// Does the advice hold for whole jobs: the plain car, the amplified one, several pairs, several taps, no amplifier?
#include <catch2/catch.hpp>

#include "facts_fixture.h"

using namespace tapbook;
using namespace tapbook::fixture;

namespace {

Advice advice_for(const JobFacts& facts, const AdviseRequest& request = {}) {
    RuleBook book = RuleBook::shipped();
    return advise(facts, request, book);
}

AdviseTrouble trouble_of(const JobFacts& facts, const AdviseRequest& request) {
    try {
        advice_for(facts, request);
    } catch (const AdviseError& error) {
        return error.kind();
    }
    FAIL("nothing was refused");
    return {};
}

AdviseRequest at_tap(const std::string& tail) {
    AdviseRequest request;
    request.tap = car_path + tail;
    return request;
}

}  // namespace

TEST_CASE("a bridged 18 W tap of a plain system takes a basic passive transformer") {
    const Advice advice = advice_for(plain_job());
    REQUIRE(advice.candidates.size() == 1);
    const JudgedCandidate& part = advice.candidates[0];
    CHECK(part.verdict == Verdict::fits);
    CHECK(advice.best == "olb-two");
    // 18 W at 4 ohm is 8.485 V, times 1.125 is 9.546 V; 20 log10(10 / 9.546) = 0.40 dB; all by hand.
    CHECK(part.headroom->in(decibels) == Approx(0.404).margin(0.005));
    CHECK(part.limit_at_lowest->in(rms_volts) == Approx(10));
    // 8.485 x 0.4 behind a 15 Hz corner at 60 Hz (x 0.9701).
    CHECK(part.output_open->in(rms_volts) == Approx(3.293).margin(0.005));
}

TEST_CASE("an amplifier's speaker side takes no passive part until a complete measurement says so") {
    JobFacts facts = premium_job();
    Advice advice = advice_for(facts);
    CHECK(advice.candidates[0].verdict == Verdict::no);
    CHECK_FALSE(advice.best.has_value());
    REQUIRE(find_rule(advice.candidates[0].findings, "premium-speaker-side-needs-measuring") != nullptr);

    for (TapFacts& tap : facts.car.taps) tap.pair.readings = {complete_reading(7.0)};
    advice = advice_for(facts);
    CHECK(advice.candidates[0].verdict == Verdict::fits);
    CHECK(find_rule(advice.candidates[0].findings, "measured-inside-range") != nullptr);

    for (TapFacts& tap : facts.car.taps) tap.pair.readings[0].controls_flat.reset();
    advice = advice_for(facts);
    CHECK(advice.candidates[0].verdict == Verdict::no);
    CHECK(find_rule(advice.candidates[0].findings, "reading-incomplete") != nullptr);
}

TEST_CASE("a winding whose limit lacks its note is a care said once, and a stop where no note could hold the tap") {
    JobFacts facts = plain_job();
    facts.converters[0].part.spec.input_max_at.reset();
    Advice advice = advice_for(facts);
    CHECK_FALSE(advice.candidates[0].limit_at_lowest.has_value());
    CHECK(advice.candidates[0].verdict == Verdict::care);
    CHECK(count_of(advice.candidates[0].findings, Effect::care) == 1);
    CHECK(find_rule(advice.candidates[0].findings, "limit-note-not-stated") != nullptr);
    facts.converters[0].part.spec.input_max = rms_volts(8);
    advice = advice_for(facts);
    CHECK(advice.candidates[0].verdict == Verdict::no);
    CHECK(find_rule(advice.candidates[0].findings, "overdriven-at-every-note") != nullptr);
}

TEST_CASE("one measured pair does not vouch for the other pair of the same part") {
    JobFacts facts = premium_job();
    facts.car.taps[0].pair.readings = {complete_reading(7.0)};
    const Advice advice = advice_for(facts, at_tap("/premium/front-left/radio"));
    const auto& findings = advice.candidates[0].findings;
    CHECK(advice.candidates[0].verdict == Verdict::no);
    const Finding* stop = find_rule(findings, "premium-speaker-side-needs-measuring");
    REQUIRE(stop != nullptr);
    CHECK(stop->pair == car_path + "/premium/front-right/radio");
    CHECK(stop->says.starts_with("front-right: "));
    CHECK(find_rule(findings, "measured-inside-range") == nullptr);
}

TEST_CASE("each channel is held against its own pair, and only against as many as the part takes") {
    JobFacts facts = plain_job();
    facts.car.taps[1].pair.readings = {complete_reading(10.2)};
    CHECK(advice_for(facts, at_tap("/base/front-left/radio")).candidates[0].verdict == Verdict::no);
    AdviseRequest one = at_tap("/base/front-left/radio");
    one.channels = 1;
    CHECK(advice_for(facts, one).candidates[0].verdict == Verdict::fits);
}

TEST_CASE("without a named tap the one on which something fits is taken, and the others follow in order") {
    JobFacts facts = plain_job();
    for (auto& tap : facts.car.taps) tap.pair.pair = settled("BN|WH", Grade::one_car);
    TapFacts seat = radio_tap("rear-left");
    seat.tap.place = "under the seat";
    seat.tap.minutes = 5;
    facts.car.taps.push_back(seat);
    AdviseRequest request;
    CHECK(advice_for(facts, request).tap.tap.code == seat.code);
    facts.car.taps.back().circuit.band_low = hertz(200);
    const Advice advice = advice_for(facts, request);
    CHECK(advice.tap.tap.code == car_path + "/base/front-left/radio");
    REQUIRE(advice.other_taps.size() == 2);
    CHECK(advice.other_taps[0].tap.code == car_path + "/base/front-right/radio");
    CHECK(advice.other_taps[1].tap.code == seat.code);
    CHECK(advice_for(facts, at_tap("/base/rear-left/radio")).tap.tap.code == seat.code);
}

TEST_CASE("an amplifier's own speaker-level input is a candidate called direct and comes before any part") {
    JobFacts facts = plain_job();
    SpeakerLevelInput input;
    input.input_min = rms_volts(1);
    input.input_max = rms_volts(16);
    input.reference = Reference::differential;
    input.negatives = Negatives::separate;
    input.dc_tolerance = dc_volts(16);
    facts.amplifier->spec.speaker_input = input;
    Advice advice = advice_for(facts);
    REQUIRE(advice.candidates.size() == 2);
    const auto direct = std::find_if(advice.candidates.begin(), advice.candidates.end(),
                                     [](const auto& c) { return c.converter == "direct"; });
    REQUIRE(direct != advice.candidates.end());
    CHECK(direct->topology == Topology::direct);
    CHECK(find_rule(direct->findings, "amplifier-takes-this-tap-directly") != nullptr);
    CHECK(direct->verdict != Verdict::no);
    facts.amplifier->spec.speaker_input->reference = Reference::chassis;
    advice = advice_for(facts);
    CHECK(advice.best == "olb-two");
}

TEST_CASE("without an amplifier tap and converter are held against each other and nothing is said of one") {
    JobFacts facts = plain_job();
    facts.amplifier.reset();
    const Advice advice = advice_for(facts);
    CHECK_FALSE(advice.amplifier.has_value());
    CHECK(advice.candidates[0].verdict != Verdict::no);
    CHECK_FALSE(advice.candidates[0].output.has_value());
    CHECK_FALSE(advice.candidates[0].reachable.has_value());
    CHECK(advice.candidates[0].output_open.has_value());
    CHECK(find_rule(advice.candidates[0].findings, "amplifier-stays-below-rated-power") == nullptr);
    CHECK(advice.channels_wanted == 2);
}

TEST_CASE("the lowest note and the channels come from the request, else from the amplifier, else from practice") {
    JobFacts facts = plain_job();
    CHECK(advice_for(facts).lowest == hertz(60));
    facts.amplifier->spec.use = AmplifierUse::sub;
    facts.amplifier->spec.channels = 1;
    CHECK(advice_for(facts).lowest == hertz(30));
    CHECK(advice_for(facts).channels_wanted == 1);
    CHECK(advice_for(facts).pairs.size() == 1);
    AdviseRequest request;
    request.lowest = hertz(25);
    request.channels = 4;
    const Advice asked = advice_for(facts, request);
    CHECK(asked.lowest == hertz(25));
    CHECK(asked.channels_wanted == 4);
    CHECK(asked.pairs.size() == 2);
    const Finding* fewer = find_rule(asked.candidates[0].findings, "fewer-channels-than-wanted");
    REQUIRE(fewer != nullptr);
    CHECK(fewer->effect == Effect::stop);
    CHECK(fewer->says == "takes 2 of the 4 pairs wanted: use several of it, or ask with --channels 2");
}

TEST_CASE("pairs are taken at the tap's place, the named one first, one for each circuit") {
    JobFacts facts = plain_job();
    TapFacts second_plug = facts.car.taps[0];
    second_plug.code = car_path + "/base/front-left/second-plug";
    TapFacts elsewhere = radio_tap("rear-left");
    elsewhere.tap.place = "boot";
    TapFacts power = radio_tap("radio-power");
    power.circuit.role = Role::switched_power;
    facts.car.taps.insert(facts.car.taps.end(), {second_plug, elsewhere, power});
    AdviseRequest request = at_tap("/base/front-right/radio");
    request.channels = 4;
    const Advice advice = advice_for(facts, request);
    REQUIRE(advice.pairs.size() == 2);
    CHECK(advice.pairs[0].code == car_path + "/base/front-right/radio");
    CHECK(advice.pairs[1].code == car_path + "/base/front-left/radio");
}

TEST_CASE("nothing is judged when the question is not clear") {
    JobFacts facts = plain_job();
    facts.car.systems.push_back(plain_system("premium"));
    CHECK(trouble_of(facts, {}) == AdviseTrouble::needs_system);
    AdviseRequest request;
    request.system = "premium";
    CHECK(trouble_of(facts, request) == AdviseTrouble::no_signal_tap);
    request.system = "other";
    CHECK(trouble_of(facts, request) == AdviseTrouble::no_such_system);
    request.system = "base";
    request.tap = car_path + "/base/nowhere/radio";
    CHECK(trouble_of(facts, request) == AdviseTrouble::no_such_tap);
    facts.car.systems.clear();
    CHECK(trouble_of(facts, {}) == AdviseTrouble::no_such_system);
}

TEST_CASE("findings stand stops first, then cares, good and info, and their verdict follows") {
    JobFacts facts = plain_job();
    facts.converters = {{basic_transformer(), {}}, {plain_divider(), {}}};
    for (auto& tap : facts.car.taps) tap.pair.altered = true;
    const Advice advice = advice_for(facts);
    for (const JudgedCandidate& c : advice.candidates) {
        CHECK(std::is_sorted(c.findings.begin(), c.findings.end(),
                             [](const Finding& a, const Finding& b) { return a.effect < b.effect; }));
        CHECK(c.verdict == verdict_of(c.findings));
        for (const Finding& of_tap : advice.tap.findings) CHECK(find_rule(c.findings, of_tap.rule) != nullptr);
    }
    CHECK(advice.candidates[0].verdict == Verdict::care);
    CHECK(advice.candidates[1].verdict == Verdict::no);
}
