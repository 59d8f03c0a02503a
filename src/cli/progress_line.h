// How far along is long work, on a terminal? One line on standard error that replaces itself and is gone at the end.
#pragma once

#include <chrono>

#include "cli/command.h"

namespace tapbook {

// Says nothing in the first second, nor where standard error is no terminal.
class ProgressLine {
  public:
    // `what` is being done: "checked".
    explicit ProgressLine(std::string what);
    ~ProgressLine();
    ProgressLine(const ProgressLine&) = delete;
    ProgressLine& operator=(const ProgressLine&) = delete;

    // To be told of steps. Valid while this lives.
    Progress listener();

  private:
    void show(std::int64_t done, std::int64_t all);

    using Clock = std::chrono::steady_clock;
    std::string what_;
    bool is_terminal_, is_shown_ = false;
    Clock::time_point started_, last_;
    std::optional<Clock::time_point> counting_since_;  // the pace is that of the counted steps alone
    std::int64_t first_step_ = 0;
};

}  // namespace tapbook
