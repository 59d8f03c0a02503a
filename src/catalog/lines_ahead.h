// What stands in the lines of a pack, one after another? While the caller puts some into the store, another thread
// reads the next ones. For the files of this folder only.
#pragma once

#include <cstddef>
#include <future>
#include <span>
#include <vector>

#include "catalog/state.h"

namespace tapbook {

class LinesAhead {
  public:
    // The records and their lines outlive this.
    explicit LinesAhead(std::span<const PackedRecord> records);
    ~LinesAhead();
    LinesAhead(const LinesAhead&) = delete;
    LinesAhead& operator=(const LinesAhead&) = delete;

    // The next record, until the call after; nullptr when its line is not in the accepted form. REQUIRES: called no
    // more than once for each record.
    const RecordTokens* next();

  private:
    struct Line {
        RecordTokens tokens;
        bool is_record = false;
    };
    void read(std::vector<Line>& lines, std::size_t first) const;
    void start();

    std::span<const PackedRecord> records_;
    std::vector<Line> now_, ahead_;
    std::size_t first_ = 0, at_ = 0;  // of the lines in now_; the next of them
    std::future<void> reading_;       // of ahead_
};

}  // namespace tapbook
