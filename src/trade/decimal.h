// How does "13.8" become 13800 mV without passing through a fraction? Decimal text is scaled digit by digit to whole
// small units; nothing is rounded and nothing is guessed ("13,8", "1e3", "0x1F", " 5" are refused, "010" is ten).
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <variant>

namespace tapbook {

// Why a text is not a number, ready to follow the text in a message: `is not a number`, `uses a comma: write 13.8`, ...
struct NotANumber {
    std::string reason;
};

// `text` times 10^digits as a whole number. REQUIRES 0 <= digits <= 6. Accepts [+-]digits[.digits] with at most
// `digits` digits after the point (further zeros are allowed) and up to 12 before it.
std::variant<std::int64_t, NotANumber> scaled(std::string_view text, int digits);

// The shortest text that scaled() reads back: 13800, 3 -> "13.8".
std::string unscaled(std::int64_t number, int digits);

}  // namespace tapbook
