// Cutting off one token, by its first character.
#include "rules/plain_condition_tokens.h"

#include <algorithm>
#include <charconv>

namespace tapbook {
namespace {

bool is_digit(char c) {
    return c >= '0' && c <= '9';
}

bool is_letter(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || c == '_';
}

std::size_t length_while(std::string_view text, bool (*belongs)(char)) {
    return static_cast<std::size_t>(std::find_if_not(text.begin(), text.end(), belongs) - text.begin());
}

// "13.8" or "13"; 0 for what goes on as something else (an exponent, a second point, letters).
std::size_t length_of_number(std::string_view text) {
    std::size_t length = length_while(text, is_digit);
    if (length < text.size() && text[length] == '.') {
        const auto digits = length_while(text.substr(length + 1), is_digit);
        if (digits == 0) return 0;
        length += 1 + digits;
    }
    const bool goes_on = length < text.size() && (is_letter(text[length]) || text[length] == '.');
    return goes_on ? 0 : length;
}

// With its quotes, '' standing for one; 0 when it is never closed.
std::size_t length_of_text(std::string_view text) {
    for (std::size_t at = 1; at < text.size(); ++at) {
        if (text[at] != '\'') continue;
        if (at + 1 == text.size() || text[at + 1] != '\'') return at + 1;
        ++at;
    }
    return 0;
}

std::size_t length_of_sign(std::string_view text) {
    constexpr std::string_view strange[] = {"--", "/*", "<<", ">>"};  // comments, shifts
    constexpr std::string_view two[] = {"==", "<>", "!=", "<=", ">="};
    for (const auto one : strange)
        if (text.starts_with(one)) return 0;
    for (const auto one : two)
        if (text.starts_with(one)) return 2;
    return std::string_view("=<>+-*/(),.").find(text[0]) == std::string_view::npos ? 0 : 1;
}

}  // namespace

PlainToken plain_token_at(std::string_view text) {
    if (text.empty()) return {};
    PlainToken token;
    std::size_t length = 0;
    if (is_letter(text[0])) {
        token.kind = PlainToken::Kind::word;
        length = length_while(text, [](char c) { return is_letter(c) || is_digit(c); });
    } else if (is_digit(text[0])) {
        token.kind = PlainToken::Kind::number;
        length = length_of_number(text);
    } else if (text[0] == '\'') {
        token.kind = PlainToken::Kind::text;
        length = length_of_text(text);
    } else {
        token.kind = PlainToken::Kind::sign;
        length = length_of_sign(text);
    }
    if (length == 0) return {PlainToken::Kind::strange, text};
    token.written = text.substr(0, length);
    return token;
}

std::optional<double> exact_real(std::string_view written) {
    double rounded = 0;
    const auto read = std::from_chars(written.data(), written.data() + written.size(), rounded);
    std::int64_t digits = 0;
    long double scale = 1;
    bool behind_point = false;
    for (const char c : written) {
        if (c == '.') {
            behind_point = true;
            continue;
        }
        digits = digits * 10 + (c - '0');
        if (digits > most_plain_whole) return std::nullopt;
        if (behind_point) scale *= 10;
    }
    const auto as_sqlite = static_cast<double>(static_cast<long double>(digits) / scale);
    return read.ec == std::errc() && as_sqlite == rounded ? std::optional(rounded) : std::nullopt;
}

}  // namespace tapbook
