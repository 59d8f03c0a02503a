// Does the level keep its promise, and do invented jobs agree with the formula?
#include "shelf/levels.h"

#include <rapidcheck.h>

#include <catch2/catch.hpp>
#include <cmath>

#include "shelf/improve_levels.h"
#include "shelf/job_stream.h"
#include "shelf/orders.h"
#include "shelf_fixture.h"

using namespace tapbook;
using namespace tapbook::fixture;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

TEST_CASE("the chances of all counts sum to 1, their mean is the mean, and more is never less likely to be enough") {
    CHECK(rc::check([] {
        const double shape = *rc::gen::inRange(1, 4000) / 100.0, mean = *rc::gen::inRange(1, 6000) / 100.0;
        const Counts counts = *rc::gen::arbitrary<bool>() ? poisson_counts(mean) : gamma_poisson_counts(shape, mean);
        RC_ASSERT(std::abs(counts.mean() - mean) < 1e-9 * (1 + mean));
        RC_ASSERT(std::abs(counts.short_of(0) - mean) < 1e-9 * (1 + mean));
        double before = 0;
        for (int n = 0; n < 400; ++n) {
            RC_ASSERT(counts.at_most(n) >= before);
            RC_ASSERT(std::abs(counts.at_most(n) - before - counts.exactly(n)) < 1e-12);
            before = counts.at_most(n);
        }
    }));
}

TEST_CASE("a level is the smallest that keeps the wanted fill rate, in 5,000 random demands counted one by one") {
    std::mt19937 random(5);
    for (int trial = 0; trial < 5000; ++trial) {
        const double mean = static_cast<double>(random() % 3000) / 100,
                     wanted = 0.5 + static_cast<double>(random() % 49) / 100;
        const DeliveryDemand demand{
            .shape = 0.2 + static_cast<double>(random() % 500) / 100, .rate = 1, .years = mean / 5};
        const Counts seen = demand.as_jobs_see();
        int slow = 0;
        double chance = 0;
        for (; chance < wanted; ++slow) chance += seen.exactly(slow);
        REQUIRE(fill_level(seen, wanted) == std::max(slow, 1));
        int ratio = 0;
        for (chance = seen.exactly(0); chance < wanted; ++ratio) chance += seen.exactly(ratio + 1);
        REQUIRE(newsvendor_level(seen, 1 - wanted, wanted) == ratio);
    }
}

TEST_CASE("the newsvendor's level is the cheapest of all levels") {
    CHECK(rc::check([] {
        const Counts asked = poisson_counts(*rc::gen::inRange(0, 2000) / 100.0);
        const double holding = *rc::gen::inRange(1, 100), shortage = *rc::gen::inRange(1, 1000);
        const int level = newsvendor_level(asked, holding, shortage);
        const double cost = newsvendor_cost(asked, level, holding, shortage);
        for (int other = 0; other < 60; ++other)
            RC_ASSERT(newsvendor_cost(asked, other, holding, shortage) >= cost - 1e-9 * (1 + cost));
    }));
}

TEST_CASE("nothing asked for keeps nothing, and no delivery time keeps one") {
    const LevelsAsk ask;
    CHECK(level_of({.shape = 0, .rate = 2, .years = 0.02}, ask, 1000) == 0);
    CHECK(level_of({.shape = 30, .rate = 2, .years = 0}, ask, 1000) == 1);
    LevelsAsk by_cost;
    by_cost.lost_job_cents = 5000;
    CHECK(level_of({.shape = 30, .rate = 2, .years = 0}, by_cost, 1000) == 1);
}

