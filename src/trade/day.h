// How is a calendar day written and counted? ISO 8601 text (YYYY-MM-DD) and days since 1970-01-01, proleptic Gregorian.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace tapbook {

// Days since 1970-01-01, absent unless `text` is exactly YYYY-MM-DD and such a day exists.
std::optional<std::int64_t> day_number(std::string_view text);

// The text of a day number between the years 0000 and 9999.
std::string day_text(std::int64_t day);

}  // namespace tapbook
