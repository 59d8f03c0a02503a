// Which two conductors of one connector may be taken for each other by eye? A table of colour pairs that merge for
// red-green types of colour blindness or in poor light, applied to base and stripes; plus conductors whose base and
// stripe are swapped.
#pragma once

#include <cstdint>
#include <optional>

#include "trade/wire_colour.h"

namespace tapbook {

enum class Lookalike : std::uint8_t {
    red_green_vision,  // brown/red, brown/green, red/green, blue/violet
    poor_light,        // brown/red against brown/orange, for everybody
    shade,             // practice: light or dark against plain of the same colour
    faint_difference,  // practice: white/yellow, brown/tan, grey/silver, yellow/gold, under a work lamp or with dirt
    swapped_stripe,    // practice: white with black stripe against black with white stripe
};

// Ready to follow the two colours: `brown and red: look alike with red-green colour blindness`.
template <>
struct NamedValues<Lookalike> {
    static constexpr Named<Lookalike> all[] = {
        {Lookalike::red_green_vision, "look alike with red-green colour blindness"},
        {Lookalike::poor_light, "look alike in poor light"},
        {Lookalike::shade, "differ only in light and dark"},
        {Lookalike::faint_difference, "look alike under a work lamp or when dirty"},
        {Lookalike::swapped_stripe, "have base and stripe swapped"},
    };
};

// True where no source is known and the pair is named from experience.
constexpr bool is_practice(Lookalike lookalike) {
    return lookalike != Lookalike::red_green_vision && lookalike != Lookalike::poor_light;
}

// Why `a` and `b` are easily confused; empty when they are not, and when they are equal (then colour tells nothing at
// all, which is another finding). Conductors are compared place by place: each hue equal or confusable, as many stripes
// on both. When several reasons apply, the first in the order of the enum. Symmetric.
std::optional<Lookalike> easily_confused(const WireColour& a, const WireColour& b);

}  // namespace tapbook
