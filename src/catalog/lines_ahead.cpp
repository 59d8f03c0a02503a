// Two lots of lines that change places: one is taken from, one is read into.
#include "catalog/lines_ahead.h"

#include <algorithm>

namespace tapbook {
namespace {

constexpr std::size_t lines_together = 256;  // long enough that starting a thread does not count

}  // namespace

LinesAhead::LinesAhead(std::span<const PackedRecord> records) : records_(records) {
    const std::size_t together = std::min(lines_together, records_.size());
    now_.resize(together);
    ahead_.resize(together);
    read(now_, 0);
    start();
}

LinesAhead::~LinesAhead() {
    if (reading_.valid()) reading_.wait();
}

void LinesAhead::read(std::vector<Line>& lines, std::size_t first) const {
    const std::size_t count = std::min(lines.size(), records_.size() - first);
    for (std::size_t i = 0; i < count; ++i) lines[i].is_record = lines[i].tokens.read(records_[first + i].line);
}

void LinesAhead::start() {
    const std::size_t first = first_ + now_.size();
    if (first >= records_.size()) return;
    reading_ = std::async(std::launch::async, [this, first] { read(ahead_, first); });
}

const RecordTokens* LinesAhead::next() {
    if (at_ == now_.size()) {
        reading_.get();
        std::swap(now_, ahead_);
        first_ += now_.size();
        at_ = 0;
        start();
    }
    const Line& line = now_[at_++];
    return line.is_record ? &line.tokens : nullptr;
}

}  // namespace tapbook
