// Years read digit by digit.
#include "trade/model_years.h"

#include <fmt/format.h>

#include <algorithm>

#include "trade/text.h"

namespace tapbook {
namespace {

bool is_digit(char c) {
    return c >= '0' && c <= '9';
}

// REQUIRES: digits only. Numbers beyond `most` come back as most + 1.
int decimal_up_to(std::string_view digits, int most) {
    int number = 0;
    for (const char digit : digits) number = std::min(number * 10 + (digit - '0'), most + 1);
    return number;
}

bool in_range(int year) {
    return year >= earliest_model_year && year <= latest_model_year;
}

}  // namespace

std::string words(const ModelYears& years) {
    if (years.first == years.last) return fmt::format("{}", years.first);
    return fmt::format("{}-{}", years.first, years.last);
}

std::string YearRefusal::message() const {
    const std::string quoted = '"' + shown(piece) + '"';
    constexpr std::string_view write = "write four digits, or the last two";
    switch (reason) {
        case YearRefusalReason::empty:
            return fmt::format("no model year given; {}", write);
        case YearRefusalReason::not_digits:
            return fmt::format("{} is not a model year; {}", quoted, write);
        case YearRefusalReason::wrong_length:
            return fmt::format("{} has {} digits; {}", quoted, piece.size(), write);
        case YearRefusalReason::out_of_range: {
            const std::size_t zeros = std::min(piece.find_first_not_of('0'), piece.size() - 1);
            return fmt::format("{} is the number {}, outside the model years {} to {}; {}", quoted, piece.substr(zeros),
                               earliest_model_year, latest_model_year, write);
        }
        case YearRefusalReason::backwards:
            return fmt::format("{} ends before it begins; write the earlier year first", quoted);
    }
    return {};
}

std::variant<int, YearRefusal> parse_model_year(std::string_view text) {
    const auto refused = [&](YearRefusalReason reason) { return YearRefusal{reason, std::string(text)}; };
    if (text.empty()) return refused(YearRefusalReason::empty);
    if (!std::ranges::all_of(text, is_digit)) return refused(YearRefusalReason::not_digits);
    const int number = decimal_up_to(text, latest_model_year);
    if (text.size() == 2) return number < two_digit_pivot ? 2000 + number : 1900 + number;
    if (!in_range(number)) return refused(YearRefusalReason::out_of_range);
    if (text.size() != 4) return refused(YearRefusalReason::wrong_length);
    return number;
}

std::variant<ModelYears, YearRefusal> parse_model_years(std::string_view text) {
    const std::string_view separator = text.find("..") != text.npos ? ".." : "-";
    const std::size_t at = text.find(separator);
    const auto first = parse_model_year(text.substr(0, at));
    if (const auto* refusal = std::get_if<YearRefusal>(&first)) return *refusal;
    if (at == text.npos) return ModelYears{std::get<int>(first), std::get<int>(first)};
    const auto last = parse_model_year(text.substr(at + separator.size()));
    if (const auto* refusal = std::get_if<YearRefusal>(&last)) return *refusal;
    const ModelYears years{std::get<int>(first), std::get<int>(last)};
    if (years.first > years.last) return YearRefusal{YearRefusalReason::backwards, std::string(text)};
    return years;
}

}  // namespace tapbook
