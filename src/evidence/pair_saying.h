// Which pair does each note name, and which conductor of it as the positive one? For this folder only.
//
// A conductor's key is its colour code; where both conductors of a note have one colour, the code and the mark: "BN",
// "BN ring". A pair's value is its two keys in order of their text, joined by "|".
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "trade/trade.h"

namespace tapbook {

// Before a key in a polarity value: notes only name that conductor as the negative one.
inline constexpr std::string_view negative_only = "not ";

struct PairSaying {
    const Note* note = nullptr;
    std::string pair;                // value
    std::string positive, negative;  // keys; "" when the note does not tell
};

// The keys of a pair's value: two, or one when only one colour was ever named.
std::vector<std::string> keys_of(std::string_view pair);

std::optional<WireColour> colour_of(std::string_view key);

// The colour code in a key.
std::string_view colour_code_in(std::string_view key);

// What the notes that name a colour say, in their order. A note with one colour takes the pair that holds it, and the
// other conductor with it, when exactly one pair named in full does; else its pair is that colour alone. REQUIRES the
// notes outlive the result.
std::vector<PairSaying> pair_sayings(std::span<const Note* const> notes);

// The mark that the newest of `sayings` has on the conductor `key`; "" when there is none.
std::string mark_of(std::span<const PairSaying> sayings, std::string_view key);

}  // namespace tapbook
