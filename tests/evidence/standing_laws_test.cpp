// What must hold for every ledger. Seeds are fixed: a failure names the round that failed.
#include <catch2/catch.hpp>

#include "evidence/ledgers.h"

using namespace tapbook;
using ledgers::Dice;
using ledgers::known;
using ledgers::vote;

namespace {

// How firmly `value` is printed: 0 when it is not.
int firmness(const Standing& standing, const std::string& value) {
    if (standing.value != value) return 0;
    switch (standing.grade) {
        case Grade::paper:
            return 1;
        case Grade::one_car:
            return 2;
        case Grade::matched:
            return 3;
        case Grade::proven:
            return 4;
        case Grade::blank:
        case Grade::mixed:
        case Grade::year_split:
        case Grade::pulled:
            break;
    }
    return 0;
}

// One more note on a car nobody has seen, so that no shop contradicts itself.
Vote fresh_vote(Dice& dice, const std::string& value) {
    Vote added = ledgers::any_vote(dice, 1000);
    added.value = value;
    added.car = "fresh";
    return added;
}

std::string summary(const Standing& standing) {
    std::string text(word_of(standing.grade));
    text += " " + standing.value.value_or("-");
    for (const auto& claim : standing.claims)
        text += "; " + claim.value + " " + std::to_string(claim.points) + " " + std::to_string(claim.cars) + " " +
                std::to_string(claim.shops) + " " + std::to_string(claim.notes) + " " + claim.best_method;
    for (const auto& strike : standing.struck) text += "; struck " + to_hex(strike.note);
    return text;
}

}  // namespace

TEST_CASE("one shop with 1,000 notes on 1,000 cars has 5 points and is MATCHED at most") {
    std::vector<Vote> votes;
    for (int i = 0; i < 1000; ++i) votes.push_back(vote(i, "white", Method::scoped, "S1", "car" + std::to_string(i)));
    const auto standing = standing_of(votes, known());
    CHECK(standing.claims[0].points == 5);
    CHECK(standing.claims[0].cars == 1000);
    CHECK(standing.grade == Grade::matched);
}

TEST_CASE("1,000 unknown shops count as one") {
    std::vector<Vote> votes;
    for (int i = 0; i < 1000; ++i)
        votes.push_back(vote(i, "white", Method::scoped, "X" + std::to_string(i), "car" + std::to_string(i)));
    const auto claim = standing_of(votes, known()).claims.at(0);
    CHECK(claim.points == 5);
    CHECK(claim.shops == 1);
    votes.push_back(vote(1000, "white", Method::seen, "S1", "a"));
    CHECK(standing_of(votes, known()).grade == Grade::matched);
    CHECK(standing_of(votes, known()).claims[0].points == 7);
}

TEST_CASE("the standing is the same in every order of the notes and with notes repeated") {
    Dice dice(11);
    for (int round = 0; round < 10000; ++round) {
        auto votes = dice.one_in(3) ? ledgers::any_changed_votes(dice, 12) : ledgers::any_votes(dice, 10);
        const std::string before = summary(standing_of(votes, known(), 2012));
        for (int i = dice.below(4); i > 0 && !votes.empty(); --i) votes.push_back(dice.one_of(std::vector(votes)));
        dice.shuffle(votes);
        INFO("round " << round);
        REQUIRE(summary(standing_of(votes, known(), 2012)) == before);
    }
}

TEST_CASE("one more agreeing note never lowers the leading value's grade") {
    Dice dice(12);
    for (int round = 0; round < 100000; ++round) {
        auto votes = ledgers::any_votes(dice, 9);
        const auto before = standing_of(votes, known(), {}, 0, YearTest::off);
        if (before.claims.empty()) continue;
        const std::string leading = before.claims[0].value;
        votes.push_back(fresh_vote(dice, leading));
        INFO("round " << round);
        REQUIRE(firmness(standing_of(votes, known(), {}, 0, YearTest::off), leading) >= firmness(before, leading));
    }
}

TEST_CASE("one more dissenting note never raises the leading value's grade") {
    Dice dice(13);
    for (int round = 0; round < 100000; ++round) {
        auto votes = ledgers::any_votes(dice, 9);
        const auto before = standing_of(votes, known(), {}, 0, YearTest::off);
        if (before.claims.empty()) continue;
        const std::string leading = before.claims[0].value;
        votes.push_back(fresh_vote(dice, leading == "tan" ? "brown" : "tan"));
        INFO("round " << round);
        REQUIRE(firmness(standing_of(votes, known(), {}, 0, YearTest::off), leading) <= firmness(before, leading));
    }
}

TEST_CASE("no shop has more than 5 points on a value and copied notes no more than 2") {
    Dice dice(14);
    for (int round = 0; round < 4000; ++round) {
        const auto votes = ledgers::any_votes(dice, 20);
        for (const auto& claim : standing_of(votes, known()).claims) {
            INFO("round " << round);
            REQUIRE(claim.points <= 5 * claim.shops + 2);
            REQUIRE((claim.cars == 0) == (claim.grade == Grade::paper));
        }
    }
}
