// What colour did the person mean? Reads the trade's spellings of a conductor's colour (`WHT/RED`, `W-R`, `lt blu`,
// `white w/ red stripe`) and refuses, with the choices, whatever can mean two things: a wrong colour burns a radio.
//
// Accepted, case ignored: a base colour, then up to two stripes, each after a separator; last, if wished, one of
// "stripe", "tracer", "ring", "band".
// Colours: English words, US abbreviations, IEC 60757 letters, and letters with one meaning; before them may stand
// "light", "lt", "dark", "dk" or "sky".
// Separators: / - , "with" "w/"; before a second stripe also "and" and "&". None is needed where the text ends in
// "stripe" ("white red stripe").
#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "trade/wire_colour.h"

namespace tapbook {

enum class ColourRefusalReason : std::uint8_t {
    empty,                 // nothing but blanks
    unknown,               // a word or a character that is no colour
    ambiguous,             // "GR": grey or green
    joined_without_slash,  // "RDBU", "white black", "white and black": which is the base?
    missing,               // a base colour or a stripe is not there: "/RD", "wht//blk", "light"
    too_many_stripes,      // more than two
    same_stripe,           // a stripe in a colour the conductor already has
};

// Why a text was not taken as a colour, as data; message() makes the sentence.
struct ColourRefusal {
    ColourRefusalReason reason;
    std::string piece;                // the offending part as it was typed; empty when something is missing
    std::size_t offset = 0;           // where the piece starts (or should stand), in bytes
    std::vector<WireColour> choices;  // what can be meant and written instead; only for ambiguous and joined
    std::string nearest;              // for unknown: the spelling probably meant, else empty

    // One line without the place, safe to print: `"GR" can mean grey or green; write GY or GN`.
    std::string message() const;
};

// The colour that `text` spells, or why it is refused.
std::variant<WireColour, ColourRefusal> parse_wire_colour(std::string_view text);

}  // namespace tapbook
