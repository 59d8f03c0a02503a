// What may the words that a person typed be? A number may be a year or part of a name, a year may hang on a name
// ("ostrel18"), neighbours may be one word ("os trel"), and one word may end or begin with a body ("ostrelwagon").
// For the files of this folder.
#pragma once

#include "catalog/name_table.h"
#include "catalog/typed_pattern.h"

namespace tapbook {

using WordSet = std::uint32_t;  // bit i: the i-th typed word

inline constexpr std::size_t most_words = 12;   // further words name nothing
inline constexpr int cost_of_edit = 2;          // one letter added, left out, changed or swapped
inline constexpr int cost_of_start = 1;         // only the start of the word was typed
inline constexpr int cost_of_foreign_word = 6;  // a typed word that names nothing of the car
inline constexpr int cost_of_foreign_year = 3;  // the car was not built in the typed year

// How many edits words of this many letters may hold and still be what was meant.
constexpr std::size_t edits_believed(std::size_t letters) {
    return letters < 4 ? 0 : letters < 6 ? 1 : letters < 9 ? 2 : 3;
}

// The same for one of several words, where the others may speak for it.
constexpr std::size_t edits_considered(std::size_t letters) {
    return letters < 2 ? 0 : letters < 4 ? 1 : letters < 6 ? 2 : 3;
}

// Neighbouring typed words read as one, or what is left of them after a body's name was taken off.
struct TypedPiece {
    WordSet words = 0;
    std::string text, reversed;
    TypedPattern forward, backward;
    std::uint64_t letters;
    std::optional<std::uint32_t> body;  // the body whose name was taken off
    int body_edits = 0;

    TypedPiece(WordSet of_words, std::string glued);
};

// One way to read what was typed.
struct TypedReading {
    std::vector<std::string> words;
    std::optional<int> year;
};

// The likeliest first: with the year that is in the words, when there is one, then with its digits as part of a name,
// where some name holds them.
std::vector<TypedReading> readings_of(std::string_view text, const NameTable& names);

std::vector<TypedPiece> pieces_of(const std::vector<std::string>& words, const NameTable& names);

}  // namespace tapbook
