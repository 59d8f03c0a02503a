// Are noted cavities held against the usual use of an ISO 10487 radio connector, and only where it is called one? The
// use is what public tables agree on.
#include "rules/cavity_use.h"

#include <catch2/catch.hpp>

#include "facts_fixture.h"

using namespace tapbook;
using namespace tapbook::fixture;

namespace {

TapFacts noted(const std::string& connector, Position position, const std::string& plus, const std::string& minus) {
    TapFacts tap = radio_tap("front-left");
    tap.tap.connector = connector;
    tap.circuit.position = position;
    if (!plus.empty()) tap.pair.positive_cavity = settled(plus);
    if (!minus.empty()) tap.pair.negative_cavity = settled(minus);
    return tap;
}

const std::string iso = "ISO 10487 block B, brown";

}  // namespace

TEST_CASE("the usual cavities agree however they are spelled") {
    for (const auto& [plus, minus] : {std::pair{"B5", "B6"}, {"b5", "b 6"}, {"5", "6"}, {"B-5", ""}, {"", "6"}}) {
        INFO(plus << " " << minus);
        CHECK(cavities_differ(noted(iso, Position::front_left, plus, minus)) == false);
    }
}

TEST_CASE("another cavity, or the two the other way round, differs") {
    for (const auto& [plus, minus] : {std::pair{"B6", "B5"}, {"B1", "B2"}, {"B5", "B7"}, {"C5", ""}, {"15", "16"}}) {
        INFO(plus << " " << minus);
        CHECK(cavities_differ(noted(iso, Position::front_left, plus, minus)) == true);
    }
}

TEST_CASE("nothing is said of other connectors, other speakers and cavities nobody noted") {
    CHECK_FALSE(cavities_differ(noted("main plug, 16 cavities", Position::front_left, "B1", "B2")).has_value());
    CHECK_FALSE(cavities_differ(noted(iso, Position::subwoofer, "B1", "B2")).has_value());
    CHECK_FALSE(cavities_differ(noted(iso, Position::front_left, "", "")).has_value());
    CHECK(usual_cavities(noted("main plug", Position::front_left, "B1", "B2")).empty());
    CHECK(usual_cavities(noted(iso, Position::rear_right, "", "")) == "B1 (+) and B2 (-)");
}

TEST_CASE("a connector that only the notes call ISO 10487 counts as one") {
    TapFacts tap = noted("brown plug", Position::front_left, "B1", "B2");
    tap.pair.connector = settled("ISO 10487 B");
    CHECK(cavities_differ(tap) == true);
}
