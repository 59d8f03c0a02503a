// See progress_line.h.
#include "cli/progress_line.h"

#include <unistd.h>

#include <cstdio>

namespace tapbook {
namespace {

constexpr std::chrono::milliseconds silent_for{1000}, between{100};
constexpr std::string_view back_and_erase = "\r\x1b[K";  // ECMA-48: carriage return, erase to the end of the line

}  // namespace

ProgressLine::ProgressLine(std::string what)
    : what_(std::move(what)), is_terminal_(::isatty(STDERR_FILENO) == 1), started_(Clock::now()), last_(started_) {}

ProgressLine::~ProgressLine() {
    if (!is_shown_) return;
    std::fputs(std::string(back_and_erase).c_str(), stderr);
    std::fflush(stderr);
}

Progress ProgressLine::listener() {
    if (!is_terminal_) return {};
    return [this](std::int64_t done, std::int64_t all) { show(done, all); };
}

void ProgressLine::show(std::int64_t done, std::int64_t all) {
    const auto now = Clock::now();
    if (!counting_since_) {
        counting_since_ = now;
        first_step_ = done;
    }
    if (now - started_ < silent_for || now - last_ < between) return;
    last_ = now;
    is_shown_ = true;
    const auto elapsed = std::chrono::duration_cast<std::chrono::milliseconds>(now - *counting_since_);
    std::fputs(
        (std::string(back_and_erase) + progress_text(what_, done - first_step_, all - first_step_, elapsed.count()))
            .c_str(),
        stderr);
    std::fflush(stderr);
}

}  // namespace tapbook
