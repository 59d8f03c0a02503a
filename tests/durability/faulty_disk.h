// A disk that can fail: a SQLite VFS in front of the system's own. It counts every operation that is meant to last
// (write, truncate, sync, delete), and at a chosen one ends the process, reports an error once or for ever, or goes on
// and keeps a record of all of them, from which a power cut can be played.
#pragma once

#include <cstdint>
#include <filesystem>
#include <string>
#include <vector>

namespace tapbook::disk {

enum class Operation { write, truncate, sync, remove };

// One lasting operation, in the order it happened.
struct Event {
    Operation operation = Operation::write;
    std::string file;
    std::int64_t offset = 0;  // of a write; the new size of a truncate
    std::string bytes;        // of a write, while recording
};

enum class Fault {
    none,
    end_process,     // at the chosen operation, half of a write done: what kill -9 leaves
    error_once,      // the chosen operation fails, the next works again
    error_for_ever,  // it and all later ones fail
    full_once,       // the same, with "disk full" on writes
    full_for_ever
};

// Becomes the default VFS on first use; opened files go through it from then on. One thread only.
void install();

// Counting starts anew at 0; the fault strikes at operation number `at` (from 0). With `record` the events keep bytes.
void begin(Fault fault, std::int64_t at, bool record = false);

// Operations since begin().
std::int64_t count();

// Whether the fault has struck.
bool has_struck();

// The events since begin(); with their bytes when recording.
const std::vector<Event>& events();

}  // namespace tapbook::disk
