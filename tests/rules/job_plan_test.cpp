// The order of a plan's steps, its cautions and its readings.
#include <algorithm>
#include <catch2/catch.hpp>
#include <set>

#include "facts_fixture.h"
#include "rules/plan_order.h"

using namespace tapbook;
using namespace tapbook::fixture;

namespace {

ShopJob a_job() {
    ShopJob job;
    job.number = 7;
    return job;
}

JobPlanAnswer planned(const JobFacts& facts, const InstallAsk& ask = {}, std::span<const ShopJob> earlier = {}) {
    RuleBook rules = RuleBook::shipped();
    const Advice advice = advise(facts, {}, rules);
    const auto* chosen = planned_part(advice, "");
    REQUIRE(chosen != nullptr);
    return plan_answer(a_job(), facts, advice, *chosen, ask, earlier, rules);
}

std::size_t first_with(const JobPlanAnswer& plan, std::string_view words) {
    for (std::size_t i = 0; i < plan.steps.size(); ++i)
        if (plan.steps[i].what.find(words) != std::string::npos) return i;
    FAIL("no step says: " << words);
    return 0;
}

bool warns(const JobPlanAnswer& plan, std::size_t step, std::string_view title) {
    const auto& cautions = plan.steps.at(step).cautions;
    return std::any_of(cautions.begin(), cautions.end(), [&](const Caution& c) { return c.title == title; });
}

}  // namespace

TEST_CASE("the phases of a plan come in their order and none is left out") {
    const auto plan = planned(plain_job());
    std::vector<PowerPhase> phases;
    for (const auto& step : plan.steps)
        if (phases.empty() || phases.back() != step.phase) phases.push_back(step.phase);
    std::vector<PowerPhase> all;
    for (const auto& named : words_of<PowerPhase>()) all.push_back(named.value);
    CHECK(phases == all);
}

TEST_CASE("battery negative is first off and last on but for the main fuse, and the waiting time stands between") {
    const auto plan = planned(plain_job());
    const auto off = first_with(plan, "battery negative off"), wait = first_with(plan, "wait "),
               join = first_with(plan, "join"), on = first_with(plan, "battery negative on"),
               fuse = first_with(plan, "main fuse of the amplifier last");
    CHECK((off < wait && wait < join && join < on && on < fuse));
}

TEST_CASE("every hazard on the way stands beside the step that reaches the tap") {
    JobFacts facts = plain_job();
    for (auto& tap : facts.car.taps) {
        tap.tap.hazards_listed = true;
        tap.tap.hazards = {Hazard::airbag_connector, Hazard::sharp_edges};
    }
    const auto plan = planned(facts);
    const auto reach = first_with(plan, "reach ");
    for (const Hazard hazard : {Hazard::airbag_connector, Hazard::sharp_edges})
        CHECK(warns(plan, reach, hazard_text(hazard).title));
    CHECK(plan.steps.at(first_with(plan, "battery negative on")).what.find("air-bag") != std::string::npos);
}

TEST_CASE("a tap without a list of hazards is never said to have none") {
    JobFacts facts = plain_job();
    for (auto& tap : facts.car.taps) {
        tap.tap.hazards_listed = false;
        tap.tap.hazards.clear();
    }
    const auto plan = planned(facts);
    CHECK(warns(plan, first_with(plan, "reach "), "hazards on the way"));
}

TEST_CASE("a waiting time that is not recorded is said to be so") {
    JobFacts facts = plain_job();
    facts.car.vehicle.airbag_wait_s.reset();
    CHECK(planned(facts).steps.at(first_with(planned(facts), "wait ")).what.find("not recorded") != std::string::npos);
    facts.car.vehicle.airbag_wait_s = 180;
    facts.car.vehicle.airbag_wait_source = "its manual";
    const auto plan = planned(facts);
    CHECK(plan.steps.at(first_with(plan, "wait 180 s")).what.find("its manual") != std::string::npos);
}

TEST_CASE("readings are taken live, supply first, then d.c., then a.c., with both ends of a bridged pair predicted") {
    const auto plan = planned(plain_job());
    std::vector<std::string_view> fields;
    for (const auto& step : plan.steps)
        for (const auto& reading : step.readings) {
            CHECK(step.phase == PowerPhase::live_check);
            CHECK((reading.range.low.has_value() && reading.range.high.has_value()));
            CHECK(*reading.range.low <= *reading.range.high);
            fields.push_back(reading.field);
        }
    CHECK(fields == std::vector<std::string_view>{"supply_v", "dc_positive_v", "dc_negative_v", "ac_v", "ac_positive_v",
                                                  "ac_negative_v"});
}

TEST_CASE("the part that is planned is the one named, else the best, else none") {
    RuleBook rules = RuleBook::shipped();
    const Advice advice = advise(plain_job(), {}, rules);
    REQUIRE(advice.best.has_value());
    CHECK(planned_part(advice, "")->converter == *advice.best);
    CHECK(planned_part(advice, advice.candidates.back().converter) == &advice.candidates.back());
    CHECK(planned_part(advice, "no-such-part") == nullptr);
}

