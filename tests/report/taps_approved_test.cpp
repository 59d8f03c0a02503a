// Does an installer still see the tap points of a car as they were read and accepted, on a wide and a narrow screen?
#include <catch2/catch.hpp>

#include "approved.h"
#include "report/report.h"
#include "report_cars.h"

using namespace tapbook;
using approval::approve;

namespace {

constexpr Screen wide{Colours::none, 100}, narrow{Colours::none, 60}, narrowest{Colours::none, 40};

}  // namespace

TEST_CASE("the taps of a plain car read as approved") {
    const TapsAnswer answer = cars::taps_of(cars::plain_car());
    approve("taps-plain-100", taps_text(answer, wide));
    approve("taps-plain-60", taps_text(answer, narrow));
    approve("taps-plain-40", taps_text(answer, narrowest));
    approve("taps-plain-json", taps_json(answer));
}

TEST_CASE("mixed pairs, disputed polarity, blank and digital taps, hazards and lookalikes read as approved") {
    const TapsAnswer answer = cars::taps_of(cars::disputed_car());
    approve("taps-disputed-100", taps_text(answer, wide));
    approve("taps-disputed-60", taps_text(answer, narrow));
    approve("taps-disputed-json", taps_json(answer));
}

TEST_CASE("a car of which nothing is known says so, as approved") {
    const TapsAnswer answer = cars::taps_of(cars::bare_car());
    approve("taps-bare-100", taps_text(answer, wide));
    approve("taps-bare-json", taps_json(answer));
}

TEST_CASE("one conductor noted alone, equal colours with a mark, and long two-stripe colours read as approved") {
    JobFacts facts = cars::plain_car();
    Note positive_only = cars::noted(1, "PK", "", "S1", 2015);
    Note negative_only = cars::noted(1, "", "OG", "S1", 2015);
    Note ringed = cars::noted(1, "BN", "BN", "S1", 2015);
    ringed.negative_mark = "ring";
    const auto standing = [](const Note& note) { return pair_standing(std::vector{note}, {}, cars::known()); };
    facts.car.taps = {cars::tap("front-left", Position::front_left, standing(positive_only)),
                      cars::tap("front-right", Position::front_right, standing(negative_only)),
                      cars::tap("rear-left", Position::rear_left, standing(ringed)),
                      cars::tap("rear-right", Position::rear_right, cars::agreed("LBU/DGN/OG", "LBU/DGN/PK"))};
    approve("taps-odd-conductors-100", taps_text(cars::taps_of(facts), wide));
    approve("taps-odd-conductors-60", taps_text(cars::taps_of(facts), narrow));
}

TEST_CASE("asking for one system leaves the taps of the others out") {
    const std::string text = taps_text(cars::taps_of(cars::disputed_car(), "premium"), wide);
    CHECK(text.find("premium/rear-right/radio") != std::string::npos);
    CHECK(text.find("base/front-left/radio") == std::string::npos);
    CHECK(text.find("sound systems. Find out") == std::string::npos);
}

TEST_CASE("taps in full colours are the approved bytes") {
    approve("taps-plain-full-colour", taps_text(cars::taps_of(cars::plain_car()), {Colours::full, 100}));
    approve("taps-plain-256-colours", taps_text(cars::taps_of(cars::plain_car()), {Colours::palette_256, 60}));
}
