// The two scales against the tables of the evidence chapter.
#include "evidence/points.h"

#include <catch2/catch.hpp>
#include <cmath>

#include "evidence/evidence.h"

using namespace tapbook;

TEST_CASE("a pair is worth 4 points scoped, 3 metered, 2 seen, 1 copied") {
    CHECK(pair_points(Method::scoped) == 4);
    CHECK(pair_points(Method::metered) == 3);
    CHECK(pair_points(Method::seen) == 2);
    CHECK(pair_points(Method::copied) == 1);
}

TEST_CASE("points stand for being wrong 1 time in 82, 28, 10 and 4") {
    const auto one_in = [](Method method) { return 1 + std::lround(std::pow(3, pair_points(method))); };
    CHECK(one_in(Method::scoped) == 82);
    CHECK(one_in(Method::metered) == 28);
    CHECK(one_in(Method::seen) == 10);
    CHECK(one_in(Method::copied) == 4);
}

TEST_CASE("polarity is worth 4 points scoped, 3 phase-checked or cell-tested, 1 by every other method") {
    CHECK(polarity_points(PolarityMethod::scoped) == 4);
    CHECK(polarity_points(PolarityMethod::phase) == 3);
    CHECK(polarity_points(PolarityMethod::cell) == 3);
    for (const auto method : {PolarityMethod::metered, PolarityMethod::seen, PolarityMethod::copied})
        CHECK(polarity_points(method) == 1);
}

TEST_CASE("knowing the answer first costs one point, never the last, and nothing when a proof hangs on the note") {
    CHECK(points_after_knowing(4, true, false) == 3);
    CHECK(points_after_knowing(2, true, false) == 1);
    CHECK(points_after_knowing(1, true, false) == 1);
    CHECK(points_after_knowing(4, true, true) == 4);
    CHECK(points_after_knowing(4, false, false) == 4);
}

TEST_CASE("a pair is looked at by every method but copied, a polarity only by scope, phase check and cell test") {
    for (const auto method : {Method::scoped, Method::metered, Method::seen}) CHECK(looked_at(method));
    CHECK_FALSE(looked_at(Method::copied));
    for (const auto method : {PolarityMethod::scoped, PolarityMethod::phase, PolarityMethod::cell})
        CHECK(looked_at(method));
    for (const auto method : {PolarityMethod::metered, PolarityMethod::seen, PolarityMethod::copied})
        CHECK_FALSE(looked_at(method));
}

TEST_CASE("a polarity without its own method, or on a copied note, is paper with one point") {
    Note note;
    note.method = Method::scoped;
    CHECK(polarity_vote_of(note, "WH").points == 1);
    CHECK_FALSE(polarity_vote_of(note, "WH").looked_at);
    note.polarity = PolarityMethod::phase;
    CHECK(polarity_vote_of(note, "WH").points == 3);
    CHECK(polarity_vote_of(note, "WH").looked_at);
    note.method = Method::copied;
    CHECK(polarity_vote_of(note, "WH").points == 1);
    CHECK_FALSE(polarity_vote_of(note, "WH").looked_at);
}

TEST_CASE("the grades are said in the words BLANK, PAPER, ONE CAR, MATCHED, PROVEN, MIXED, YEAR SPLIT, PULLED") {
    std::string all;
    for (const auto& named : words_of<Grade>()) all.append(named.word).append(";");
    CHECK(all == "BLANK;PAPER;ONE CAR;MATCHED;PROVEN;MIXED;YEAR SPLIT;PULLED;");
}
