// Is the demand what the jobs, the forecast and the stated belief say together?
#include "shelf/demand.h"

#include <rapidcheck.h>

#include <catch2/catch.hpp>
#include <cmath>

#include "shelf_fixture.h"

using namespace tapbook;
using namespace tapbook::fixture;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

ShelfInput jobs_of(std::vector<std::vector<int>> days_ago) {
    ShelfInput input;
    for (auto& days : days_ago) {
        ShelfSystem& one = input.systems.emplace_back(system_with("s" + std::to_string(input.systems.size()), 0, {}));
        one.forecast_per_year.reset();
        one.jobs_days_ago = std::move(days);
    }
    return input;
}

double all_jobs(const Demand& demand) {
    double sum = 0;
    for (const SystemDemand& one : demand.systems) sum += one.jobs_per_year;
    return sum;
}

}  // namespace

TEST_CASE("evenly spread jobs of a year come out as so many a year, whatever the half-life") {
    // 73 jobs, one every five days; the newest is half a day too young, which a short half-life shows.
    std::vector<int> days;
    for (int day = 2; day < 365; day += 5) days.push_back(day);
    ShelfInput input = jobs_of({days, {}});
    input.recorded_days = 365;
    for (const double life : {30.0, 365.0, 100000.0}) {
        DemandAsk ask;
        ask.half_life_days = life;
        CHECK_THAT(all_jobs(demand_of(input, ask)), WithinRel(73 / 365.0 * 365.25, 0.02));
    }
}

TEST_CASE("a job of a half-life ago counts half of one of today") {
    CHECK(worth_of_job(0, 200) == 1);
    CHECK(worth_of_job(200, 200) == 0.5);
    CHECK(worth_of_job(400, 200) == 0.25);
    CHECK(worth_of_job(-14, 200) == 1);  // booked
    CHECK_THAT(worth_in_years(365.25, 1e12), WithinAbs(1, 1e-6));
}

TEST_CASE("the belief spreads jobs over systems never seen and takes none away in all") {
    ShelfInput input = jobs_of({std::vector<int>(20, 0), {}, {}, {}, {}});
    input.recorded_days = 365;
    DemandAsk ask;
    ask.half_life_days = 1e9;
    ask.prior_jobs = 5;
    const Demand demand = demand_of(input, ask);
    CHECK_THAT(all_jobs(demand), WithinRel(20 / 365.0 * 365.25, 1e-6));
    CHECK_THAT(demand.systems[1].jobs_per_year / all_jobs(demand), WithinAbs(1.0 / 25, 1e-9));
    CHECK_THAT(demand.systems[0].jobs_per_year / all_jobs(demand), WithinAbs(21.0 / 25, 1e-9));
    CHECK_FALSE(demand.cold_start);
}

TEST_CASE("a forecast stands as it is, in place of the jobs or beside them") {
    ShelfInput input = jobs_of({std::vector<int>(10, 5), std::vector<int>(10, 5)});
    input.systems[0].forecast_per_year = 40;
    DemandAsk ask;
    CHECK_THAT(demand_of(input, ask).systems[0].jobs_per_year, WithinRel(40, 1e-9));
    ask.forecast = ForecastUse::adds;
    const double beside = demand_of(input, ask).systems[0].jobs_per_year;
    input.systems[0].forecast_per_year.reset();
    input.systems[1].forecast_per_year = 1;
    CHECK(beside > 40);
}

TEST_CASE("without job and forecast every system is alike, and the plan says so") {
    const Demand demand = demand_of(jobs_of({{}, {}, {}, {}}), {});
    CHECK(demand.cold_start);
    for (const SystemDemand& one : demand.systems) CHECK_THAT(one.jobs_per_year, WithinRel(24 / 4.0, 1e-9));
}

TEST_CASE("one job on the first day is not one a day") {
    const Demand demand = demand_of(jobs_of({{0}}), {});
    CHECK(all_jobs(demand) < 365.25 / shortest_record_days * 1.05);
}

TEST_CASE("more jobs never lower a system's demand, and the more there are the narrower is what is likely") {
    CHECK(rc::check([] {
        const int jobs = *rc::gen::inRange(1, 40);
        std::vector<int> days;
        for (int i = 0; i < jobs; ++i) days.push_back(*rc::gen::inRange(0, 700));
        ShelfInput input = jobs_of({days, {10, 20}});
        input.recorded_days = 700;
        const Demand before = demand_of(input, {});
        input.systems[0].jobs_days_ago.push_back(*rc::gen::inRange(0, 700));
        const Demand after = demand_of(input, {});
        RC_ASSERT(after.systems[0].jobs_per_year > before.systems[0].jobs_per_year);
        const Likely wide = likely_jobs(before.systems[0].shape, before.rate);
        RC_ASSERT(wide.low < wide.mean && wide.mean < wide.high);
    }));
    const Likely few = likely_jobs(2, 1), many = likely_jobs(200, 100);
    CHECK(many.high - many.low < few.high - few.low);
}

TEST_CASE("ten jobs in a year mean 5.4 to 15.7 a year, as a table of the gamma distribution says") {
    // Half of the chi-squared distribution with 20 degrees of freedom: 10.851 and 31.410 (5 % and 95 %, printed
    // tables).
    const Likely ten = likely_jobs(10, 1);
    CHECK_THAT(ten.low, WithinAbs(10.851 / 2, 5e-4));
    CHECK_THAT(ten.high, WithinAbs(31.410 / 2, 5e-4));
    CHECK(ten.mean == 10);
}
