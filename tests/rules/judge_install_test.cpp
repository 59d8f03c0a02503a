// Is the install worked out from what the car, the parts and the job say, and is what is missing named?
#include <catch2/catch.hpp>

#include "facts_fixture.h"

using namespace tapbook;
using namespace tapbook::fixture;

namespace {

// A regulated 900 W class D amplifier of one channel.
Amplifier bass_amplifier() {
    Amplifier amplifier = small_amplifier();
    amplifier.spec.channels = 1;
    amplifier.spec.use = AmplifierUse::sub;
    amplifier.spec.power_per_load = {{ohms(4), watts(500)}, {ohms(2), watts(900)}};
    amplifier.spec.least_load = ohms(2);
    amplifier.spec.amplifier_class = AmplifierClass::d;
    amplifier.spec.efficiency = ratio(0.8);
    amplifier.spec.standby_current = milliamps(2);
    return amplifier;
}

Install judged(const JobFacts& facts, const InstallAsk& ask) {
    RuleBook rules = RuleBook::shipped();
    const Advice advice = advise(facts, {}, rules);
    const auto* part = planned_part(advice, "");
    REQUIRE(part != nullptr);
    return judge_install(facts, advice, *part, ask, rules);
}

InstallAsk asked(double length, const char* size, const char* load) {
    JobPlan plan;
    plan.feed_mm = static_cast<std::int64_t>(length * 1000);
    plan.feed_size = size;
    plan.feed_insulation = Insulation::rated_105;
    plan.load = load;
    return ask_of(plan);
}

}  // namespace

TEST_CASE("900 W of class D over 5.5 m: 8 AWG is too thin and stopped, 4 AWG is a care with 1 milliohm of return") {
    // Common practice: cable alone 6.7 % and 2.7 %.
    JobFacts facts = plain_job();
    facts.amplifier = bass_amplifier();
    const auto thin = judged(facts, asked(5.5, "8", "2"));
    REQUIRE(thin.feed.has_value());
    CHECK(thin.feed->report.answer.grade == FeedGrade::too_thin);
    CHECK(find_rule(thin.feed_findings, "cable-loses-too-much")->effect == Effect::stop);
    const auto right = judged(facts, asked(5.5, "4", "2"));
    CHECK(right.feed->report.answer.grade == FeedGrade::care);
    CHECK(find_rule(right.feed_findings, "cable-loses-noticeably")->effect == Effect::care);
    CHECK(find_rule(right.feed_findings, "cable-loses-too-much") == nullptr);
}

TEST_CASE("without a size the thinnest good one is taken, and it is good") {
    JobFacts facts = plain_job();
    facts.amplifier = bass_amplifier();
    const auto install = judged(facts, asked(5.5, "", "2"));
    REQUIRE(install.feed.has_value());
    CHECK(install.feed->report.origin == SizeOrigin::chosen);
    CHECK(install.feed->report.answer.grade == FeedGrade::good);
    CHECK(find_rule(install.feed_findings, "cable-is-right") != nullptr);
}

TEST_CASE("what is missing for the feed is named, one thing at a time") {
    JobFacts facts = plain_job();
    facts.amplifier = bass_amplifier();
    InstallAsk ask = asked(5.5, "4", "2");
    ask.length.reset();
    CHECK(judged(facts, ask).feed_missing == "the way of the cable is not measured yet");
    facts.amplifier->spec.amplifier_class.reset();
    facts.amplifier->spec.efficiency.reset();
    CHECK(judged(facts, ask).feed_missing == "the amplifier's class and efficiency are not recorded");
    facts.amplifier->spec.channels.reset();
    CHECK(judged(facts, ask).feed_missing == "the amplifier's power or its channels are not recorded");
    facts.amplifier.reset();
    CHECK(judged(facts, ask).feed_missing == "no amplifier is chosen");
}

TEST_CASE("the gain is set for the load that hangs there and for the speaker when it takes less") {
    JobFacts facts = plain_job();
    facts.amplifier = bass_amplifier();
    const auto whole = judged(facts, asked(5.5, "4", "4//4"));
    // sqrt(900 W x 2 ohm)
    CHECK(whole.gain_target->in(rms_volts) == Approx(42.426).margin(0.001));
    InstallAsk ask = asked(5.5, "4", "4//4");
    ask.speaker = watts(450);
    // sqrt(450 W x 2 ohm)
    CHECK(judged(facts, ask).gain_target->in(rms_volts) == Approx(30.0).margin(0.001));
    ask = asked(5.5, "4", "3");
    CHECK_FALSE(judged(facts, ask).gain_target.has_value());  // power into 3 ohm is not printed
}

TEST_CASE("two channels bridged into a load give twice the power of one into half of it") {
    JobFacts facts = plain_job();
    facts.amplifier->spec.power_per_load = {{ohms(4), watts(75)}, {ohms(2), watts(110)}};
    InstallAsk ask = asked(3, "8", "4");
    ask.bridged = true;
    const auto install = judged(facts, ask);
    REQUIRE(install.gain_power.has_value());
    CHECK(install.gain_power->in(watts) == Approx(220));
}

TEST_CASE("standing time counts the standby of amplifier and part, and says when one of them is not stated") {
    JobFacts facts = plain_job();
    facts.amplifier = bass_amplifier();
    facts.car.vehicle.battery_capacity = amp_hours(70);
    auto standing = judged(facts, {}).plan.standing;
    REQUIRE(standing.has_value());
    CHECK(standing->added_known);
    // 0.4 x 70 Ah x 1000 / (52 mA x 24 h)
    CHECK(standing->after.in(seconds) / 86400 == Approx(22.436).margin(0.001));
    facts.amplifier->spec.standby_current.reset();
    standing = judged(facts, {}).plan.standing;
    CHECK_FALSE(standing->added_known);
    facts.car.vehicle.battery_capacity.reset();
    CHECK_FALSE(judged(facts, {}).plan.standing.has_value());
}

TEST_CASE("where the radio watches its speakers, a resistor is named for one that is removed") {
    JobFacts facts = plain_job();
    CHECK_FALSE(judged(facts, {}).resistor.has_value());
    facts.car.systems.front().entry.watches_load = true;
    const auto install = judged(facts, {});
    REQUIRE(install.resistor.has_value());
    CHECK(install.resistor->resistance.in(ohms) == Approx(4));
}
