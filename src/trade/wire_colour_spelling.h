// How does the trade spell one colour, and which spellings mean more than one? Every spelling belongs to one style:
// English words, US abbreviations, IEC 60757 letters, or the one- and two-letter notations of wiring diagrams. One
// table, one line each. Not part of the folder's door: people's text is read by wire_colour_entry.h.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "trade/wire_colour.h"

namespace tapbook {

enum class Style : std::uint8_t { word, abbreviation, iec, letter };

// What `piece` (lower case) stands for in `style`: nothing when unknown, one meaning when clear, several
// when ambiguous. A light or dark colour may be glued: "ltblu", "darkgreen", "lbu". A meaning with a stripe
// is a two-letter notation ("yw").
std::vector<WireColour> meanings(std::string_view piece, Style style);

// The same over all styles.
std::vector<WireColour> meanings(std::string_view piece);

// What `piece` (lower case) may mean when it is two or three spellings of ONE style written without a
// slash: "rdbu", "whtblk", "wr". The first style that explains all of it counts, so "rdbu" is RD and BU,
// never R and DBU. Empty when none does.
std::vector<WireColour> joined_meanings(std::string_view piece);

// The spellings of three letters and more, lower case, best first: what a mistyped piece is compared with.
std::vector<std::string_view> nameable_spellings();

}  // namespace tapbook
