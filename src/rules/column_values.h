// How does a typed value become the cell of a column? Absent is NULL, an unknown word is NULL. For the column tables
// only.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "rules/columns.h"

namespace tapbook::cell {

inline sqlite::Value whole(std::optional<std::int64_t> number) {
    if (!number) return std::monostate{};
    return *number;
}

inline sqlite::Value flag(std::optional<bool> value) {
    if (!value) return std::monostate{};
    return std::int64_t{*value ? 1 : 0};
}

inline sqlite::Value text(std::string_view words) {
    if (words.empty()) return std::monostate{};
    return std::string(words);
}

template <class Kind, class InUnit>
sqlite::Value real(const std::optional<Kind>& quantity, InUnit unit) {
    if (!quantity) return std::monostate{};
    return quantity->in(unit);
}

template <class Enum>
sqlite::Value word(const std::optional<Enum>& value) {
    if (!value) return std::monostate{};
    return std::string(word_of(*value));
}

// The same for an enumeration with an enumerator for "not known".
template <class Enum>
sqlite::Value word_unless(Enum value, Enum unknown) {
    if (value == unknown) return std::monostate{};
    return std::string(word_of(value));
}

}  // namespace tapbook::cell

namespace tapbook {

// The parts of the one table, in its order.
std::span<const Column> car_columns();        // vehicle, system, circuit
std::span<const Column> tap_columns();        // tap, signal, job
std::span<const Column> converter_columns();  // converter
std::span<const Column> chain_columns();      // level, amplifier
std::span<const Column> turn_on_columns();    // turn_on
std::span<const Column> feed_columns();       // feed
std::span<const Column> load_columns();       // load
std::span<const Column> plan_columns();       // plan

}  // namespace tapbook
