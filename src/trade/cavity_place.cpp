// See cavity_place.h.
#include "trade/cavity_place.h"

#include <algorithm>
#include <charconv>

namespace tapbook {
namespace {

bool is_digit(char c) {
    return c >= '0' && c <= '9';
}

// The number behind the letters of a block; absent when anything else stands there.
std::optional<int> cavity_number(std::string_view cavity) {
    const auto begins = std::find_if(cavity.begin(), cavity.end(), is_digit);
    const auto is_block = [](char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || c == ' '; };
    if (!std::all_of(cavity.begin(), begins, is_block)) return std::nullopt;
    int number = 0;
    const char* end = cavity.data() + cavity.size();
    const auto read = std::from_chars(cavity.data() + (begins - cavity.begin()), end, number);
    if (read.ec != std::errc{} || read.ptr != end) return std::nullopt;
    return number;
}

}  // namespace

std::optional<int> cavity_columns(const TapPoint& tap) {
    if (!tap.cavities || !tap.cavity_rows || *tap.cavity_rows < 1 || *tap.cavity_rows > *tap.cavities)
        return std::nullopt;
    return (*tap.cavities + *tap.cavity_rows - 1) / *tap.cavity_rows;
}

std::optional<CavityPlace> cavity_place(const TapPoint& tap, std::string_view cavity) {
    const auto columns = cavity_columns(tap);
    const auto number = cavity_number(cavity);
    if (!columns || !number || *number < 1 || *number > *tap.cavities) return std::nullopt;
    return CavityPlace{(*number - 1) / *columns + 1, (*number - 1) % *columns + 1};
}

}  // namespace tapbook
