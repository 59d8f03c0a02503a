// How do the words of a command line become a command and its options? CLI11 splits them by the command table; values
// stay text.
#pragma once

#include "cli/command.h"

namespace tapbook {

struct Invocation {
    const CommandSpec* command = nullptr;  // nullptr: help is wanted for the whole program
    bool help = false;
    bool version = false;
    Parsed parsed;
};

// Throws UsageError: unknown command or option (with the nearest), missing or superfluous words, an option without its
// value.
Invocation parse_command_line(const std::vector<std::string>& words);

}  // namespace tapbook
