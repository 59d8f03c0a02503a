// Is this text safe to store and to show, and how is it compared? UTF-8 in composed form (NFC); names must not hold
// invisible or direction-changing characters; searching compares folded words. Unicode work is utf8proc's.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace tapbook {

bool is_utf8(std::string_view text);

// Composed form (NFC). `text` unchanged when it is not UTF-8.
std::string nfc(std::string_view text);

// The first control, direction-changing or zero-width character as "U+202E", or empty when the text is clean.
// Line feed and tab count as control characters here: names and codes hold neither.
std::optional<std::string> hidden_character(std::string_view text);

// The text as it may be sent to a screen: control, direction-changing and zero-width characters appear as <U+202E>; a
// byte that is not UTF-8 appears as <0x..>. Line feeds stay when `keep_lines`.
std::string shown(std::string_view text, bool keep_lines = false);

// For comparing words: case and accents removed, letters and digits kept, everything else a single space between words.
std::string folded(std::string_view text);

// folded() split at its spaces.
std::vector<std::string> folded_words(std::string_view text);

// How many columns the text takes on a terminal (wide characters 2, combining marks 0).
int shown_width(std::string_view text);

}  // namespace tapbook
