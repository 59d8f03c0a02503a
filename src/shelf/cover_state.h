// What do the chosen columns cover, and what would each further one add? Kept up to date row by row.
#pragma once

#include <cstdint>
#include <vector>

#include "shelf/cover.h"

namespace tapbook {

class CoverState {
  public:
    // `prices`: one for each row, from 0 to its weight, or none at all.
    explicit CoverState(const Cover& cover, std::vector<std::int64_t> prices = {});

    std::int64_t gain(std::uint32_t column) const { return gains_[column]; }
    // The prices of the open rows that the column would cover, and what all open rows weigh above their prices.
    // REQUIRES: prices.
    std::int64_t price(std::uint32_t column) const { return priced_gains_[column]; }
    std::int64_t above_prices() const { return above_prices_; }
    std::int64_t weight() const { return weight_; }
    std::int64_t steps() const { return steps_; }

    void choose(std::uint32_t column);
    void drop(std::uint32_t column);  // REQUIRES: chosen

  private:
    // Row `r` opens (sign 1) or closes (-1).
    void turn(std::uint32_t r, std::int64_t sign);

    const Cover& cover_;
    std::vector<std::int64_t> prices_, gains_, priced_gains_;
    std::vector<std::uint32_t> times_;  // by row: how many chosen columns cover it
    std::int64_t weight_ = 0, above_prices_ = 0, steps_ = 0;
};

}  // namespace tapbook
