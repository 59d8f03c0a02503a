// How far is a typed word from a name, for thousands of names in a row? Restricted Damerau-Levenshtein distance, one
// machine word per letter of the name (bit vectors: Hyyroe, "A bit-vector algorithm for computing Levenshtein and
// Damerau edit distances", 2003). The plain table of trade/nearest.h is its twin.
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <span>
#include <string_view>

namespace tapbook {

class TypedPattern {
  public:
    static constexpr std::size_t longest = 64;

    // REQUIRES: 1 to `longest` bytes; folded, since letters are compared as they are.
    explicit TypedPattern(std::string_view typed);

    std::size_t size() const { return size_; }

    // Fewest letters added, left out, changed or swapped with their neighbour, counted in bytes.
    std::size_t distance(std::string_view name) const;

    // distances[i]: of the first i typed letters to the whole name, for i from 0 to size().
    // REQUIRES distances.size() > size().
    void prefix_distances(std::string_view name, std::span<std::uint8_t> distances) const;

  private:
    struct Column {
        std::uint64_t up, down;  // where the distance grows and falls from one typed letter to the next
        std::size_t last;
    };
    Column last_column(std::string_view name) const;

    std::array<std::uint64_t, 256> places_{};  // of each letter in the typed word
    std::size_t size_;
};

// Which letters occur: a digit or letter each has a bit (others share them). At least as many edits lie between two
// words as letters of one that the other has not.
std::uint64_t letters_of(std::string_view folded);

}  // namespace tapbook
