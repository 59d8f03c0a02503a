// How is one stored field taken out of a record with its type? Absent stays absent; a field of another type counts as
// absent.
#pragma once

#include <optional>
#include <string>

#include "electrical/electrical.h"
#include "trade/value.h"

namespace tapbook {

std::string text_field(const Values& values, std::string_view key);  // "" when absent
std::optional<int> whole_field(const Values& values, std::string_view key);
std::optional<bool> flag_field(const Values& values, std::string_view key);
TextList list_field(const Values& values, std::string_view key);

// The enumerator whose word is stored; absent for no word or an unknown one.
template <class Enum>
std::optional<Enum> word_field(const Values& values, std::string_view key) {
    return parse_word<Enum>(text_field(values, key));
}

// The stored whole number spoken in `unit` (dc_millivolts, milliohms, ...).
template <class UnitType>
auto quantity_field(const Values& values, std::string_view key, UnitType unit) -> std::optional<decltype(unit(1))> {
    const auto* number = find_value<std::int64_t>(values, key);
    if (number == nullptr) return std::nullopt;
    return unit(*number);
}

}  // namespace tapbook
