// Which known word was probably meant by a mistyped one? The one fewest edits away, where an edit is one
// letter added, left out, changed, or swapped with its neighbour ("restricted" Damerau-Levenshtein, by
// dynamic programming over three rows).
#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <string_view>

namespace tapbook {

// Fewest edits that turn `a` into `b`, ASCII case ignored, counted in bytes. No letter is edited twice, so this is
// symmetric and zero only for equal words, but the detour over a third word may be shorter (it is not a metric).
std::size_t edit_distance(std::string_view a, std::string_view b);

// The word of `words` nearest to `typed`; the first in the list's order when several are equally near.
// Empty when none lies within a third of the typed length (at least 1 edit, at most 3), or when the nearest
// shares no letter with what was typed.
std::optional<std::string_view> nearest(std::string_view typed, std::span<const std::string_view> words);

}  // namespace tapbook
