// When are small parts ordered again?
#include "shelf/small_parts.h"

#include <rapidcheck.h>

#include <catch2/catch.hpp>

#include "shelf_fixture.h"

using namespace tapbook;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

// A fuse used one at a time, every three days for a year.
SmallPart fuses() {
    SmallPart part;
    part.name = part.label = "fuse 30 A";
    for (int day = 1; day < 365; day += 3) part.used.push_back({.days_ago = day, .pieces = 1});
    part.recorded_days = 365;
    part.lead_days = 9;
    part.pack = 10;
    return part;
}

Reorder answer_for(const SmallPart& part, const JobsExpected& jobs = {}) {
    return reorder(std::vector<SmallPart>{part}, jobs, {}, {}).front();
}

}  // namespace

TEST_CASE("three a delivery are ordered again at about five, a pack at a time") {
    // Poisson with mean 3: E[(X - 5)+] is 0.1307, E[(X - 6)+] 0.0507; 5 % of 3 is 0.15. The spread of the belief
    // changes nothing yet.
    SmallPart part = fuses();
    part.on_hand = 6;
    Reorder answer = answer_for(part);
    CHECK_THAT(answer.per_year, WithinRel(121.75, 0.02));
    CHECK(answer.reorder_at == 5);
    CHECK(answer.order == 0);
    part.on_hand = 5;
    CHECK(answer_for(part).order == 10);
    part.on_order = 10;
    CHECK(answer_for(part).order == 0);
    part.on_hand = part.on_order = 0;
    part.pack = 2;
    CHECK(answer_for(part).order == 6);
}

TEST_CASE("the same pieces, but ten at once, are ordered again earlier") {
    SmallPart part = fuses(), by_ten = fuses();
    std::erase_if(by_ten.used, [](const Used& use) { return use.days_ago % 10 != 1; });
    for (Used& use : by_ten.used) use.pieces = 10;
    CHECK(answer_for(by_ten).reorder_at > answer_for(part).reorder_at);
}

TEST_CASE("what was never used is not ordered, and it is said") {
    SmallPart part;
    part.name = "relay";
    const Reorder answer = answer_for(part);
    CHECK(answer.known_by == UseKnownBy::nothing);
    CHECK(answer.order == 0);
}

TEST_CASE("without delivery time nothing is waited for: order when the last is gone") {
    SmallPart part = fuses();
    part.lead_days = 0;
    part.on_hand = 1;
    CHECK(answer_for(part).reorder_at == 0);
    CHECK(answer_for(part).order == 0);
    part.on_hand = 0;
    CHECK(answer_for(part).order == 10);
}

TEST_CASE("after an order more lies there than the point, and never a pack too many") {
    CHECK(rc::check([] {
        SmallPart part = fuses();
        part.pack = *rc::gen::inRange(1, 20);
        part.on_hand = *rc::gen::inRange(0, 20);
        part.lead_days = *rc::gen::inRange(0, 60);
        for (Used& use : part.used) use.pieces = *rc::gen::inRange(0, 4);
        const Reorder answer = answer_for(part);
        RC_ASSERT(answer.order % part.pack == 0);
        if (answer.known_by == UseKnownBy::nothing) return;
        RC_ASSERT(part.on_hand + answer.order > answer.reorder_at);
        RC_ASSERT(answer.order == 0 || part.on_hand + answer.order - part.pack <= answer.reorder_at);
        RC_ASSERT(answer.fill_rate >= 0.95);
    }));
}

TEST_CASE("counts below zero are refused by name") {
    SmallPart part = fuses();
    part.on_hand = -3;
    CHECK_THROWS_WITH(answer_for(part), "fuse 30 A: -3 on the shelf; that cannot be less than nothing. Count it again");
    part = fuses();
    part.pack = 0;
    CHECK_THROWS_WITH(answer_for(part), "fuse 30 A: a pack of 0; a pack holds one at least");
}

TEST_CASE("what a job takes as stated is asked for as often as jobs are expected") {
    // Two a job, 26 jobs a year known for 100 years (so the belief is sharp), 14 days: one job a delivery, Poisson. The
    // pieces have mean 2 and spread 4: gamma-Poisson of shape 2 and mean 2, which is negative binomial (2, 1/2).
    SmallPart part;
    part.name = "lead";
    part.per_job = 2;
    part.lead_days = 14;
    part.pack = 3;
    part.cost_cents = 150;
    const Reorder answer = answer_for(part, {.shape = 2600 * 365.25 / 364, .rate = 100});
    CHECK(answer.known_by == UseKnownBy::stated);
    CHECK_THAT(answer.per_year, WithinRel(52.18, 1e-3));
    // P(n) = (n + 1) / 2^(n + 2), so E[(X - S)+] = (S + 4) / 2^(S + 1): 0.1406 at S = 5 is above 5 % of 2, 0.0781 at 6
    // is below.
    CHECK(answer.reorder_at == 6);
    CHECK(answer.order == 9);
    CHECK(answer.order_cents == 9 * 150);
}

