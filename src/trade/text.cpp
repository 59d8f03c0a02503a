// Unicode work behind text.h, by utf8proc.
#include "trade/text.h"

#include <fmt/format.h>
#include <utf8proc.h>

#include <algorithm>
#include <cstdlib>
#include <memory>

namespace tapbook {
namespace {

const utf8proc_uint8_t* bytes_of(std::string_view text) {
    return reinterpret_cast<const utf8proc_uint8_t*>(text.data());
}

constexpr bool is_ascii(char byte) {
    return static_cast<unsigned char>(byte) < 0x80;
}

bool is_ascii(std::string_view text) {
    return std::all_of(text.begin(), text.end(), [](char byte) { return is_ascii(byte); });
}

bool is_plain(utf8proc_int32_t code) {  // printable ASCII
    return code >= 0x20 && code < 0x7F;
}

bool all_plain(std::string_view text) {
    return std::all_of(text.begin(), text.end(), [](char byte) { return is_plain(byte); });
}

std::string in_small_letters(std::string_view ascii) {
    std::string out(ascii);
    for (char& letter : out)
        if (letter >= 'A' && letter <= 'Z') letter = static_cast<char>(letter - 'A' + 'a');
    return out;
}

// Calls each(code point, its bytes); a byte that starts no character is given as code point -1.
template <class Each>
void for_each_character(std::string_view text, Each each) {
    while (!text.empty()) {
        if (is_ascii(text[0])) {  // nearly all of them: no need to ask
            each(utf8proc_int32_t{text[0]}, text.substr(0, 1));
            text.remove_prefix(1);
            continue;
        }
        utf8proc_int32_t code = -1;
        const auto taken = utf8proc_iterate(bytes_of(text), static_cast<utf8proc_ssize_t>(text.size()), &code);
        const std::size_t length = taken > 0 ? static_cast<std::size_t>(taken) : 1;
        each(taken > 0 ? code : -1, text.substr(0, length));
        text.remove_prefix(length);
    }
}

std::string mapped(std::string_view text, int options) {
    utf8proc_uint8_t* out = nullptr;
    const auto length = utf8proc_map(bytes_of(text), static_cast<utf8proc_ssize_t>(text.size()), &out,
                                     static_cast<utf8proc_option_t>(options | UTF8PROC_STABLE));
    const std::unique_ptr<utf8proc_uint8_t, decltype(&std::free)> owned(out, &std::free);
    if (length < 0) return std::string(text);
    return std::string(reinterpret_cast<const char*>(out), static_cast<std::size_t>(length));
}

bool is_hidden(utf8proc_int32_t code) {
    if (is_plain(code)) return false;
    const auto category = utf8proc_category(code);
    return category == UTF8PROC_CATEGORY_CC || category == UTF8PROC_CATEGORY_CF || category == UTF8PROC_CATEGORY_ZL ||
           category == UTF8PROC_CATEGORY_ZP || category == UTF8PROC_CATEGORY_CN || category == UTF8PROC_CATEGORY_CO;
}

bool is_wordlike(utf8proc_int32_t code) {
    if (code >= 0 && code < 0x80)
        return (code >= '0' && code <= '9') || (code >= 'a' && code <= 'z') || (code >= 'A' && code <= 'Z');
    const auto category = utf8proc_category(code);
    return (category >= UTF8PROC_CATEGORY_LU && category <= UTF8PROC_CATEGORY_LO) ||
           (category >= UTF8PROC_CATEGORY_ND && category <= UTF8PROC_CATEGORY_NO);
}

}  // namespace

bool is_utf8(std::string_view text) {
    if (is_ascii(text)) return true;
    bool good = true;
    for_each_character(text, [&](utf8proc_int32_t code, std::string_view) { good = good && code >= 0; });
    return good;
}

std::string nfc(std::string_view text) {
    if (is_ascii(text)) return std::string(text);  // Unicode Standard Annex 15: ASCII is in every form
    return mapped(text, UTF8PROC_COMPOSE);
}

std::optional<std::string> hidden_character(std::string_view text) {
    if (all_plain(text)) return std::nullopt;
    std::optional<std::string> found;
    for_each_character(text, [&](utf8proc_int32_t code, std::string_view) {
        if (!found && code >= 0 && is_hidden(code)) found = fmt::format("U+{:04X}", static_cast<unsigned>(code));
    });
    return found;
}

std::string shown(std::string_view text, bool keep_lines) {
    if (all_plain(text)) return std::string(text);
    std::string out;
    for_each_character(text, [&](utf8proc_int32_t code, std::string_view character) {
        if (code < 0)
            out += fmt::format("<0x{:02X}>", static_cast<unsigned char>(character[0]));
        else if (is_hidden(code) && !(keep_lines && code == '\n'))
            out += fmt::format("<U+{:04X}>", static_cast<unsigned>(code));
        else
            out += character;
    });
    return out;
}

std::string folded(std::string_view text) {
    constexpr int as_compared = UTF8PROC_COMPAT | UTF8PROC_DECOMPOSE | UTF8PROC_CASEFOLD | UTF8PROC_STRIPMARK;
    const std::string plain = is_ascii(text) ? in_small_letters(text) : mapped(text, as_compared);
    std::string out;
    bool gap = false;
    for_each_character(plain, [&](utf8proc_int32_t code, std::string_view character) {
        if (code < 0 || !is_wordlike(code)) {
            gap = true;
            return;
        }
        if (gap && !out.empty()) out += ' ';
        gap = false;
        out += character;
    });
    return out;
}

std::vector<std::string> folded_words(std::string_view text) {
    std::vector<std::string> words;
    const std::string all = folded(text);
    std::size_t at = 0;
    while (at < all.size()) {
        const auto end = std::min(all.find(' ', at), all.size());
        words.push_back(all.substr(at, end - at));
        at = end + 1;
    }
    return words;
}

int shown_width(std::string_view text) {
    if (all_plain(text)) return static_cast<int>(text.size());
    int width = 0;
    for_each_character(
        text, [&](utf8proc_int32_t code, std::string_view) { width += code < 0 ? 1 : utf8proc_charwidth(code); });
    return width;
}

}  // namespace tapbook
