// How far along is long work? Whoever wants to know is told now and then; he must not throw.
#pragma once

#include <cstdint>
#include <functional>

namespace tapbook {

// Told with 0 <= done <= all, both in the same steps of the work.
using Progress = std::function<void(std::int64_t done, std::int64_t all)>;

// Counts steps and tells every 128th.
class Steps {
  public:
    Steps(const Progress& told, std::int64_t all) : told_(told), all_(all) {}
    void one() {
        ++done_;
        if (told_ && done_ % told_every == 0 && done_ <= all_) told_(done_, all_);
    }

  private:
    static constexpr std::int64_t told_every = 128;
    const Progress& told_;
    std::int64_t all_, done_ = 0;
};

}  // namespace tapbook
