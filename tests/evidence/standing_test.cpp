// Grades case by case. Expected values follow from the rules of the evidence chapter, counted by hand.
#include "evidence/standing.h"

#include <catch2/catch.hpp>

#include "evidence/ledgers.h"

using namespace tapbook;
using ledgers::id_of;
using ledgers::known;
using ledgers::vote;

namespace {

std::vector<Vote> white_or_brown() {
    return {vote(1, "white", Method::metered, "S1", "a", 2013), vote(2, "white", Method::seen, "S1", "b", 2014),
            vote(3, "white", Method::metered, "S2", "c", 2014), vote(4, "white", Method::seen, "S3", "d", 2015),
            vote(5, "brown", Method::metered, "S2", "e", 2017), vote(6, "brown", Method::scoped, "S4", "f", 2017),
            vote(7, "brown", Method::seen, "S5", "g", 2018),    vote(8, "white", Method::copied, "S6", ""),
            vote(9, "white", Method::copied, "S7", "")};
}

Grade grade_of(const std::vector<Vote>& votes, std::optional<int> year = {}) {
    return standing_of(votes, known(), year).grade;
}

}  // namespace

TEST_CASE("in the worked case white has 10 points, brown 9, and over all years nothing is picked") {
    const auto standing = standing_of(white_or_brown(), known());
    REQUIRE(standing.claims.size() == 2);
    const Claim &white = standing.claims[0], &brown = standing.claims[1];
    CHECK(white.value == "white");
    CHECK(white.points == 10);
    CHECK(white.cars == 4);
    CHECK(white.shops == 3);
    CHECK(white.measured_cars == 2);
    CHECK(white.notes == 6);
    CHECK(white.first_year == 2013);
    CHECK(white.last_year == 2015);
    CHECK(white.best_method == "metered");
    CHECK(brown.points == 9);
    CHECK(brown.cars == 3);
    CHECK(brown.best_method == "scoped");
    CHECK(brown.best_method_cars == 1);
    CHECK(standing.grade == Grade::mixed);
    CHECK_FALSE(standing.value);
}

TEST_CASE("without a note a fact is BLANK, or PULLED when all its notes were withdrawn") {
    CHECK(standing_of({}, known()).grade == Grade::blank);
    CHECK(standing_of({}, known(), {}, 2).grade == Grade::pulled);
    CHECK(standing_of(std::vector{vote(1, "white", Method::seen, "S1", "a")}, known(), {}, 2).grade == Grade::one_car);
}

TEST_CASE("copied notes alone are PAPER, one car is ONE CAR, two cars are MATCHED, from one shop or two") {
    CHECK(grade_of({vote(1, "white", Method::copied, "S1", "a"), vote(2, "white", Method::copied, "S2", "b")}) ==
          Grade::paper);
    CHECK(grade_of({vote(1, "white", Method::seen, "S1", "a"), vote(2, "white", Method::copied, "S2", "b")}) ==
          Grade::one_car);
    CHECK(grade_of({vote(1, "white", Method::seen, "S1", "a"), vote(2, "white", Method::seen, "S1", "b")}) ==
          Grade::matched);
    CHECK(grade_of({vote(1, "white", Method::seen, "S1", "a"), vote(2, "white", Method::seen, "S2", "a")}) ==
          Grade::matched);  // tokens are salted by shop: equal ones are two cars
}

TEST_CASE("one car in one shop counts once, by its best method") {
    const auto standing =
        standing_of(std::vector{vote(1, "white", Method::seen, "S1", "a"), vote(2, "white", Method::scoped, "S1", "a"),
                                vote(3, "white", Method::metered, "S1", "a")},
                    known());
    CHECK(standing.grade == Grade::one_car);
    CHECK(standing.claims[0].points == 4);
    CHECK(standing.claims[0].notes == 3);
}

TEST_CASE("cars that were not told apart count as one, and as none beside a told one") {
    std::vector votes = {vote(1, "white", Method::seen, "S1", ""), vote(2, "white", Method::metered, "S1", "")};
    CHECK(grade_of(votes) == Grade::one_car);
    votes.push_back(vote(3, "white", Method::seen, "S1", "a"));
    CHECK(grade_of(votes) == Grade::one_car);
    CHECK(standing_of(votes, known()).claims[0].points == 3);
    votes.push_back(vote(4, "white", Method::seen, "S1", "b"));
    CHECK(grade_of(votes) == Grade::matched);
}

TEST_CASE("copied notes count once a source and never above 2 in all") {
    std::vector<Vote> votes;
    const auto points = [&] { return standing_of(votes, known()).claims[0].points; };
    for (const auto* source : {"sheet A", "Sheet  a", "forum", "memory"}) {
        Note note;
        note.id = id_of(static_cast<int>(votes.size()));
        note.shop = "S" + std::to_string(votes.size() + 1);
        note.source = source;
        votes.push_back(vote_of(note, "white"));
        if (votes.size() == 2) CHECK(points() == 1);
    }
    CHECK(points() == 2);
}

