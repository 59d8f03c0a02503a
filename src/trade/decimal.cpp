// See decimal.h.
#include "trade/decimal.h"

#include <fmt/format.h>

#include <algorithm>

namespace tapbook {
namespace {

bool all_digits(std::string_view text) {
    return std::all_of(text.begin(), text.end(), [](char c) { return c >= '0' && c <= '9'; });
}

// A sign or none, digits, and perhaps a point with digits after it.
bool has_shape(std::string_view text) {
    if (!text.empty() && (text.front() == '-' || text.front() == '+')) text.remove_prefix(1);
    const auto point = text.find('.');
    const auto before = text.substr(0, point);
    if (before.empty() || !all_digits(before)) return false;
    if (point == std::string_view::npos) return true;
    const auto after = text.substr(point + 1);
    return !after.empty() && all_digits(after);
}

std::string shape_complaint(std::string_view text, int digits) {
    if (text.empty()) return "is empty: write a number";
    std::string with_point(text);
    if (const auto comma = text.find(','); comma != std::string_view::npos) with_point[comma] = '.';
    if (has_shape(with_point)) return fmt::format("uses a comma: write {}", with_point);
    return digits == 0 ? "is not a number: write digits alone, like 12"
                       : "is not a number: write digits with at most one point, like 13.8";
}

}  // namespace

std::variant<std::int64_t, NotANumber> scaled(std::string_view text, int digits) {
    if (!has_shape(text)) return NotANumber{shape_complaint(text, digits)};
    std::string_view rest = text;
    const bool negative = !rest.empty() && rest.front() == '-';
    if (negative || (!rest.empty() && rest.front() == '+')) rest.remove_prefix(1);
    const auto point = rest.find('.');
    const std::string_view before = rest.substr(0, point);
    std::string_view after = point == std::string_view::npos ? std::string_view{} : rest.substr(point + 1);
    while (static_cast<int>(after.size()) > digits && after.back() == '0') after.remove_suffix(1);
    if (static_cast<int>(after.size()) > digits)
        return NotANumber{
            digits == 0 ? "must be a whole number"
                        : fmt::format("has more than {} digit{} after the point", digits, digits == 1 ? "" : "s")};
    const auto first_digit = std::min(before.find_first_not_of('0'), before.size());
    if (before.size() - first_digit > 12) return NotANumber{"is far too large"};
    std::int64_t number = 0;
    for (const char c : before) number = number * 10 + (c - '0');
    for (int i = 0; i < digits; ++i)
        number =
            number * 10 + (static_cast<std::size_t>(i) < after.size() ? after[static_cast<std::size_t>(i)] - '0' : 0);
    return negative ? -number : number;
}

std::string unscaled(std::int64_t number, int digits) {
    std::string text = std::to_string(number < 0 ? -number : number);
    if (static_cast<int>(text.size()) <= digits)
        text.insert(0, static_cast<std::size_t>(digits) + 1 - text.size(), '0');
    if (digits > 0) {
        text.insert(text.size() - static_cast<std::size_t>(digits), ".");
        while (text.back() == '0') text.pop_back();
        if (text.back() == '.') text.pop_back();
    }
    return number < 0 ? "-" + text : text;
}

}  // namespace tapbook
