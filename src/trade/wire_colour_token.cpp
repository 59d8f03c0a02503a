// One pass over the bytes; ASCII only, so that no locale has a say in what a letter is.
#include "trade/wire_colour_token.h"

namespace tapbook {
namespace {

bool is_blank(char c) {
    return c == ' ' || c == '\t';
}
bool is_letter(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}
bool is_separator(char c) {
    return c == '/' || c == '-' || c == ',' || c == '&';
}
bool continues_character(char c) {
    return (static_cast<unsigned char>(c) & 0xC0) == 0x80;
}

}  // namespace

bool ColourToken::is_letters() const {
    return is_letter(lower[0]);
}

ColourTokens colour_tokens(std::string_view text) {
    ColourTokens result;
    for (std::size_t at = 0; at < text.size();) {
        if (is_blank(text[at])) {
            ++at;
            continue;
        }
        std::size_t end = at + 1;
        const bool letters = is_letter(text[at]);
        const bool known = letters || is_separator(text[at]);
        while (end < text.size() && (letters ? is_letter(text[end]) : !known && continues_character(text[end]))) ++end;
        const std::string_view typed = text.substr(at, end - at);
        std::string lower(typed);
        if (letters)
            for (char& c : lower) c = static_cast<char>(c | 0x20);
        const bool blank_before = at > 0 && is_blank(text[at - 1]);
        ColourToken token{std::move(lower), typed, at, blank_before};
        if (!known) {
            result.stranger = std::move(token);
            return result;
        }
        result.tokens.push_back(std::move(token));
        at = end;
    }
    return result;
}

}  // namespace tapbook
