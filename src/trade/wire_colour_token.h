// The pieces of a typed colour: runs of letters and the separators / - , and &. Blanks only separate pieces.
// Not part of the folder's door.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace tapbook {

struct ColourToken {
    std::string lower;       // the letters in lower case; the character itself for a separator
    std::string_view typed;  // as in the text
    std::size_t offset;      // in bytes
    bool blank_before;

    std::size_t end() const { return offset + typed.size(); }
    bool is(std::string_view text) const { return lower == text; }
    bool is_letters() const;
};

struct ColourTokens {
    std::vector<ColourToken> tokens;      // up to the first character that belongs to no colour
    std::optional<ColourToken> stranger;  // that character, a whole one where it is UTF-8
};

// REQUIRES: `text` outlives the result.
ColourTokens colour_tokens(std::string_view text);

}  // namespace tapbook
