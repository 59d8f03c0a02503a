// Is a colour that the notes dispute ever printed as if it were settled? Neither as text nor as JSON.
#include <rapidcheck.h>
#include <catch2/catch.hpp>

#include "answers.h"

using namespace tapbook;
using namespace tapbook::answers;

namespace {

JobFacts car_with(const PairStanding& pair) {
    JobFacts facts = cars::plain_car();
    facts.car.taps = {cars::tap("front-left", Position::front_left, pair)};
    return facts;
}

// The line of conductors with what wraps below it; "" when there is none.
std::string wires_in(const std::string& text) {
    std::string wires;
    bool inside = false;
    for (const auto& line : lines_of(text)) {
        const auto start = line.find_first_not_of(' ');
        if (start == std::string::npos) continue;
        const bool is_label = line.compare(start, 6, "wires ") == 0;
        if (is_label)
            inside = true;
        else if (line.compare(start, 5, "pair ") == 0)
            inside = false;
        if (inside) wires += line.substr(start) + "\n";
    }
    return wires;
}

bool shows_sign(const std::string& wires, const std::string& sign) {
    return wires.find(" " + sign + " ") != std::string::npos || wires.find("\n" + sign + " ") != std::string::npos;
}

int count_of_text(const std::string& text, std::string_view part) {
    int count = 0;
    for (auto at = text.find(part); at != std::string::npos; at = text.find(part, at + 1)) ++count;
    return count;
}

void check_car(const PairStanding& pair, int width) {
    const JobFacts facts = car_with(pair);
    const Shop shop = shop_of(facts);
    const Screen screen{Colours::none, width};
    const std::string taps = wires_in(taps_text(shop.taps, screen));
    const std::string why = wires_in(advice_text(shop.advice, Detail::why, screen));
    const std::string json = taps_json(shop.taps), advice = advice_json(shop.advice);
    if (!pair.pair.value) {
        RC_ASSERT(taps.empty());
        RC_ASSERT(why.empty());
    }
    if (!pair.pair.value || !pair.polarity.value) {
        RC_ASSERT(count_of_text(json, "{\"colour\":null,\"words\":null") == 2);
        RC_ASSERT(count_of_text(advice, "\"positive\":null,\"negative\":null") == 1);
        RC_ASSERT(why.empty());
        if (pair.pair.value) {
            RC_ASSERT(taps.find("which is +") != std::string::npos);
            RC_ASSERT(taps.find("wires    + ") == std::string::npos);
            RC_ASSERT(taps.find("- ") == std::string::npos);
        }
    } else {
        RC_ASSERT(shows_sign(taps, "+") || shows_sign(taps, "-"));
    }
}

}  // namespace

TEST_CASE("a mixed pair is shown as MIXED with both answers and no conductor line") {
    const PairStanding pair = cars::disputed();
    REQUIRE(pair.pair.grade == Grade::mixed);
    const std::string text = taps_text(cars::taps_of(car_with(pair)), {});
    CHECK(text.find("MIXED") != std::string::npos);
    CHECK(wires_in(text).empty());
    CHECK(text.find("+ WH") == std::string::npos);
    CHECK(text.find("- WH") == std::string::npos);
    CHECK(text.find("+ GN") == std::string::npos);
}

TEST_CASE("a settled pair of disputed polarity shows both colours and gives neither a sign") {
    const PairStanding pair = cars::polarity_disputed();
    REQUIRE(pair.pair.grade == Grade::proven);
    REQUIRE(pair.polarity.grade == Grade::mixed);
    const std::string wires = wires_in(taps_text(cars::taps_of(car_with(pair)), {}));
    CHECK(wires == "wires    GY  grey   GY/BK  grey, black stripe   which is + is not settled\n");
}

TEST_CASE("whatever the notes say, a colour without a settled polarity is never printed as + or -") {
    REQUIRE(rc::check("disputed colours", [](unsigned seed) {
        ledgers::Dice dice(seed);
        const auto notes = ledgers::any_pair_notes(dice, 5);
        check_car(pair_standing(notes, {}, ledgers::known()), 40 + dice.below(61));
    }));
}