TEST_CASE("no step of a plan stands before one it needs, and nothing is live while an air-bag connector may be open") {
    const auto plan = planned(plain_job());
    const OrderCheck check = check_order(plan.steps);
    CHECK(check.out_of_order == 0);
    CHECK(check.live_with_airbag_open == 0);
    std::set<std::string> ids;
    for (const auto& step : plan.steps) CHECK(ids.insert(step.id).second);
    for (const auto& step : plan.steps)
        for (const auto& need : step.needs)
            if (need != "read turn-on") {  // only where a circuit of the car wakes the amplifier
                INFO(step.id << " needs " << need);
                CHECK(ids.contains(need));
            }
}

TEST_CASE("both conductors of every pair are planned, each once") {
    const auto plan = planned(plain_job());
    std::set<std::pair<std::string, std::string>> seen;
    for (const auto& conductor : plan.conductors) CHECK(seen.insert({conductor.tap, conductor.use}).second);
    CHECK(seen.contains({plan.plan.tap, "+"}));
    CHECK(seen.contains({plan.plan.tap, "-"}));
    CHECK(plan.install.plan.conductors == static_cast<int>(plan.conductors.size()));
    CHECK(plan.install.plan.conductors_twice == 0);
}

TEST_CASE("two pairs that notes give the same wires of one connector are stopped as a conductor planned twice") {
    JobFacts facts = plain_job();
    REQUIRE(facts.car.taps.size() >= 2);
    for (auto& tap : facts.car.taps) {
        tap.tap.place = "behind the radio";
        tap.tap.connector = "radio main";
        tap.pair.positive = wire_colour_from_code("WH");
        tap.pair.negative = wire_colour_from_code("BN");
    }
    const auto plan = planned(facts);
    CHECK(plan.install.plan.conductors_twice == 2);
    const auto& findings = plan.install.plan_findings;
    CHECK(std::any_of(findings.begin(), findings.end(), [](const Finding& finding) {
        return finding.rule == "conductor-planned-twice" && finding.effect == Effect::stop;
    }));
}

TEST_CASE("a minus that several speakers share is one conductor of the plan") {
    JobFacts facts = plain_job();
    const char* positives[] = {"WH", "GY"};
    REQUIRE(facts.car.taps.size() == 2);
    for (std::size_t i = 0; i < 2; ++i) {
        auto& tap = facts.car.taps[i];
        tap.circuit.output.drive = Drive::common_return;
        tap.circuit.output.common_stage = Stage::single_ended;
        tap.pair.drive = settled("common_return");
        tap.pair.positive = wire_colour_from_code(positives[i]);
        tap.pair.negative = wire_colour_from_code("BK");
    }
    const auto plan = planned(facts);
    CHECK(plan.install.plan.conductors == 3);
    CHECK(plan.install.plan.conductors_twice == 0);
}

TEST_CASE("two conductors of one pair that look alike are two wires") {
    JobFacts facts = plain_job();
    facts.car.taps.resize(1);
    auto& pair = facts.car.taps.front().pair;
    pair.positive = pair.negative = wire_colour_from_code("BK");
    pair.same_colours = true;
    CHECK(planned(facts).install.plan.conductors_twice == 0);
}

TEST_CASE("the same colour in another cavity is another wire") {
    JobFacts facts = plain_job();
    int cavity = 1;
    for (auto& tap : facts.car.taps) {
        tap.tap.place = "behind the radio";
        tap.tap.connector = "radio main";
        tap.pair.positive = wire_colour_from_code("WH");
        tap.pair.negative = wire_colour_from_code("BN");
        tap.pair.positive_cavity = settled(std::to_string(cavity++));
        tap.pair.negative_cavity = settled(std::to_string(cavity++));
    }
    CHECK(planned(facts).install.plan.conductors_twice == 0);
}

TEST_CASE("what such a job took before is the lower median of the closed jobs on the same car and sound system") {
    const JobFacts facts = plain_job();
    std::vector<ShopJob> earlier(5);
    const int minutes[] = {240, 150, 210, 90, 60};
    for (std::size_t i = 0; i < earlier.size(); ++i) {
        earlier[i].number = static_cast<int>(i) + 10;
        earlier[i].vehicle = facts.car.vehicle.path;
        earlier[i].system = "base";
        earlier[i].taken_minutes = minutes[i];
    }
    earlier[3].system = "premium";  // another sound system
    earlier[4].number = 7;          // this very job
    CHECK(planned(facts, {}, earlier).install.plan.minutes_taken_before == 210);
    earlier[2].taken_minutes.reset();
    CHECK(planned(facts, {}, earlier).install.plan.minutes_taken_before == 150);
    CHECK_FALSE(planned(facts).install.plan.minutes_taken_before.has_value());
}

TEST_CASE("a part without a supply is never told to be grounded, one with a supply is") {
    JobFacts facts = plain_job();
    for (const auto topology :
         {Topology::transformer, Topology::resistive, Topology::active_line_level, Topology::active_speaker_level}) {
        RuleBook rules = RuleBook::shipped(RuleCases::left_out);
        const Advice advice = advise(facts, {}, rules);
        JudgedCandidate part = advice.candidates.front();
        part.topology = topology;
        const auto plan = plan_answer(a_job(), facts, advice, part, {}, {}, rules);
        const auto& words = plan.steps.at(first_with(plan, "twist the pair")).what;
        const bool has_supply = topology == Topology::active_line_level || topology == Topology::active_speaker_level;
        CHECK((words.find("ground on bare") != std::string::npos) == has_supply);
    }
}
