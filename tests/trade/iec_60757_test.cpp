// IEC 60757 (letter codes for colours), table 1 and the rule for green with yellow. Letters and order read from GOST
// 28763-90, which is IEC 757:1983; the joining rule from the 2021 edition. Lower case has the same meaning (1983 text).
#include <algorithm>
#include <catch2/catch.hpp>

#include "trade/trade.h"

namespace tapbook {
namespace {

using enum BaseColour;

struct Row {
    std::string upper;
    std::string lower;
    BaseColour colour;
};

const Row table_1[] = {
    {"BK", "bk", black}, {"BN", "bn", brown}, {"RD", "rd", red},       {"OG", "og", orange}, {"YE", "ye", yellow},
    {"GN", "gn", green}, {"BU", "bu", blue},  {"VT", "vt", violet},    {"GY", "gy", grey},   {"WH", "wh", white},
    {"PK", "pk", pink},  {"GD", "gd", gold},  {"TQ", "tq", turquoise}, {"SR", "sr", silver},
};

std::optional<WireColour> accepted(std::string_view text) {
    const auto result = parse_wire_colour(text);
    const auto* colour = std::get_if<WireColour>(&result);
    return colour ? std::optional(*colour) : std::nullopt;
}

}  // namespace

TEST_CASE("the letters of IEC 60757 are read in upper and lower case and written in upper case") {
    for (const Row& row : table_1) {
        CAPTURE(row.upper);
        CHECK(accepted(row.upper) == WireColour{Hue{row.colour}});
        CHECK(accepted(row.lower) == WireColour{Hue{row.colour}});
        CHECK(code(Hue{row.colour}) == row.upper);
    }
}

TEST_CASE("the program's codes are table 1 in its order, followed by our own TN for tan") {
    const auto codes = colour_codes();
    REQUIRE(codes.size() == std::size(table_1) + 1);
    for (std::size_t i = 0; i < std::size(table_1); ++i) {
        CHECK(codes[i].word == table_1[i].upper);
        CHECK(codes[i].value == table_1[i].colour);
    }
    CHECK(codes.back().word == "TN");
    CHECK(codes.back().value == tan);
}

TEST_CASE("violet may be called purple and grey slate, as the table's names allow") {
    CHECK(accepted("purple") == WireColour{Hue{violet}});
    CHECK(accepted("slate") == WireColour{Hue{grey}});
}

TEST_CASE("GNYE is one code of the standard, read as green with a yellow stripe") {
    CHECK(accepted("GNYE") == WireColour{Hue{green}, Hue{yellow}});
    CHECK(accepted(" gnye ") == WireColour{Hue{green}, Hue{yellow}});
    CHECK(accepted("GN/YE") == WireColour{Hue{green}, Hue{yellow}});
    CHECK(accepted("YE/GN") == WireColour{Hue{yellow}, Hue{green}});
    CHECK_FALSE(accepted("YEGN"));
    CHECK_FALSE(accepted("WH/GNYE"));
}

TEST_CASE(
    "red and blue joined as the standard joins them, RDBU, say nothing about the base and are refused with the "
    "choice") {
    const auto result = parse_wire_colour("RDBU");
    const auto* refusal = std::get_if<ColourRefusal>(&result);
    REQUIRE(refusal);
    CHECK(refusal->reason == ColourRefusalReason::joined_without_slash);
    CHECK(refusal->choices == std::vector{WireColour{Hue{red}, Hue{blue}}});
}

TEST_CASE("several conductors joined with + as in the standard are not one colour") {
    CHECK_FALSE(accepted("BK+BN"));
    CHECK_FALSE(accepted("BK+BK+BN+BU+GNYE"));  // the standard's example of a five-core cable
}

}  // namespace tapbook
