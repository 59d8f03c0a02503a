// What does a program answer to a text, within a time? One process, its standard input and output, no shell.
#pragma once

#include <string>

namespace tapbook {

struct ChildAnswer {
    enum class End { exited, no_program, signalled, too_late };

    End end = End::no_program;
    int code = 0;        // exit code, signal, or error number of the start
    std::string output;  // at most 16 MB; what comes beyond ends the process
    std::string errors;  // the first 2,000 bytes
};

// Runs `program` without arguments and gives it `input`. It is killed after `seconds`, and is gone when this returns.
ChildAnswer run_child(const std::string& program, const std::string& input, double seconds);

}  // namespace tapbook
