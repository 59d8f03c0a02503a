// Which rating does a blade fuse's colour mean, and which ratings exist? Colours of the three bodies of ISO 8820-3
// (type C regular, F mini, E maxi) from a printed textbook table and public reference pages. The same colour means
// different currents on different bodies, so a colour alone is answered only where all bodies agree.
#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "electrical/electrical.h"

namespace tapbook {

enum class BladeBody : std::uint8_t { regular, mini, maxi };

template <>
struct NamedValues<BladeBody> {
    static constexpr Named<BladeBody> all[] = {
        {BladeBody::regular, "regular"}, {BladeBody::mini, "mini"}, {BladeBody::maxi, "maxi"}};
};

enum class FuseColour : std::uint8_t {
    black,
    grey,
    violet,
    pink,
    tan,
    brown,
    red,
    blue,
    yellow,
    clear,
    green,
    blue_green,
    orange,
};

template <>
struct NamedValues<FuseColour> {
    static constexpr Named<FuseColour> all[] = {
        {FuseColour::black, "black"},  {FuseColour::grey, "grey"},   {FuseColour::violet, "violet"},
        {FuseColour::pink, "pink"},    {FuseColour::tan, "tan"},     {FuseColour::brown, "brown"},
        {FuseColour::red, "red"},      {FuseColour::blue, "blue"},   {FuseColour::yellow, "yellow"},
        {FuseColour::clear, "clear"},  {FuseColour::green, "green"}, {FuseColour::blue_green, "blue-green"},
        {FuseColour::orange, "orange"}};
};

// The colour of the word or of one of its other names (beige, natural, white, amber, purple, gray, turquoise); ASCII
// case is ignored. Absent for anything else.
std::optional<FuseColour> parse_fuse_colour(std::string_view text);

struct BladeFuse {
    Amps rating;
    FuseColour colour;
    std::optional<FuseColour> also = std::nullopt;  // some makers' colour for the same rating
    bool from_memory = false;                       // the colour could not be confirmed
};

// The fuses of this body by rising rating. Regular and mini share one table.
std::span<const BladeFuse> blade_fuses(BladeBody body);

// Every rating that exists on some body, rising, each once.
std::vector<Amps> standard_blade_ratings();

// The fuse of this body with exactly this rating; nullptr when no such fuse is made.
const BladeFuse* find_blade_fuse(BladeBody body, Amps rating);

struct BladeOfRating {
    BladeBody body;
    BladeFuse fuse;
};

// The blade fuses of exactly this rating, in the order of BladeBody; empty when none is made.
std::vector<BladeOfRating> blades_rated(Amps rating);

// What a fuse of this body and colour is rated; absent when the body has no such colour.
std::optional<Amps> blade_rating(BladeBody body, FuseColour colour);

struct BladeChoice {
    BladeBody body;
    Amps rating;
};

// The colour means different currents on different bodies: read the figures printed on the fuse.
struct AmbiguousFuseColour {
    FuseColour colour;
    std::vector<BladeChoice> choices;  // in the order of BladeBody

    // One line: `red is 10 A on a regular or mini fuse and 50 A on a maxi fuse; name the body or read the figure on
    // it`.
    std::string message() const;
};

// What a fuse of this colour is rated when its body is not known: the rating all bodies with that colour agree on, or
// every choice.
std::variant<Amps, AmbiguousFuseColour> blade_rating(FuseColour colour);

}  // namespace tapbook
