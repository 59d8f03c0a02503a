// VINs read character by character. Tables of 49 CFR 565.15.
#include "trade/vin.h"

#include <fmt/format.h>

#include <algorithm>

#include "trade/text.h"

namespace tapbook {
namespace {

// Table IV: the weight of each position. Position 9, the check digit itself, weighs nothing.
constexpr int weights[vin_length] = {8, 7, 6, 5, 4, 3, 2, 10, 0, 9, 8, 7, 6, 5, 4, 3, 2};

// Table III: the value of each letter A to Z; I, O and Q have none.
constexpr int letter_values[] = {1, 2, 3, 4, 5, 6, 7, 8, -1, 1, 2, 3, 4, 5, -1, 7, -1, 9, 2, 3, 4, 5, 6, 7, 8, 9};

// Table VII: the codes of 30 model years, then they repeat. Neither I, O, Q, U, Z nor 0.
constexpr std::string_view year_codes = "ABCDEFGHJKLMNPRSTVWXY123456789";
constexpr int first_code_year = 1980;

constexpr int check_position = 9;
constexpr int year_position = 10;

enum class Region { north_america, china, elsewhere, unassigned };

bool is_digit(char c) {
    return c >= '0' && c <= '9';
}

bool is_letter(char c) {
    return c >= 'A' && c <= 'Z';
}

char capital(char c) {
    return c >= 'a' && c <= 'z' ? static_cast<char>(c - 'a' + 'A') : c;
}

int value_of(char c) {
    return is_digit(c) ? c - '0' : letter_values[c - 'A'];
}

bool is_year_code(char c) {
    return year_codes.find(c) != year_codes.npos;
}

// 6 and 7A to 7E are Oceania.
Region region_of(std::string_view vin) {
    const char first = vin[0], second = vin[1];
    if (first == '0') return Region::unassigned;
    if (first >= '1' && first <= '5') return Region::north_america;
    if (first == '7' && !(second >= 'A' && second <= 'E')) return Region::north_america;
    return first == 'L' ? Region::china : Region::elsewhere;
}

// The whole UTF-8 character that begins at `start`, as typed.
std::string character_at(std::string_view text, std::size_t start) {
    std::size_t end = start + 1;
    while (end < text.size() && (static_cast<unsigned char>(text[end]) & 0xC0U) == 0x80U) ++end;
    return std::string(text.substr(start, end - start));
}

enum class AnyCharacter { refused, allowed };

// The 17 characters that count, as capitals.
std::variant<std::string, VinRefusal> characters(std::string_view text, AnyCharacter any) {
    using enum VinRefusalReason;
    std::string kept;
    for (std::size_t i = 0; i < text.size(); ++i) {
        const char c = capital(text[i]);
        if (c == ' ' || c == '-') continue;
        const int position = static_cast<int>(kept.size()) + 1;
        const bool is_any = c == '?' && any == AnyCharacter::allowed;
        if (!is_digit(c) && !is_letter(c) && !is_any)
            return VinRefusal{foreign_character, character_at(text, i), position};
        if (is_letter(c) && value_of(c) < 0) return VinRefusal{confusable_letter, character_at(text, i), position};
        kept.push_back(c);
    }
    if (kept.empty()) return VinRefusal{empty, {}};
    if (kept.size() != vin_length) return VinRefusal{wrong_length, {}, 0, static_cast<int>(kept.size())};
    return kept;
}

}  // namespace

std::string VinRefusal::message() const {
    const auto at_fault = fmt::format("\"{}\" at position {}", shown(piece), position);
    switch (reason) {
        case VinRefusalReason::empty:
            return fmt::format("no VIN given; write its {} characters", vin_length);
        case VinRefusalReason::wrong_length:
            return fmt::format("a VIN has {} characters, this has {}", vin_length, length);
        case VinRefusalReason::confusable_letter:
            return fmt::format("{} is in no VIN; it may be the digit {}", at_fault,
                               piece == "I" || piece == "i" ? '1' : '0');
        case VinRefusalReason::foreign_character:
            return fmt::format("{} is in no VIN; write digits and the letters A to Z without I, O and Q", at_fault);
        case VinRefusalReason::no_year_code:
            return fmt::format("{} is no model-year code; it is never 0, U or Z", at_fault);
        case VinRefusalReason::names_nothing:
            return "a pattern of nothing but ? fits every car; write the characters you know";
    }
    return {};
}

std::variant<Vin, VinRefusal> parse_vin(std::string_view text) {
    const auto read = characters(text, AnyCharacter::refused);
    if (const auto* refusal = std::get_if<VinRefusal>(&read)) return *refusal;
    Vin vin(std::get<std::string>(read));
    const Region region = region_of(vin.text());
    const char year = vin.at(year_position);
    if ((region == Region::north_america || region == Region::unassigned) && !is_year_code(year))
        return VinRefusal{VinRefusalReason::no_year_code, std::string(1, year), year_position};
    return vin;
}

int weighted_sum(const Vin& vin) {
    int sum = 0;
    for (int position = 1; position <= vin_length; ++position)
        sum += value_of(vin.at(position)) * weights[position - 1];
    return sum;
}

char check_digit(const Vin& vin) {
    return "0123456789X"[weighted_sum(vin) % 11];
}

CheckVerdict check_verdict(const Vin& vin) {
    if (vin.at(check_position) == check_digit(vin)) return CheckVerdict::matches;
    switch (region_of(vin.text())) {
        case Region::north_america:
        case Region::china:
            return CheckVerdict::mismatch;
        case Region::elsewhere:
        case Region::unassigned:
            break;
    }
    return CheckVerdict::not_used;
}

std::optional<int> model_year(const Vin& vin) {
    if (region_of(vin.text()) != Region::north_america) return std::nullopt;
    const int year = first_code_year + static_cast<int>(year_codes.find(vin.at(year_position)));
    return is_digit(vin.at(7)) ? year : year + static_cast<int>(year_codes.size());
}

std::variant<VinPattern, VinRefusal> parse_vin_pattern(std::string_view text) {
    const auto read = characters(text, AnyCharacter::allowed);
    if (const auto* refusal = std::get_if<VinRefusal>(&read)) return *refusal;
    const auto& kept = std::get<std::string>(read);
    if (kept.find_first_not_of('?') == kept.npos) return VinRefusal{VinRefusalReason::names_nothing, {}};
    return VinPattern(kept);
}

bool vin_matches(const VinPattern& pattern, const Vin& vin) {
    return std::ranges::equal(pattern.text(), vin.text(), [](char p, char v) { return p == '?' || p == v; });
}

bool vin_matches(std::string_view pattern, const Vin& vin) {
    const auto read = parse_vin_pattern(pattern);
    const auto* known = std::get_if<VinPattern>(&read);
    return known != nullptr && vin_matches(*known, vin);
}

}  // namespace tapbook
