// Codes, words and stored numbers of conductor colours. The expected texts are the project's own convention (base
// before stripe); the letters are checked against IEC 60757 in iec_60757_test.cpp.
#include "trade/wire_colour.h"

#include <algorithm>
#include <catch2/catch.hpp>

#include "trade/every_wire_colour.h"

namespace tapbook {
namespace {

using enum BaseColour;

constexpr Hue light(BaseColour base) {
    return {base, Shade::light};
}
constexpr Hue dark(BaseColour base) {
    return {base, Shade::dark};
}

struct Shown {
    WireColour colour;
    std::string code;
    std::string words;
};

const Shown shown_colours[] = {
    {{Hue{white}}, "WH", "white"},
    {{light(blue)}, "LBU", "light blue"},
    {{dark(green)}, "DGN", "dark green"},
    {{Hue{tan}}, "TN", "tan"},
    {{Hue{white}, Hue{black}}, "WH/BK", "white, black stripe"},
    {{light(blue), Hue{red}}, "LBU/RD", "light blue, red stripe"},
    {{Hue{green}, Hue{yellow}}, "GN/YE", "green, yellow stripe"},
    {{Hue{green}, light(green)}, "GN/LGN", "green, light green stripe"},
    {{Hue{white}, Hue{brown}, Hue{black}}, "WH/BN/BK", "white, brown and black stripes"},
};

}  // namespace

TEST_CASE("a colour is written base first, stripes after slashes, and said with its stripes") {
    for (const Shown& shown : shown_colours) {
        CHECK(code(shown.colour) == shown.code);
        CHECK(words(shown.colour) == shown.words);
    }
}

TEST_CASE("base and stripe are not interchangeable") {
    CHECK(WireColour{Hue{white}, Hue{black}} != WireColour{Hue{black}, Hue{white}});
    CHECK(WireColour{Hue{blue}} != WireColour{light(blue)});
}

TEST_CASE("there are 47,989 conductor colours and no two share a code, words or a stored number") {
    const auto all = every_wire_colour();
    REQUIRE(all.size() == 37u + 37u * 36u + 37u * 36u * 35u);
    std::vector<std::string> codes, texts;
    std::vector<std::int64_t> numbers;
    for (const WireColour& colour : all) {
        codes.push_back(code(colour));
        texts.push_back(words(colour));
        numbers.push_back(to_integer(colour));
    }
    const auto all_differ = [](auto& list) {
        std::ranges::sort(list);
        return std::ranges::adjacent_find(list) == list.end();
    };
    CHECK(all_differ(codes));
    CHECK(all_differ(texts));
    CHECK(all_differ(numbers));
}

TEST_CASE("every colour comes back from its code and from its stored number") {
    std::size_t lost = 0;
    for (const WireColour& colour : every_wire_colour()) {
        if (wire_colour_from_code(code(colour)) != colour) ++lost;
        if (wire_colour_from_integer(to_integer(colour)) != colour) ++lost;
    }
    CHECK(lost == 0);
}

TEST_CASE("a stored number that no colour has is refused") {
    std::size_t accepted = 0;
    for (std::int64_t number = 0; number < (std::int64_t{1} << 19); ++number)
        if (wire_colour_from_integer(number)) ++accepted;
    CHECK(accepted == 47989u);  // nothing but the colours themselves
    const std::int64_t refused[] = {
        -1,        0,         16,        17,      10 + 48, 10 + 64 * 10,     10 + 4096,
        1LL << 40, INT64_MAX, INT64_MIN, 1 << 18, 1 << 24, 10 + (1LL << 32), 10 + 64 + 4096 * 2 + (1 << 18)};
    for (const std::int64_t number : refused) {
        CAPTURE(number);
        CHECK_FALSE(wire_colour_from_integer(number));
    }
}

TEST_CASE("stored numbers never change") {
    // Worked by hand from the packing in wire_colour.h: base + 16 x shade, stripes x 64 and x 4096.
    const std::pair<std::string_view, std::int64_t> kept[] = {
        {"BK", 1},
        {"BN", 2},
        {"RD", 3},
        {"OG", 4},
        {"YE", 5},
        {"GN", 6},
        {"BU", 7},
        {"VT", 8},
        {"GY", 9},
        {"WH", 10},
        {"PK", 11},
        {"GD", 12},
        {"TQ", 13},
        {"SR", 14},
        {"TN", 15},
        {"LBU", 7 + 16},
        {"DGN", 6 + 32},
        {"WH/BK", 10 + 64},
        {"BK/WH", 1 + 640},
        {"WH/BN/BK", 10 + 128 + 4096},
        {"LBU/RD", 23 + 192},
        {"BU/DGN", 7 + 64 * 38},
    };
    for (const auto& [text, number] : kept) {
        const auto colour = wire_colour_from_code(text);
        REQUIRE(colour);
        CHECK(to_integer(*colour) == number);
    }
}

TEST_CASE("a stored code is read only in exactly the form in which it is written") {
    for (const auto* text :
         {"",         "wh",       "WH ", " WH",     "WH/",  "/WH", "WH/bk", "WH-BK", "WHBK",  "WH//BK", "WH/WH",
          "WHT",      "white",    "LWH", "DBK",     "LGD",  "DSR", "LL",    "L",     "D",     "GNYE",   "WH/BN/BK/RD",
          "WH/BK/WH", "WH/BK/BK", "XX",  "LBU/LBU", "LLBU", "W",   "BR",    "WH\n",  "WH/BK/"}) {
        CAPTURE(text);
        CHECK_FALSE(wire_colour_from_code(text));
    }
}

TEST_CASE("a colour cannot be made of no hue, four hues, a repeated hue or a shade that does not exist") {
    const auto made_of = [](std::vector<Hue> list) { return wire_colour_of(list); };
    CHECK_FALSE(made_of({}));
    CHECK_FALSE(made_of({Hue{white}, Hue{black}, Hue{red}, Hue{blue}}));
    CHECK_FALSE(made_of({Hue{white}, Hue{white}}));
    CHECK_FALSE(made_of({Hue{white}, Hue{black}, Hue{white}}));
    for (const BaseColour base : {black, white, gold, silver}) {
        CHECK_FALSE(made_of({light(base)}));
        CHECK_FALSE(made_of({Hue{red}, dark(base)}));
    }
    CHECK(made_of({Hue{blue}, light(blue)}));
}

}  // namespace tapbook
