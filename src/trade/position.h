// Which speaker of the car is meant? Left and right are those of somebody sitting in the car. Reads the trade's
// spellings
// ("front-left", "FL", "left front", "LF", "rr lh"); one that fits several positions is refused with all of them.
#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "electrical/electrical.h"

namespace tapbook {

// The numbers are stored: never renumber, only add. The order is the order of lists: front left first.
enum class Position : std::uint8_t {
    front_left = 1,
    front_right = 2,
    rear_left = 3,
    rear_right = 4,
    front_left_tweeter = 5,
    front_right_tweeter = 6,
    rear_left_tweeter = 7,
    rear_right_tweeter = 8,
    front_left_midrange = 9,
    front_right_midrange = 10,
    centre = 11,
    subwoofer = 12,
    surround_left = 13,
    surround_right = 14,
};

// A position is its set of words: parse_position() works on these words, whatever their order.
template <>
struct NamedValues<Position> {
    static constexpr Named<Position> all[] = {
        {Position::front_left, "front left"},
        {Position::front_right, "front right"},
        {Position::rear_left, "rear left"},
        {Position::rear_right, "rear right"},
        {Position::front_left_tweeter, "front left tweeter"},
        {Position::front_right_tweeter, "front right tweeter"},
        {Position::rear_left_tweeter, "rear left tweeter"},
        {Position::rear_right_tweeter, "rear right tweeter"},
        {Position::front_left_midrange, "front left midrange"},
        {Position::front_right_midrange, "front right midrange"},
        {Position::centre, "centre"},
        {Position::subwoofer, "subwoofer"},
        {Position::surround_left, "surround left"},
        {Position::surround_right, "surround right"},
    };
};

enum class PositionRefusalReason : std::uint8_t { empty, unknown, ambiguous };

// Why a text was not taken as a position, as data; message() makes the sentence.
struct PositionRefusal {
    PositionRefusalReason reason;
    std::string text;               // what was typed
    std::string piece;              // the word nobody knows; empty when every word is known
    std::size_t offset = 0;         // of the piece, in bytes
    std::vector<Position> choices;  // for ambiguous: every position that fits
    std::string nearest;            // for unknown: the position probably meant, else empty

    // One line, safe to print: `"front" can mean front left or front right; write one of them`.
    std::string message() const;
};

// The position that `text` spells, or why it is refused. Blanks and - _ / separate words; case is ignored.
std::variant<Position, PositionRefusal> parse_position(std::string_view text);

}  // namespace tapbook
