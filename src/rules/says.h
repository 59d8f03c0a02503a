// How does a rule's sentence get its numbers? {relation.column} puts in a value as it is, {relation.column:.1f} a
// number with so many digits; nothing else is special. What is not known reads "unknown".
#pragma once

#include <cstddef>
#include <functional>
#include <optional>
#include <string>
#include <string_view>

#include "rules/columns.h"

namespace tapbook {

// What is wrong with a sentence.
struct SaysTrouble {
    std::string message;  // `the sentence names an unknown column "tap.volt"`
    std::string hint;
    std::size_t offset;  // of the offending piece, in bytes from 0
};

// Absent when every placeholder names a column with a format that suits it.
std::optional<SaysTrouble> says_trouble(std::string_view sentence);

// The sentence with its values. REQUIRES says_trouble(sentence) is absent.
std::string filled(std::string_view sentence, const std::function<sqlite::Value(const Column&)>& value_of);

// The name nearest to a mistyped "relation.column" or bare column, for a hint: "did you mean tap.drive?"; "" when none
// is.
std::string nearest_column_hint(std::string_view typed);

}  // namespace tapbook
