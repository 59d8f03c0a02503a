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
    const auto standing = standing_of(white_or_brown(), known(), {}, 0, YearTest::off);
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

TEST_CASE("in the worked case the year explains 9 points more and splits between 2015 and 2017, both sides PROVEN") {
    const auto standing = standing_of(white_or_brown(), known());
    CHECK(standing.grade == Grade::year_split);
    CHECK_FALSE(standing.value);
    REQUIRE(standing.split);
    const YearSplit& change = standing.split->change;
    CHECK(change.old_value == "white");
    CHECK(change.new_value == "brown");
    CHECK(change.last_old_year == 2015);
    CHECK(change.first_new_year == 2017);
    CHECK(change.gain == 9);    // 19 - 10
    CHECK(change.breaks == 5);  // 2014 to 2018
    CHECK(change.values == 2);
    CHECK(change.old_cars == 4);
    CHECK(change.new_cars == 3);
    CHECK(standing.split->old_grade == Grade::proven);
    CHECK(standing.split->new_grade == Grade::proven);
}

TEST_CASE("in the worked case a 2014 car is white, a 2018 car brown, and nobody has seen a 2016") {
    const auto at = [](int year) { return standing_of(white_or_brown(), known(), year); };
    CHECK(at(2014).value == "white");
    CHECK(at(2014).grade == Grade::proven);
    CHECK(at(2014).claims[0].points == 10);  // the copied sheet counts for white
    CHECK(at(2018).value == "brown");
    CHECK(at(2018).grade == Grade::proven);
    CHECK(at(2018).claims.size() == 1);
    CHECK(at(2016).grade == Grade::year_split);
    CHECK(at(2016).outside_years);
    CHECK_FALSE(at(2016).value);
    CHECK(at(2011).grade == Grade::matched);  // before the years seen: one lower
    CHECK(at(2011).outside_years);
    CHECK(at(2030).value == "brown");
    CHECK(at(2030).grade == Grade::matched);
}

TEST_CASE("PROVEN needs each of its five conditions") {
    const std::vector proven = {vote(1, "white", Method::metered, "S1", "a"),
                                vote(2, "white", Method::metered, "S2", "b")};
    CHECK(grade_of(proven) == Grade::proven);  // 6 points, 2 shops, 2 cars, 2 metered, all points
    auto votes = proven;
    votes[1].method_word = "seen", votes[1].measured = false;
    CHECK(grade_of(votes) == Grade::matched);  // one metered car
    votes = proven;
    votes[1].shop = "X1";
    CHECK(grade_of(votes) == Grade::matched);  // the second shop is not known
    votes = proven;
    votes[1].vouched = false;
    CHECK(grade_of(votes) == Grade::matched);  // nor is one that nobody vouches for
    votes = proven;
    votes[1].points = 2;
    CHECK(grade_of(votes) == Grade::matched);  // 5 points
    votes = proven;
    votes.push_back(vote(3, "tan", Method::copied, "S3", ""));
    CHECK(grade_of(votes) == Grade::matched);  // leads by 5
    votes[0].points = votes[1].points = 4;
    CHECK(grade_of(votes) == Grade::proven);  // leads by 7 with 8 of 9
    votes.push_back(vote(4, "brown", Method::seen, "S4", "c"));
    CHECK(grade_of(votes) == Grade::matched);  // leads by 6 with 8 of 11
    CHECK(grade_of({vote(1, "white", Method::scoped, "S1", "a"), vote(2, "white", Method::scoped, "S1", "b"),
                    vote(3, "white", Method::scoped, "S1", "c")}) == Grade::matched);  // one shop
}

TEST_CASE("a value that is PROVEN is printed although another has 3 points") {
    std::vector<Vote> votes;
    for (int i = 1; i <= 4; ++i)
        votes.push_back(vote(i, "white", Method::scoped, "S" + std::to_string(i), "a", 2013 + i % 2));
    votes.push_back(vote(5, "tan", Method::metered, "S5", "a", 2013));
    CHECK(grade_of(votes) == Grade::proven);  // 16 against 3
    CHECK(standing_of(votes, known()).claims[1].points == 3);
}

TEST_CASE("a note without a year speaks for the side whose value it names, and against both when it names neither") {
    auto votes = white_or_brown();
    votes.push_back(vote(10, "white", Method::metered, "S6", "h"));
    CHECK(standing_of(votes, known(), 2018).claims.size() == 1);
    votes.push_back(vote(11, "tan", Method::metered, "S7", "i"));
    CHECK(standing_of(votes, known(), 2018).claims.size() == 2);
    CHECK(standing_of(votes, known(), 2014).claims.size() == 2);
    CHECK(standing_of(votes, known(), 2014).claims[0].points == 13);
}

TEST_CASE("no split is reported with one car on a side, or where another pair of values explains as much") {
    const auto old_ones = [](std::string value) {
        return std::vector{DatedCar{value, 2012, 4}, DatedCar{value, 2013, 4}, DatedCar{value, 2013, 4}};
    };
    auto cars = old_ones("white");
    cars.push_back({"brown", 2016, 40});
    CHECK(is_far_likelier(*best_year_split(cars)));
    CHECK_FALSE(year_split_of(cars));
    cars.push_back({"brown", 2017, 4});
    CHECK(year_split_of(cars));
    cars.push_back({"tan", 2016, 40});
    cars.push_back({"tan", 2017, 4});
    CHECK_FALSE(best_year_split(cars)->is_only_pair);
    CHECK_FALSE(year_split_of(cars));
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
    const auto mixed = standing_of(white_or_brown(), known(), 2030, 0, YearTest::off);
    CHECK(mixed.grade == Grade::mixed);
    CHECK_FALSE(mixed.outside_years);
    CHECK(standing_of({}, known(), 2030).grade == Grade::blank);
}
