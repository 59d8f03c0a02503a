// Which sets of columns occur, and how much does each weigh? A hash table over bit sets of any width, all of one width.
#pragma once

#include <cstddef>
#include <cstdint>
#include <span>
#include <vector>

namespace tapbook {

class MaskSet {
  public:
    using Word = std::uint64_t;

    explicit MaskSet(std::size_t bits);

    std::size_t words() const { return words_; }
    std::size_t size() const { return weights_.size(); }
    // Adds weight to the mask; an empty mask is kept like any other. REQUIRES: mask has words() words.
    void add(std::span<const Word> mask, std::int64_t weight);
    // In the order in which they first came.
    std::span<const Word> mask(std::size_t i) const { return {masks_.data() + i * words_, words_}; }
    std::int64_t weight(std::size_t i) const { return weights_[i]; }

  private:
    void grow();
    std::size_t slot_of(std::span<const Word> mask) const;

    std::size_t words_;
    std::vector<Word> masks_;
    std::vector<std::int64_t> weights_;
    std::vector<std::uint32_t> slots_;  // place + 1; 0: empty
};

}  // namespace tapbook