TEST_CASE("what plans take is asked for as often as jobs are expected, whatever the past had") {
    // Ten jobs in the last hundred days, three metres in each second one: 1.5 m a job.
    SmallPart cable;
    cable.name = "cable";
    cable.known_by = UseKnownBy::plans;
    for (int job = 0; job < 10; ++job) {
        cable.planned_jobs_days_ago.push_back(10 * job);
        if (job % 2 == 0) cable.used.push_back({.days_ago = 10 * job, .pieces = 3});
    }
    DemandAsk evenly;
    evenly.half_life_days = 1e9;
    const auto per_year = [&](const JobsExpected& jobs) {
        return reorder(std::vector<SmallPart>{cable}, jobs, evenly, {}).front().per_year;
    };
    CHECK_THAT(per_year({.shape = 40, .rate = 1}), WithinRel(60.0, 1e-6));
    CHECK_THAT(per_year({.shape = 30, .rate = 3}), WithinRel(15.0, 1e-6));
    cable.planned_jobs_days_ago.clear();  // booked, not planned: by the time alone
    CHECK_THAT(per_year({.shape = 40, .rate = 1}), WithinAbs(per_year({.shape = 30, .rate = 3}), 1e-9));
}

TEST_CASE("half a piece a job is one on every other job") {
    // Ones only: the spread is that of Poisson, and the reorder point that of half as many jobs with one each.
    SmallPart half, whole;
    half.name = whole.name = "relay";
    half.per_job = 0.5;
    whole.per_job = 1;
    half.lead_days = whole.lead_days = 30;
    CHECK(answer_for(half, {.shape = 48e6, .rate = 1e6}).reorder_at ==
          answer_for(whole, {.shape = 24e6, .rate = 1e6}).reorder_at);
    CHECK_THAT(answer_for(half, {.shape = 48, .rate = 1}).per_year, WithinRel(24.0, 1e-12));
}

TEST_CASE("jobs without a converter take small parts too") {
    ShelfInput input;
    input.systems = {fixture::system_with("a", 10, {})};
    input.recorded_days = 365;
    for (int day = 10; day < 365; day += 30) input.other_jobs_days_ago.push_back(day);
    const Demand demand = demand_of(input, {});
    const JobsExpected jobs = jobs_expected(input, demand, {});
    // 10 of the forecast; 12 seen in the year, each counted like the year itself: 12 a year but for the edges.
    CHECK_THAT(jobs.shape / jobs.rate, WithinRel(22.0, 0.02));
}

TEST_CASE("without any other word the jobs without a converter are all that is expected") {
    ShelfInput input;
    input.systems.push_back({.id = "a", .label = "a", .jobs_days_ago = {}, .forecast_per_year = {}, .choices = {}});
    input.recorded_days = 365;
    for (int day = 10; day < 365; day += 30) input.other_jobs_days_ago.push_back(day);
    const Demand demand = demand_of(input, {});
    REQUIRE(demand.cold_start);
    const JobsExpected jobs = jobs_expected(input, demand, {});
    CHECK_THAT(jobs.shape / jobs.rate, WithinRel(12.0, 0.02));
}

TEST_CASE("small parts are answered where no converter can be kept") {
    ShelfInput input;
    SmallPart part;
    part.name = part.label = "fuse tap";
    part.per_job = 1;
    part.cost_cents = 90;
    input.small_parts = {part};
    input.other_jobs_days_ago = {3, 9, 20};
    const ShelfPlan plan = plan_shelf(input, fixture::at_most(1));
    CHECK(plan.state == ShelfState::no_systems);
    REQUIRE(plan.small_parts.size() == 1);
    CHECK(plan.small_parts[0].order > 0);
    CHECK(plan.small_order_cents == plan.small_parts[0].order * 90);
}

TEST_CASE("a small part of unknown cost is ordered, and its money is not made up") {
    SmallPart part = fuses();
    CHECK(answer_for(part).order > 0);
    CHECK(answer_for(part).order_cents == std::nullopt);
    part.on_hand = 50;
    CHECK(answer_for(part).order_cents == 0);
}

TEST_CASE("two small parts of one name and less than nothing a job are refused") {
    const std::vector<SmallPart> twice = {fuses(), fuses()};
    CHECK_THROWS_WITH(reorder(twice, {}, {}, {}), "fuse 30 A: two small parts of one name; give one another name");
    SmallPart part = fuses();
    part.per_job = -1;
    CHECK_THROWS_WITH(answer_for(part), "fuse 30 A: a job cannot take less than nothing of it");
    part = fuses();
    part.on_order = -1;
    CHECK_THROWS_WITH(answer_for(part), "fuse 30 A: -1 on order; that cannot be less than nothing. Count it again");
    part = fuses();
    part.lead_days = -2;
    CHECK_THROWS_WITH(answer_for(part),
                      "fuse 30 A: -2 days of delivery; that cannot be less than nothing. Count it again");
}
