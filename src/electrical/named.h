// How does an enumeration carry its words? One table per enumeration, read by parsing, printing, JSON and help alike.
// A table is a specialisation of NamedValues beside its enumeration; its order is the order of the enumerators.
#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <string_view>

namespace tapbook {

template <class Enum>
struct Named {
    Enum value;
    std::string_view word;
};

// Specialise with `static constexpr Named<Enum> all[] = {...};`, every enumerator once, in order of declaration.
template <class Enum>
struct NamedValues;

// Every value with its word, in order of declaration.
template <class Enum>
constexpr std::span<const Named<Enum>> words_of() {
    return NamedValues<Enum>::all;
}

// The word of `value`; empty only for a number that is no enumerator.
template <class Enum>
constexpr std::string_view word_of(Enum value) {
    for (const Named<Enum>& named : words_of<Enum>()) {
        if (named.value == value) return named.word;
    }
    return {};
}

// The value spelled exactly `word` (case counts, no blanks trimmed); absent for anything else.
template <class Enum>
constexpr std::optional<Enum> parse_word(std::string_view word) {
    for (const Named<Enum>& named : words_of<Enum>()) {
        if (named.word == word) return named.value;
    }
    return std::nullopt;
}

// Is the table in order of declaration, without gap, repetition or empty word? Checked beside each table.
template <class Enum>
constexpr bool table_is_sound() {
    const auto table = words_of<Enum>();
    for (std::size_t i = 0; i < table.size(); ++i) {
        if (table[i].value != static_cast<Enum>(i) || table[i].word.empty()) return false;
        for (std::size_t j = 0; j < i; ++j) {
            if (table[j].word == table[i].word) return false;
        }
    }
    return true;
}

}  // namespace tapbook
