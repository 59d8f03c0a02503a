// Does every shipped rule about the feed and the plan fire on the practice shop, stay silent on it, and come out
// unsettled where not knowing is worth something? All cars and sound systems, all amplifiers, short and long ways, thin
// and thick cables, through plan_answer(); each car also as if nobody had recorded its battery, its 48 V and its
// charging, each amplifier as if no efficiency were printed. What our own planner never does is asked about with facts
// made by hand.
#include <catch2/catch.hpp>
#include <set>

#include "facts_fixture.h"
#include "practice_shop.h"
#include "rules_seen.h"

using namespace tapbook;
using namespace tapbook::fixture;

namespace {

class PlanWalk {
  public:
    explicit PlanWalk(const Catalog& catalog) : catalog_(catalog), rules_(RuleBook::shipped(RuleCases::left_out)) {
        facts_.converters = catalog.converters();
        ShopJob before;
        before.number = 90;
        before.taken_minutes = 210;
        jobs_ = {before};
    }

    RulesSeen walk() {
        for (const auto& name : catalog_.vehicle_names()) {
            facts_.car = catalog_.car(name.path, std::nullopt);
            walk_car();
            Vehicle& car = facts_.car.vehicle;
            car.battery_sensor.reset();
            car.has_48v.reset();
            car.battery_capacity.reset();
            car.battery_reserve_minutes.reset();
            car.charging_current.reset();
            walk_car();
        }
        return std::move(seen_);
    }
    int plans() const { return plans_; }

  private:
    void walk_car() {
        for (const auto& system : facts_.car.systems)
            for (Amplifier amplifier : catalog_.amplifiers()) {
                walk_system(system, amplifier);
                amplifier.spec.efficiency.reset();
                walk_system(system, amplifier);
            }
    }

    void walk_system(const SystemFacts& system, const Amplifier& amplifier) {
        facts_.amplifier = amplifier;
        jobs_.front().vehicle = plans_ % 2 == 0 ? facts_.car.vehicle.path : std::string();
        jobs_.front().system = system.code;
        try {
            const Advice advice = advise(facts_, {system.code, {}, {}, {}}, rules_);
            if (const JudgedCandidate* part = planned_part(advice, "")) walk_feeds(advice, *part);
        } catch (const AdviseError&) {  // nothing to tap: nothing to plan
        }
    }

    void walk_feeds(const Advice& advice, const JudgedCandidate& part) {
        InstallAsk ask;
        plan(advice, part, ask);
        for (const double length : {0.8, 2.5, 5.5, 9.0})
            for (const char* size : {"", "16", "10", "8", "4", "1/0"})
                for (const auto insulation : {std::optional<Insulation>(), std::optional(Insulation::rated_105)}) {
                    ask.length = metres(length);
                    ask.size = parse_cable_size(size);
                    ask.conditions.insulation = insulation;
                    ask.conditions.metal = length > 5 && !insulation ? Metal::copper_clad : Metal::copper;
                    plan(advice, part, ask);
                }
    }

    void plan(const Advice& advice, const JudgedCandidate& part, const InstallAsk& ask) {
        ++plans_;
        const auto answer = plan_answer({}, facts_, advice, part, ask, jobs_, rules_);
        if (answer.install.feed) note("feed", answer.install.feed_findings);
        note("plan", answer.install.plan_findings);
    }

    void note(std::string_view relation, const std::vector<Finding>& findings) {
        count_said(rules_, relation, true, findings, seen_);
    }

    const Catalog& catalog_;
    RuleBook rules_;
    JobFacts facts_;
    std::vector<ShopJob> jobs_;
    RulesSeen seen_;
    int plans_ = 0;
};

}  // namespace

TEST_CASE(
    "every rule about the feed and the plan fires and stays silent somewhere in the practice shop, but for those "
    "listed") {
    const PracticeShop shop;
    PlanWalk walk(shop.catalog());
    const auto seen = walk.walk();
    CHECK(walk.plans() > 1000);
    const RuleBook book = RuleBook::shipped();
    // Mistakes of a plan that the planner does not make: see the tests below.
    const std::set<std::string> never_fires = {"conductor-planned-twice", "step-before-what-it-needs",
                                               "live-while-airbag-open"};
    for (std::size_t i = 0; i < book.rules().size(); ++i) {
        if (book.is_about(i) != "feed" && book.is_about(i) != "plan") continue;
        const Rule& rule = book.rules()[i];
        INFO(rule.id);
        REQUIRE(seen.count(rule.id) == 1);
        const Seen& one = seen.at(rule.id);
        CHECK((one.fired > 0) != (never_fires.count(rule.id) == 1));
        CHECK(one.silent > 0);
        if (rule.unknown != Unknown::silent) CHECK(one.unsettled > 0);
    }
}

TEST_CASE("a plan with a mistake in its order or its wires is stopped by name") {
    RuleBook rules = RuleBook::shipped();
    const Bench bench;
    Candidate candidate = bench.candidate();
    const auto stops = [&](const PlanFacts& facts, std::string_view rule) {
        candidate.plan = &facts;
        const auto findings = rules.evaluate_about("plan", candidate);
        const Finding* found = find_rule(findings, rule);
        return found != nullptr && found->effect == Effect::stop;
    };
    PlanFacts facts;
    for (const char* rule : {"conductor-planned-twice", "step-before-what-it-needs", "live-while-airbag-open"})
        CHECK_FALSE(stops(facts, rule));
    facts.conductors_twice = 1;
    CHECK(stops(facts, "conductor-planned-twice"));
    facts = {};
    facts.steps_out_of_order = 1;
    CHECK(stops(facts, "step-before-what-it-needs"));
    facts = {};
    facts.live_with_airbag_open = 1;
    CHECK(stops(facts, "live-while-airbag-open"));
}

TEST_CASE("rules about the install say nothing while only tap and part are judged") {
    RuleBook rules = RuleBook::shipped();
    const Bench bench;
    for (const auto& answer : rules.answers(bench.candidate())) CHECK(rules.is_about(answer.rule).empty());
    for (const auto& answer : rules.tap_answers(bench.candidate())) CHECK(rules.is_about(answer.rule).empty());
}
