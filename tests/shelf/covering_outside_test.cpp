// Are known covering problems answered with their known values? The triples of stn9 are written out as in the
// OR-Library's Steiner instances; stn15 and stn27 are built by the same construction of their designs. Optima:
// published with the instances, and proved again by enumeration, CBC and GLPK.
#include <catch2/catch.hpp>

#include "shelf_fixture.h"

using namespace tapbook;
using namespace tapbook::fixture;
using Catch::Matchers::WithinAbs;

namespace {

const std::vector<std::vector<int>> stn9 = {{2, 3, 4}, {1, 3, 5}, {1, 2, 6}, {5, 6, 7}, {4, 6, 8}, {4, 5, 9},
                                            {1, 8, 9}, {2, 7, 9}, {3, 7, 8}, {1, 4, 7}, {2, 5, 8}, {3, 6, 9}};

// Columns are the points, rows the triples: which triples does each point lie in?
std::vector<std::vector<int>> rows_of_points(const std::vector<std::vector<int>>& triples, int points) {
    std::vector<std::vector<int>> rows(static_cast<std::size_t>(points));
    for (std::size_t row = 0; row < triples.size(); ++row)
        for (const int point : triples[row])
            rows[static_cast<std::size_t>(point - 1)].push_back(static_cast<int>(row + 1));
    return rows;
}

std::vector<double> weights(std::size_t rows, bool rising) {
    std::vector<double> all;
    for (std::size_t i = 0; i < rows; ++i) all.push_back(rising ? static_cast<double>(i + 1) : 1);
    return all;
}

PlanAsk whole_share() {
    PlanAsk ask;
    ask.models.share = 1;
    return ask;
}

std::vector<std::vector<int>> from_one(std::vector<std::vector<int>> triples) {
    for (auto& triple : triples)
        for (int& point : triple) ++point;
    return triples;
}

}  // namespace

TEST_CASE("the Steiner problem of 9 points needs 5 models for its 12 triples") {
    const ShelfPlan plan = plan_shelf(input_of(rows_of_points(stn9, 9), weights(12, false)), whole_share());
    CHECK(plan.models.size() == 5);
    CHECK(plan.proved);
    CHECK(plan.reached == true);
    CHECK_THAT(plan.covered_share, WithinAbs(1, 1e-12));
}

TEST_CASE("the Steiner problem of 27 points, built from 9, needs 18 models") {
    std::vector<std::vector<int>> from_zero = stn9;
    for (auto& triple : from_zero)
        for (int& point : triple) --point;
    const auto triples = from_one(tripled(from_zero, 9));
    REQUIRE(triples.size() == 117);
    const ShelfPlan plan = plan_shelf(input_of(rows_of_points(triples, 27), weights(117, false)), whole_share());
    CHECK(plan.models.size() == 18);
}

TEST_CASE("the Steiner problem of 15 points, built from 5 times 3, needs 9 models") {
    // The construction of Bose for 15 = 3 * 5 points: an idempotent commutative square of order 5, i * j = (i + j) / 2
    // modulo 5.
    std::vector<std::vector<int>> triples;
    for (int i = 0; i < 5; ++i) triples.push_back({i, i + 5, i + 10});
    for (int i = 0; i < 5; ++i)
        for (int j = i + 1; j < 5; ++j)
            for (int third = 0; third < 3; ++third)
                triples.push_back({i + 5 * third, j + 5 * third, (i + j) * 3 % 5 + 5 * ((third + 1) % 3)});
    REQUIRE(triples.size() == 35);
    const ShelfPlan plan =
        plan_shelf(input_of(rows_of_points(from_one(triples), 15), weights(35, false)), whole_share());
    CHECK(plan.models.size() == 9);
    CHECK(plan.proved);
}

TEST_CASE("with row i weighing i, so many points of stn9 cover so much") {
    // By enumeration: 33, 58, 73, 77, 78 of 78.
    const double best[] = {0, 33, 58, 73, 77, 78};
    const ShelfInput input = input_of(rows_of_points(stn9, 9), weights(12, true));
    for (int models = 0; models <= 5; ++models) {
        const ShelfPlan plan = plan_shelf(input, at_most(models));
        CHECK_THAT(plan.covered_share * 78, WithinAbs(best[models], 1e-6));
        CHECK(plan.proved);
        for (const CurvePoint& point : plan.curve)
            if (point.models <= 5) CHECK_THAT(point.covered_share * 78, WithinAbs(best[point.models], 1e-6));
    }
    CHECK(names_of(plan_shelf(input, at_most(1))) == std::vector<std::string>{"ai"});              // point 9
    CHECK(names_of(plan_shelf(input, at_most(2))) == std::vector<std::string>{"ah", "ai"});        // 8, 9
    CHECK(names_of(plan_shelf(input, at_most(3))) == std::vector<std::string>{"aa", "ah", "ai"});  // 1, 8, 9
}

TEST_CASE("where taking the largest first ends at 5 rows, 6 are found") {
    // By hand: {1,2,4,5} first leaves one of 3 and 6 open; {1,2,3} with {4,5,6} covers all.
    const ShelfPlan plan = plan_shelf(input_of({{1, 2, 3}, {4, 5, 6}, {1, 2, 4, 5}}, weights(6, false)), at_most(2));
    CHECK(names_of(plan) == std::vector<std::string>{"aa", "ab"});
    CHECK_THAT(plan.covered_share, WithinAbs(1, 1e-12));
    CHECK(plan.proved);
}