TEST_CASE("where no model helps another, invented jobs find a part as often as the formula says") {
    for (const int keep : {1, 2, 4}) {
        const DeliveryDemand demand{.shape = 6, .rate = 0.5, .years = 0.1};
        const JobStream stream({{.models = {0}, .shape = 6}},
                               {.rate = 0.5, .counted_years = 1, .before_years = 0.1, .jobs = 60'000, .seed = 3});
        const StreamResult result = stream.run(std::vector<int>{keep}, std::vector<double>{0.1});
        const double missed = demand.jobs_per_year() * (1 - fill_rate(demand.as_jobs_see(), keep));
        INFO("keep " << keep << ": " << result.missed_per_year << " +- " << result.standard_error << " against "
                     << missed);
        CHECK(std::abs(result.missed_per_year - missed) < 4 * result.standard_error);
        CHECK(result.standard_error < 0.05 * demand.jobs_per_year());
    }
}

TEST_CASE(
    "two models that stand in for each other need less than each alone, and more misses never come of more parts") {
    const std::vector<KeptGroup> groups = {{.models = {0, 1}, .shape = 20}, {.models = {1, 0}, .shape = 20}};
    const JobStream stream(groups, {.rate = 1, .counted_years = 1, .before_years = 0.3, .jobs = 20'000, .seed = 4});
    const std::vector<LevelModel> models = {{.delivery_years = 0.1, .cost_cents = 3000},
                                            {.delivery_years = 0.1, .cost_cents = 2000}};
    const DeliveryDemand alone{.shape = 20, .rate = 1, .years = 0.1};
    const LevelsAsk ask;
    const int level = level_of(alone, ask, 3000);
    const std::vector<int> levels = improve_levels({level, level}, models, stream, ask);
    CHECK(levels[0] + levels[1] < 2 * level);
    const std::vector<double> delivery = {0.1, 0.1};
    CHECK(stream.run(levels, delivery).fill_rate >= ask.fill_rate);
    CHECK(stream.run(std::vector<int>{levels[0] + 1, levels[1]}, delivery).fill_rate >=
          stream.run(levels, delivery).fill_rate);
    // Every cheaper shelf that keeps the promise would have been the answer of a full search: none is more than one
    // step away.
    const double cost = 3000.0 * levels[0] + 2000.0 * levels[1];
    for (int a = 1; a <= level; ++a)
        for (int b = 1; b <= level; ++b) {
            if (a + 1 < levels[0] || b + 1 < levels[1] || 3000.0 * a + 2000.0 * b >= cost ||
                (a > levels[0] && b > levels[1]))
                continue;
            const StreamResult cheaper = stream.run(std::vector<int>{a, b}, delivery);
            const double jobs = cheaper.missed_per_year / (1 - cheaper.fill_rate);
            if (a <= levels[0] || b <= levels[1])
                CHECK(cheaper.fill_rate - 2 * cheaper.standard_error / jobs < ask.fill_rate);
        }
}

TEST_CASE("the packs bought for a budget serve as many jobs as the best of all ways to spend it, 500 times") {
    std::mt19937 random(6);
    for (int trial = 0; trial < 500; ++trial) {
        std::vector<OrderLine> lines(1 + random() % 3);
        for (OrderLine& line : lines) {
            line = {.keep = static_cast<int>(random() % 7),
                    .there = static_cast<int>(random() % 3),
                    .pack = 1 + static_cast<int>(random() % 2),
                    .pack_cents = 100 * static_cast<int>(random() % 6),
                    .jobs_per_year = static_cast<double>(random() % 40),
                    .seen_by_jobs = poisson_counts(static_cast<double>(random() % 300) / 100)};
        }
        const std::int64_t budget = 100 * static_cast<int>(random() % 25);
        const auto jobs = [&](const std::vector<int>& packs) {
            double sum = 0;
            for (std::size_t i = 0; i < packs.size(); ++i)
                sum += lines[i].jobs_per_year *
                       fill_rate(lines[i].seen_by_jobs, lines[i].there + packs[i] * lines[i].pack);
            return sum;
        };
        const auto cents = [&](const std::vector<int>& packs) {
            std::int64_t sum = 0;
            for (std::size_t i = 0; i < packs.size(); ++i) sum += packs[i] * lines[i].pack_cents;
            return sum;
        };
        const std::vector<int> bought = packs_to_order(lines, budget);
        REQUIRE(cents(bought) <= budget);
        double best = 0;
        std::vector<int> trial_packs(lines.size());
        for (bool more = true; more;) {
            if (cents(trial_packs) <= budget) best = std::max(best, jobs(trial_packs));
            more = false;
            for (std::size_t i = 0; i < lines.size() && !more; ++i) {
                more = trial_packs[i]++ < packs_missing(lines[i]);
                if (!more) trial_packs[i] = 0;
            }
        }
        REQUIRE_THAT(jobs(bought), WithinAbs(best, 1e-9));
    }
}
