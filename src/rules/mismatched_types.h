// Does a condition compare a text with a number? SQLite would answer, always the same, and nobody would notice that the
// rule is dead. For rule_reader.cpp only.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

namespace tapbook {

struct MismatchedTypes {
    std::size_t offset = 0;  // of the left one of the two, in bytes
    std::string message, hint;
};

// The first comparison whose two sides stand bare beside its sign, one a text, the other a number. Columns count by
// their type in the table. Sides that are reckoned with are not looked at. REQUIRES: the sandbox took `when`.
std::optional<MismatchedTypes> mismatched_types(std::string_view when);

}  // namespace tapbook
