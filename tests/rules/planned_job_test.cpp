// A plan is made of what was wished, else of what the job has, else of the best; and each refusal says why and what
// else.
#include <catch2/catch.hpp>

#include "facts_fixture.h"
#include "rules/rules.h"

using namespace tapbook;

namespace {

ShopJob job_of_plain_car() {
    ShopJob job;
    job.number = 7;
    job.vehicle = fixture::car_path;
    job.system = "base";
    return job;
}

PlanWish wish_of(const ShopJob& job) {
    PlanWish wish;
    wish.system = job.system;
    wish.said = job.plan;
    return wish;
}

JobPlanAnswer planned(const JobFacts& facts, const ShopJob& job, const PlanWish& wish) {
    static RuleBook rules = RuleBook::shipped();
    return planned_job(facts, job, wish, {}, rules);
}

// What was refused: its trouble, words and way out.
struct Refused {
    PlanTrouble trouble;
    std::string words, way_out;
};

Refused refused(const JobFacts& facts, const ShopJob& job, const PlanWish& wish) {
    try {
        planned(facts, job, wish);
    } catch (const PlanRefused& error) {
        return {error.trouble(), error.what(), error.way_out()};
    }
    throw std::logic_error("it was planned");
}

}  // namespace

TEST_CASE("without a wish the best part is planned, and the job says which system") {
    const JobFacts facts = fixture::plain_job();
    const ShopJob job = job_of_plain_car();
    const JobPlanAnswer answer = planned(facts, job, wish_of(job));
    RuleBook rules = RuleBook::shipped();
    CHECK(answer.plan.converter == advise(facts, {"base", {}, {}, {}}, rules).best);
    CHECK(answer.job.system == "base");
    CHECK(answer.plan.tap.starts_with(fixture::car_path + "/base/"));
}

TEST_CASE("a tap planned before is kept within its system, and left out in another") {
    const JobFacts facts = fixture::plain_job();
    ShopJob job = job_of_plain_car();
    std::string last;
    for (const auto& tap : facts.car.taps)
        if (tap.system == "base" && carries_signal(tap.circuit.role)) last = tap.code;
    job.plan.tap = last;
    CHECK(planned(facts, job, wish_of(job)).plan.tap == last);
    job.plan.tap = fixture::car_path + "/premium/front-left/amplifier-plug";
    CHECK(path_head(planned(facts, job, wish_of(job)).plan.tap, system_depth) == fixture::car_path + "/base");
}

TEST_CASE("each refusal of a plan says why and what else") {
    JobFacts facts = fixture::plain_job();
    const ShopJob job = job_of_plain_car();
    PlanWish wish = wish_of(job);

    wish.system = unrecorded_system;
    const Refused unknown = refused(facts, job, wish);
    CHECK(unknown.trouble == PlanTrouble::system_unrecorded);
    CHECK(unknown.words == "the sound system of job 7 is not recorded: find out which one it is");

    wish = wish_of(job);
    wish.converter = "olb-twoo";
    const Refused mistyped = refused(facts, job, wish);
    CHECK(mistyped.trouble == PlanTrouble::no_such_converter);
    CHECK(mistyped.words == "there is no converter \"olb-twoo\"");
    CHECK(mistyped.way_out == "did you mean olb-two?");

    wish = wish_of(job);
    wish.system = "surround";
    CHECK(refused(facts, job, wish).trouble == PlanTrouble::not_judged);

    wish = wish_of(job);
    wish.said.turn_on = fixture::car_path + "/base/nowhere/at-all";
    const Refused nowhere = refused(facts, job, wish);
    CHECK(nowhere.trouble == PlanTrouble::no_such_turn_on);
    CHECK(nowhere.words == "nowhere/at-all cannot wake the amplifier on this plan");

    facts.converters.clear();
    facts.amplifier.reset();
    const Refused nothing = refused(facts, job, wish_of(job));
    CHECK(nothing.trouble == PlanTrouble::nothing_fits);
    CHECK(nothing.words == "no converter fits this tap, so nothing was planned");
    CHECK(nothing.way_out.empty());
}
