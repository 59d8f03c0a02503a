// Is the sum that is shown the sum that was graded? The shown one is counted apart from the graded one; both must
// agree.
#include "evidence/reckoning.h"

#include <catch2/catch.hpp>

#include "evidence/ledgers.h"
#include "evidence/notes.h"

using namespace tapbook;
using ledgers::known;
using ledgers::vote;

namespace {

Reckoning reckon(const std::vector<Vote>& votes) {
    return reckoning_of(votes, known(), standing_of(votes, known()));
}

// The worked case of the grading rules: white to 2015, brown from 2017.
std::vector<Vote> worked_case() {
    using enum Method;
    return {vote(1, "white", metered, "S1", "a", 2013), vote(2, "white", seen, "S1", "b", 2014),
            vote(3, "white", metered, "S2", "c", 2014), vote(4, "white", seen, "S3", "d", 2015),
            vote(5, "brown", metered, "S2", "e", 2017), vote(6, "brown", scoped, "S4", "f", 2017),
            vote(7, "brown", seen, "S5", "g", 2018),    vote(8, "white", copied, "S6", ""),
            vote(9, "white", copied, "S7", "")};
}

}  // namespace

TEST_CASE("the worked case adds up as it does by hand: 10 and 9 points, gain 9, penalty 3.46") {
    const Reckoning sum = reckon(worked_case());
    REQUIRE(sum.values.size() == 2);
    CHECK(sum.values[0].value == "white");
    CHECK(sum.values[0].points == 10);  // S1 3+1, S2 3, S3 2, one sheet 1
    CHECK(sum.values[0].paper_sources == 1);
    CHECK(sum.values[0].paper_points == 1);
    REQUIRE(sum.values[0].shops.size() == 3);
    CHECK(sum.values[0].shops[0].shop == "S1");
    CHECK(sum.values[0].shops[0].points == 4);
    CHECK(sum.values[0].shops[0].cars == 2);
    CHECK(sum.values[1].points == 9);  // 3 + 4 + 2
    REQUIRE(sum.year_test);
    CHECK(sum.year_test->best.gain == 9);
    CHECK(sum.year_test->penalty == Approx(3.46).margin(0.01));  // log3 of 45
    CHECK(sum.year_test->splits);
    CHECK(sum.year_test->best.last_old_year == 2015);
    CHECK(sum.year_test->best.first_new_year == 2017);
}

TEST_CASE("a shop's cap and the cap on paper are marked where they bite") {
    std::vector<Vote> votes;
    for (int car = 0; car < 6; ++car)
        votes.push_back(vote(car, "white", Method::metered, "S1", std::to_string(car), 2014));
    for (int sheet = 0; sheet < 3; ++sheet) {
        votes.push_back(vote(10 + sheet, "white", Method::copied, "S2", ""));
        votes.back().source = "sheet " + std::to_string(sheet);
    }
    const Reckoning sum = reckon(votes);
    CHECK(sum.values[0].shops[0].points == 5);
    CHECK(sum.values[0].shops[0].capped);
    CHECK(sum.values[0].paper_points == 2);
    CHECK(sum.values[0].paper_capped);
    CHECK(sum.lead == 7);
    CHECK(sum.has_share);
    CHECK_FALSE(sum.year_test);
}

TEST_CASE("shops that are not on the list stand together and are counted as one") {
    const Reckoning sum =
        reckon({vote(1, "white", Method::metered, "X1", "a"), vote(2, "white", Method::seen, "X2", "b"),
                vote(3, "white", Method::seen, "S1", "c")});
    REQUIRE(sum.values[0].shops.size() == 2);
    CHECK(sum.values[0].shops[0].shop.empty());
    CHECK(sum.values[0].shops[0].shops == 2);
    CHECK(sum.values[0].shops[0].points == 4);
}

TEST_CASE("over random ledgers the shown sums are the graded ones, value by value") {
    ledgers::Dice dice(20260502);
    for (int round = 0; round < 3000; ++round) {
        const auto votes = round % 2 == 0 ? ledgers::any_votes(dice, 14) : ledgers::any_changed_votes(dice, 20);
        const Reckoning sum = reckon(votes);
        const auto& claims = sum.standing.claims;
        REQUIRE(sum.values.size() == claims.size());
        for (std::size_t i = 0; i < claims.size(); ++i) {
            CHECK(sum.values[i].value == claims[i].value);
            CHECK(sum.values[i].points == claims[i].points);
            int cars = 0;
            for (const auto& share : sum.values[i].shops) cars += share.cars;
            CHECK(cars == claims[i].cars);
        }
        CHECK((sum.year_test && sum.year_test->splits) == (sum.standing.grade == Grade::year_split));
        if (sum.standing.grade == Grade::proven) {
            CHECK(sum.lead >= lead_to_prove);
            CHECK(sum.has_share);
        }
    }
}

TEST_CASE("the votes on a pair and its polarity are those that its standing counted") {
    ledgers::Dice dice(7);
    for (int round = 0; round < 1500; ++round) {
        const auto notes = ledgers::any_pair_notes(dice, 8);
        const PairStanding standing = pair_standing(notes, ConnectorSide::radio, known());
        for (const Question question : questions_of(NoteKind::pair)) {
            const auto votes = votes_on(question, notes, ConnectorSide::radio, standing.pair.value);
            const Standing again = standing_of(votes, known());
            const Standing& graded = question == Question::pair ? standing.pair : standing.polarity;
            CHECK(again.grade == graded.grade);
            CHECK(again.value == graded.value);
            CHECK(again.claims.size() == graded.claims.size());
        }
    }
}
