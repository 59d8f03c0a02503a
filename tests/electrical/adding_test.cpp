// What do added taps do to the level? Values of the signal specification, section 1 for two taps, and laws.
#include "electrical/adding.h"

#include <catch2/catch.hpp>

#include "arbitrary.h"

using namespace tapbook;

TEST_CASE("two taps added at unity gain 6.02 dB in step and 3.01 dB unrelated") {
    CHECK(coherent_gain(Adding::unity).in(decibels) == Approx(6.02).margin(5e-3));
    CHECK(unrelated_gain(Adding::unity).in(decibels) == Approx(3.01).margin(5e-3));
}

TEST_CASE("two taps averaged gain nothing in step and lose 3.01 dB unrelated") {
    CHECK(coherent_gain(Adding::averaging) == decibels(0));
    CHECK(unrelated_gain(Adding::averaging).in(decibels) == Approx(-3.01).margin(5e-3));
}

TEST_CASE("nothing added, nothing changed") {
    CHECK(coherent_gain(Adding::none) == decibels(0));
    CHECK(unrelated_gain(Adding::none) == decibels(0));
    for (const auto& named : words_of<Adding>()) {
        CHECK(coherent_gain(named.value, 1).in(decibels) == Approx(0).margin(1e-12));
        CHECK(unrelated_gain(named.value, 1).in(decibels) == Approx(0).margin(1e-12));
    }
}

TEST_CASE("signals in step never add to less than unrelated ones") {
    REQUIRE(rc::check([] {
        const auto adding = arbitrary::any_of<Adding>();
        const int taps = *rc::gen::inRange(1, 9);
        RC_ASSERT(coherent_gain(adding, taps) >= unrelated_gain(adding, taps));
    }));
}

// |cos(pi f dt)| by hand: a third of a period costs 6.02 dB, a quarter 3.01 dB, a whole one nothing.
TEST_CASE("a delay costs what the phase between the taps costs") {
    CHECK(delay_loss(hertz(50), milliseconds(0)).in(decibels) == Approx(0).margin(1e-12));
    CHECK(delay_loss(hertz(50), milliseconds(5)).in(decibels) == Approx(3.0103).margin(1e-4));
    CHECK(delay_loss(hertz(100), seconds(1.0 / 300)).in(decibels) == Approx(6.0206).margin(1e-4));
    CHECK(delay_loss(hertz(50), milliseconds(20)).in(decibels) == Approx(0).margin(1e-9));
    CHECK(delay_loss(hertz(50), milliseconds(10)).in(decibels) > 100);
}

TEST_CASE("up to half a period a longer delay costs more, either way round") {
    REQUIRE(rc::check([] {
        const Hertz note = hertz(40);
        const Seconds delay = milliseconds(*rc::gen::inRange(0, 12));
        RC_ASSERT(delay_loss(note, delay + milliseconds(0.4)) > delay_loss(note, delay));
        RC_ASSERT(delay_loss(note, -delay) == delay_loss(note, delay));
    }));
}
