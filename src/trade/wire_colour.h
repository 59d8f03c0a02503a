// What colour is a conductor? A base colour and up to two stripes, base first (the order of vehicle wiring; IEC 60757's
// own joining order says nothing about which is the base). The letters are those of IEC 60757 table 1, plus our TN tan
// and a leading L or D for light and dark.
//
// GNYE: the standard writes green with yellow only as GNYE, the protective earth conductor. A vehicle has no protective
// earth, but it has green conductors with a yellow stripe, and yellow ones with a green stripe. So GNYE is read as
// green with a yellow stripe, the one joined code that is accepted, and the program itself always writes GN/YE, as for
// any other pair.
#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "electrical/electrical.h"

namespace tapbook {

// The numbers are stored: never renumber, only add (1 to 15 is full).
enum class BaseColour : std::uint8_t {
    black = 1,
    brown = 2,
    red = 3,
    orange = 4,
    yellow = 5,
    green = 6,
    blue = 7,
    violet = 8,
    grey = 9,
    white = 10,
    pink = 11,
    gold = 12,
    turquoise = 13,
    silver = 14,
    tan = 15,
};

template <>
struct NamedValues<BaseColour> {
    static constexpr Named<BaseColour> all[] = {
        {BaseColour::black, "black"},         {BaseColour::brown, "brown"},   {BaseColour::red, "red"},
        {BaseColour::orange, "orange"},       {BaseColour::yellow, "yellow"}, {BaseColour::green, "green"},
        {BaseColour::blue, "blue"},           {BaseColour::violet, "violet"}, {BaseColour::grey, "grey"},
        {BaseColour::white, "white"},         {BaseColour::pink, "pink"},     {BaseColour::gold, "gold"},
        {BaseColour::turquoise, "turquoise"}, {BaseColour::silver, "silver"}, {BaseColour::tan, "tan"},
    };
};

// The two-letter codes, in the order of IEC 60757 table 1 (TN is ours and comes last).
std::span<const Named<BaseColour>> colour_codes();

// Stored as well.
enum class Shade : std::uint8_t { plain = 0, light = 1, dark = 2 };

template <>
struct NamedValues<Shade> {
    static constexpr Named<Shade> all[] = {{Shade::plain, "plain"}, {Shade::light, "light"}, {Shade::dark, "dark"}};
};

// One colour as seen on insulation or stripe.
struct Hue {
    BaseColour base;
    Shade shade = Shade::plain;

    friend constexpr bool operator==(const Hue&, const Hue&) = default;
};

// Does a light or dark form exist? Not of black, white, gold and silver: "light black" would be a guess at grey.
bool has_shades(BaseColour base);

std::string code(Hue hue);   // "BU", "LBU", "DGN"
std::string words(Hue hue);  // "blue", "light blue", "dark green"

// A second stripe never stands without a first, and no colour occurs twice (a stripe in the
// colour of its base cannot be seen).
struct WireColour {
    Hue base;
    std::optional<Hue> first_stripe = std::nullopt;
    std::optional<Hue> second_stripe = std::nullopt;

    friend constexpr bool operator==(const WireColour&, const WireColour&) = default;
};

// Base, first and second stripe as far as there are any.
std::vector<Hue> hues(const WireColour& colour);

// Base and stripes from 1 to 3 hues. Empty for another count, a repeated hue, or a shade that does not exist.
std::optional<WireColour> wire_colour_of(std::span<const Hue> hues);

std::string code(const WireColour& colour);   // "WH", "LBU/RD", "WH/BN/BK"
std::string words(const WireColour& colour);  // "white", "light blue, red stripe", "white, brown and black stripes"

// Exactly what code() writes, read back; empty for any other spelling (people's spellings: wire_colour_entry.h).
std::optional<WireColour> wire_colour_from_code(std::string_view text);

// For storing: 6 bits a hue (base colour + 16 x shade), the base lowest, then the first and the second stripe; an
// absent stripe is 0. So WH is 10, WH/BK is 10 + 64 x 1 = 74, and LBU is 7 + 16 x 1 = 23.
std::int64_t to_integer(const WireColour& colour);

// Empty for every number that to_integer() does not give.
std::optional<WireColour> wire_colour_from_integer(std::int64_t number);

}  // namespace tapbook
