// What working the derived tables out again did.
#pragma once

#include <cstdint>

namespace tapbook {

struct RebuildReport {
    std::int64_t notes = 0, paths = 0;
    bool renumbered = false;     // the ledger was not in order of its paths, and is now
    bool names_renewed = false;  // the packed names did not say what the entries say, and do now
    std::int64_t read_now = 0;   // records kept unread by an earlier version that this one knows
    bool written = false;
};

}  // namespace tapbook
