// What is the next word, number, text or sign of a condition? Only what a plain condition may hold; a comment, a quoted
// name, an exponent and whatever else is strange. For plain_condition_reader.cpp only.
#pragma once

#include <cstdint>
#include <optional>
#include <string_view>

namespace tapbook {

// Every whole number up to here is exact as a double, so that it does not matter which of the two it becomes.
inline constexpr std::int64_t most_plain_whole = std::int64_t{1} << 53;

struct PlainToken {
    enum class Kind { word, number, text, sign, end, strange };
    Kind kind = Kind::end;
    std::string_view written = {};  // a text with its quotes
};

// The token at the start of `text`, which does not start with a blank.
PlainToken plain_token_at(std::string_view text);

// Exactly the double SQLite makes of "13.8": the digits as one whole number, divided by a power of ten in long double.
// Absent for the few of which a correctly rounding reader would make another, and for too many digits.
std::optional<double> exact_real(std::string_view written);

}  // namespace tapbook
