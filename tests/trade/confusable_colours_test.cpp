// Which conductors look alike? The four pairs of red-green colour blindness and brown/red against brown/orange are the
// known ones; everything marked practice is experience, no source.
#include "trade/confusable_colours.h"

#include <catch2/catch.hpp>

#include "trade/every_wire_colour.h"

using namespace tapbook;

namespace {

std::optional<Lookalike> confused(std::string_view a, std::string_view b) {
    const auto one = wire_colour_from_code(a), other = wire_colour_from_code(b);
    REQUIRE(one);
    REQUIRE(other);
    return easily_confused(*one, *other);
}

}  // namespace

TEST_CASE("brown/red, brown/green, red/green and blue/violet merge for red-green types of colour blindness") {
    for (const auto& [a, b] : {std::pair{"BN", "RD"}, {"BN", "GN"}, {"RD", "GN"}, {"BU", "VT"}}) {
        CHECK(confused(a, b) == Lookalike::red_green_vision);
        CHECK_FALSE(is_practice(*confused(a, b)));
    }
}

TEST_CASE("of all pairs of plain colours exactly four merge for red-green types of colour blindness") {
    int merging = 0;
    for (const auto& a : words_of<BaseColour>())
        for (const auto& b : words_of<BaseColour>())
            if (a.value < b.value && easily_confused({Hue{a.value}}, {Hue{b.value}}) == Lookalike::red_green_vision)
                ++merging;
    CHECK(merging == 4);
}

TEST_CASE("a brown conductor with a red stripe is taken for one with an orange stripe in poor light") {
    CHECK(confused("BN/RD", "BN/OG") == Lookalike::poor_light);
    CHECK_FALSE(is_practice(Lookalike::poor_light));
}

TEST_CASE("stripes are compared with stripes and bases with bases") {
    CHECK(confused("WH/RD", "WH/GN") == Lookalike::red_green_vision);
    CHECK(confused("RD/WH", "GN/WH") == Lookalike::red_green_vision);
    CHECK(confused("BN/GN", "RD/BN") == Lookalike::red_green_vision);  // both places merge
    CHECK(confused("WH/BN/BK", "WH/RD/BK") == Lookalike::red_green_vision);
    CHECK_FALSE(confused("WH/RD", "BK/GN"));  // the bases tell them apart
    CHECK_FALSE(confused("WH", "WH/RD"));     // a stripe is seen
    CHECK_FALSE(confused("RD", "GN/WH"));
}

TEST_CASE("swapped base and stripes are easily confused (practice)") {
    CHECK(confused("WH/BK", "BK/WH") == Lookalike::swapped_stripe);
    CHECK(confused("WH/BN/BK", "WH/BK/BN") == Lookalike::swapped_stripe);
    CHECK(confused("BN/RD", "RD/BN") == Lookalike::red_green_vision);  // the stronger reason is named
    CHECK(is_practice(Lookalike::swapped_stripe));
}

TEST_CASE("light and dark forms are near the plain colour but not near each other (practice)") {
    CHECK(confused("BU", "LBU") == Lookalike::shade);
    CHECK(confused("DGN/WH", "GN/WH") == Lookalike::shade);
    CHECK_FALSE(confused("LBU", "DBU"));
    CHECK(confused("LBU", "VT") == Lookalike::red_green_vision);
    CHECK_FALSE(confused("LGN", "DRD"));
    CHECK(is_practice(Lookalike::shade));
}

TEST_CASE("faint differences are named as practice") {
    for (const auto& [a, b] : {std::pair{"WH", "YE"}, {"BN", "TN"}, {"GY", "SR"}, {"YE", "GD"}}) {
        CHECK(confused(a, b) == Lookalike::faint_difference);
        CHECK(is_practice(*confused(a, b)));
    }
}

TEST_CASE("colours that differ plainly are not named") {
    for (const auto& [a, b] : {std::pair{"WH", "BK"},
                               {"YE", "BU"},
                               {"RD", "BU"},
                               {"GN", "WH"},
                               {"BK", "GY"},
                               {"PK", "OG"},
                               {"WH/RD", "WH/BK"}})
        CHECK_FALSE(confused(a, b));
}

TEST_CASE("confusion goes both ways, and no conductor is confused with itself") {
    const auto colours = every_one_striped_colour();
    std::size_t one_way = 0;
    for (std::size_t i = 0; i < colours.size(); ++i) {
        if (easily_confused(colours[i], colours[i])) ++one_way;
        for (std::size_t j = i % 7; j < i; j += 7)  // every seventh: 126,000 pairs
            if (easily_confused(colours[i], colours[j]) != easily_confused(colours[j], colours[i])) ++one_way;
    }
    CHECK(one_way == 0);
}

TEST_CASE("each reason reads as the end of a sentence about two conductors") {
    CHECK(word_of(Lookalike::red_green_vision) == "look alike with red-green colour blindness");
    CHECK(word_of(Lookalike::swapped_stripe) == "have base and stripe swapped");
    CHECK(words_of<Lookalike>().size() == 5);
}
