// What can follow the words typed so far? Commands, options and words of tables from the command table; cars, sound
// systems, tap points and amplifiers from the catalog. Used by the completion scripts of the shells.
#pragma once

#include "cli/command.h"

namespace tapbook {

struct Completion {
    std::string value;        // one line without tabs, as it is to be typed; the shell quotes it
    std::string description;  // one line that is safe to show; may be empty
};

struct Completions {
    std::vector<Completion> list;
    bool files = false;    // the shell shall offer files as well
    bool folders = false;  // or folders
};

// Everything that starts with `current` and fits behind `before` (the words after the program's name). Never throws:
// what cannot be read is not offered.
Completions completions(const Session& session, const std::vector<std::string>& before, const std::string& current);

}  // namespace tapbook
