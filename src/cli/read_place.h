// Which place of a job's car was read?
#pragma once

#include <string>

#include "cli/command.h"

namespace tapbook {

// A tap point, or the sound system.
struct ReadPlace {
    std::string path;
    NoteKind kind = NoteKind::pair;
};

// The place that the words name within the job's sound system; a car whose system is not recorded lends the names of
// all of them. No words: the sound system with `is_system`, else the planned tap. Throws NoAnswer or UsageError.
ReadPlace read_place(const CarFacts& car, const ShopJob& job, const std::string& words, bool is_system);

}  // namespace tapbook