TEST_CASE("the next value disputes the leading one from 3 points on, or by a tie") {
    std::vector votes = {vote(1, "white", Method::scoped, "S1", "a"), vote(2, "white", Method::seen, "S2", "b"),
                         vote(3, "tan", Method::seen, "S3", "c")};
    CHECK(grade_of(votes) == Grade::matched);  // 6 against 2
    votes.push_back(vote(4, "tan", Method::seen, "S3", "d"));
    CHECK(grade_of(votes) == Grade::mixed);  // 6 against 3
    CHECK(grade_of({vote(1, "white", Method::seen, "S1", "a"), vote(2, "tan", Method::seen, "S2", "b")}) ==
          Grade::mixed);  // 2 against 2
    CHECK(grade_of({vote(1, "white", Method::copied, "S1", "a"), vote(2, "tan", Method::copied, "S2", "b")}) ==
          Grade::mixed);  // 1 against 1
}

TEST_CASE("paper never ties a value that was looked at, which always leads") {
    Vote known_first = vote(1, "white", Method::seen, "S1", "a");
    known_first.points = 1;
    std::vector votes = {known_first, vote(2, "tan", Method::copied, "S2", ""),
                         vote(3, "tan", Method::copied, "S3", "")};
    CHECK(standing_of(votes, known()).value == "white");  // 1 against 1
    votes[2].source = "another sheet";
    const auto standing = standing_of(votes, known());  // 1 against 2
    CHECK(standing.value == "white");
    CHECK(standing.grade == Grade::one_car);
    CHECK(standing.claims[1].points == 2);
    CHECK(standing.claims[1].grade == Grade::paper);
}

TEST_CASE("a shop that contradicts itself on one car strikes its older note and keeps what agrees with the newest") {
    std::vector votes = {vote(1, "white", Method::metered, "S1", "a"), vote(2, "tan", Method::metered, "S1", "a"),
                         vote(3, "white", Method::seen, "S1", "a")};
    votes[0].date = "2019-01-01";
    votes[1].date = "2020-01-01";
    votes[2].date = "2021-01-01";
    const auto standing = standing_of(votes, known());
    CHECK(standing.value == "white");
    CHECK(standing.claims.size() == 1);
    CHECK(standing.claims[0].points == 3);
    REQUIRE(standing.struck.size() == 1);
    CHECK(standing.struck[0].note == id_of(2));
    CHECK(standing.struck[0].by == id_of(3));
    CHECK(standing.struck[0].value == "tan");
}

TEST_CASE("of two notes on one day the higher turn is the newer, then the higher id") {
    std::vector votes = {vote(7, "white", Method::seen, "S1", "a"), vote(2, "tan", Method::seen, "S1", "a")};
    CHECK(standing_of(votes, known()).value == "white");
    votes[1].turn = 1;
    CHECK(standing_of(votes, known()).value == "tan");
}

TEST_CASE("a copied note neither strikes nor is struck, and a car not told apart contradicts nobody") {
    std::vector votes = {vote(1, "white", Method::seen, "S1", "a"), vote(2, "tan", Method::copied, "S1", "a")};
    CHECK(standing_of(votes, known()).struck.empty());
    CHECK(standing_of(votes, known()).value == "white");
    votes[1] = vote(2, "tan", Method::seen, "S1", "");
    CHECK(standing_of(votes, known()).struck.empty());
    CHECK(grade_of(votes) == Grade::mixed);
}

TEST_CASE("a note that is not vouched for counts with the unknown shops and strikes nothing of the shop it names") {
    std::vector votes = {vote(1, "white", Method::seen, "S1", "a"), vote(2, "white", Method::seen, "X1", "b"),
                         vote(3, "white", Method::seen, "S2", "c")};
    votes[2].vouched = false;
    CHECK(standing_of(votes, known()).claims[0].shops == 2);
    Vote forged = vote(9, "tan", Method::seen, "S1", "a");
    forged.date = "2026-01-01";
    forged.vouched = false;
    votes.push_back(forged);
    CHECK(standing_of(votes, known()).struck.empty());
    CHECK(standing_of(votes, known()).value == "white");
}

TEST_CASE("a year outside the years seen counts one grade lower, to PAPER and no further") {
    const std::vector one = {vote(1, "white", Method::seen, "S1", "a", 2013)};
    std::vector two = one;
    two.push_back(vote(2, "white", Method::seen, "S2", "b", 2015));
    const auto at = [](const std::vector<Vote>& votes, int year) { return standing_of(votes, known(), year); };
    CHECK(at(two, 2014).grade == Grade::matched);  // between the years seen
    CHECK_FALSE(at(two, 2014).outside_years);
    CHECK(at(two, 2016).grade == Grade::one_car);
    CHECK(at(two, 2016).outside_years);
    CHECK(at(two, 2016).value == "white");
    CHECK(at(two, 2016).claims[0].grade == Grade::matched);
    CHECK(at(one, 2012).grade == Grade::paper);
    CHECK(at({vote(1, "white", Method::copied, "S1", "", 2013)}, 2013).grade == Grade::paper);
    CHECK(at({vote(1, "white", Method::copied, "S1", "", 2013)}, 2013).outside_years);
    CHECK(at({vote(1, "white", Method::seen, "S1", "a")}, 2013).grade == Grade::paper);  // none dated
}

TEST_CASE("a year outside changes nothing on a MIXED or BLANK fact") {
    CHECK(standing_of(white_or_brown(), known(), 2030).grade == Grade::mixed);
    CHECK_FALSE(standing_of(white_or_brown(), known(), 2030).outside_years);
    CHECK(standing_of({}, known(), 2030).grade == Grade::blank);
}
