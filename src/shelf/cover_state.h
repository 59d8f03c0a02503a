// What do the chosen columns cover, and what would each further one add? Kept up to date row by row.
#pragma once

#include <cstdint>
#include <vector>

#include "shelf/cover.h"

namespace tapbook {

class CoverState {
  public:
    explicit CoverState(const Cover& cover);

    std::int64_t gain(std::uint32_t column) const { return gains_[column]; }
    std::int64_t weight() const { return weight_; }
    std::int64_t steps() const { return steps_; }

    void choose(std::uint32_t column);
    void drop(std::uint32_t column);  // REQUIRES: chosen

  private:
    const Cover& cover_;
    std::vector<std::int64_t> gains_;
    std::vector<std::uint32_t> times_;  // by row: how many chosen columns cover it
    std::int64_t weight_ = 0, steps_ = 0;
};

}  // namespace tapbook
