// Are levels, fill rates and shortages those that others publish or compute? Newsvendor rows: Snyder and Shen,
// Fundamentals of Supply Chain Theory, 2nd edition, by way of the worked examples of the open-source library stockpyl.
// Base-stock rows: Poisson tables computed outside.
#include "shelf/levels.h"

#include <catch2/catch.hpp>

#include "shelf/normal_demand.h"
#include "shelf_fixture.h"

using namespace tapbook;
using namespace tapbook::fixture;
using Catch::Matchers::WithinAbs;

TEST_CASE("the newsvendor's levels and costs are those of Snyder and Shen") {
    const Counts fifty = poisson_counts(50);
    CHECK(newsvendor_level(fifty, 0.18, 0.70) == 56);
    CHECK_THAT(newsvendor_cost(fifty, 56, 0.18, 0.70), WithinAbs(1.797235211809178, 1e-9));
    CHECK_THAT(fifty.at_most(56), WithinAbs(0.822117, 1e-6));
    CHECK_THAT(fifty.at_most(55), WithinAbs(0.784470, 1e-6));
    const Counts six = poisson_counts(6);
    CHECK(newsvendor_level(six, 1, 4) == 8);
    CHECK_THAT(newsvendor_cost(six, 8, 1, 4), WithinAbs(3.5701069457709416, 1e-9));
    CHECK_THAT(six.at_most(8), WithinAbs(0.847237, 1e-6));
    CHECK_THAT(six.at_most(7), WithinAbs(0.743980, 1e-6));
}

TEST_CASE("with normal demand the newsvendor's levels and costs are those of Snyder and Shen to the published digits") {
    // Example 4.3: normal 50, 8; holding 0.18, short 0.70.
    const NormalDemand papers(50, 8);
    CHECK_THAT(0.70 / (0.70 + 0.18), WithinAbs(0.795455, 1e-6));
    const double best = newsvendor_level(papers, 0.18, 0.70);
    CHECK_THAT(best, WithinAbs(56.60395592743389, 1e-6));
    CHECK_THAT(newsvendor_cost(papers, best, 0.18, 0.70), WithinAbs(1.997605193176645, 1e-6));
    CHECK_THAT(newsvendor_cost(papers, 40.0, 0.18, 0.70), WithinAbs(7.356131552870388, 1e-6));
    CHECK_THAT(newsvendor_cost(papers, 53.0, 0.18, 0.70), WithinAbs(2.223748044859164, 1e-6));
    CHECK_THAT(newsvendor_cost(papers, 60.0, 0.18, 0.70), WithinAbs(2.156131552870387, 1e-6));
    const NormalDemand more(120, 10);
    const double level = newsvendor_level(more, 2, 18);
    CHECK_THAT(level, WithinAbs(132.815515655446, 1e-6));
    CHECK_THAT(newsvendor_cost(more, level, 2, 18), WithinAbs(35.09966638649737, 1e-6));
    // The explicit form: sold at 1, bought at 0.3, given back at 0.12. One left over loses 0.18, one short 0.70; profit
    // is the margin on all that is asked for, less that cost.
    CHECK_THAT((1 - 0.3) * 50 - newsvendor_cost(papers, best, 0.3 - 0.12, 1 - 0.3),
               WithinAbs(33.002394806823354, 1e-6));
}

TEST_CASE("a normal demand of so many has half of it below its mean, and what is short is the area above") {
    const NormalDemand demand(12, 3);
    CHECK_THAT(demand.at_most(12), WithinAbs(0.5, 1e-15));
    CHECK_THAT(demand.least_holding(0.5), WithinAbs(12, 1e-12));
    for (const double quantity : {2.0, 9.0, 12.0, 14.5, 20.0}) {
        double area = 0;  // of 1 - F from there on, in steps of a thousandth
        for (double at = quantity + 0.0005; at < 60; at += 0.001) area += (1 - demand.at_most(at)) * 0.001;
        CHECK_THAT(demand.short_of(quantity), WithinAbs(area, 1e-6));
        CHECK_THAT(demand.least_holding(demand.at_most(quantity)), WithinAbs(quantity, 1e-9));
    }
}

TEST_CASE("what is asked for beyond a level is the published Poisson loss") {
    const Counts fifteen = poisson_counts(15);
    CHECK_THAT(fifteen.short_of(18), WithinAbs(0.5176095282584724, 1e-9));
    CHECK_THAT(18 - fifteen.mean() + fifteen.short_of(18), WithinAbs(3.5176095282584723, 1e-9));
}

TEST_CASE("a table of chances has its level where the sum first reaches the ratio") {
    // Problem 4.7b: 1 to 8 with these chances, ratio 2/3; F(4) = 0.60, F(5) = 0.75.
    const Counts table({0, 0.25, 0.05, 0.1, 0.2, 0.15, 0.1, 0.1, 0.05});
    CHECK(newsvendor_level(table, 5e5, 1e6) == 5);
}

TEST_CASE("fill rate, shortage and stock of a base stock are those of the table") {
    struct Row {
        double mean;
        int level;
        double fill, missing, on_hand;
    };
    const Row rows[] = {{0.5, 1, 0.606531, 0.106531, 0.606531}, {0.5, 2, 0.909796, 0.016327, 1.516327},
                        {0.5, 3, 0.985612, 0.001939, 2.501939}, {1, 1, 0.367879, 0.367879, 0.367879},
                        {1, 2, 0.735759, 0.103638, 1.103638},   {1, 4, 0.981012, 0.004349, 3.004349},
                        {2, 3, 0.676676, 0.218018, 1.218018},   {2, 4, 0.857123, 0.075141, 2.075141},
                        {2, 5, 0.947347, 0.022488, 3.022488},   {2, 6, 0.983436, 0.005924, 4.005924},
                        {3, 6, 0.916082, 0.050703, 3.050703},   {3, 7, 0.966491, 0.017194, 4.017194},
                        {4, 8, 0.948866, 0.033627, 4.033627},   {10, 15, 0.916542, 0.103479, 5.103479}};
    for (const Row& row : rows) {
        INFO("mean " << row.mean << ", level " << row.level);
        const Counts asked = poisson_counts(row.mean);
        CHECK_THAT(fill_rate(asked, row.level), WithinAbs(row.fill, 1e-6));
        CHECK_THAT(asked.short_of(row.level), WithinAbs(row.missing, 1e-6));
        CHECK_THAT(row.level - asked.mean() + asked.short_of(row.level), WithinAbs(row.on_hand, 1e-6));
    }
    CHECK_THAT(fill_rate(poisson_counts(10), 16), WithinAbs(0.951260, 1e-6));
}

TEST_CASE("95 % of the jobs want one part more than 95 % of the deliveries") {
    struct Row {
        double mean;
        int fill, cycle;
    };
    for (const Row& row : {Row{0.5, 3, 2}, Row{1, 4, 3}, Row{2, 6, 5}, Row{3, 7, 6}, Row{4, 9, 8}, Row{10, 16, 15}}) {
        CHECK(fill_level(poisson_counts(row.mean), 0.95) == row.fill);
        CHECK(poisson_counts(row.mean).least_holding(0.95) == row.cycle);
    }
}
