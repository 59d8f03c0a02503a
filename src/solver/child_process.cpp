// What does a program answer to a text, within a time? (child_process.h) Its input is a socket, so that a program that
// ends early is no signal to us; all three ends are waited for together, so that neither side can block the other.
#include "solver/child_process.h"

#include <fcntl.h>
#include <poll.h>
#include <spawn.h>
#include <sys/socket.h>
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <chrono>
#include <csignal>
#include <utility>

extern char** environ;

namespace tapbook {

namespace {

constexpr std::size_t most_output = 16'000'000, most_errors = 2'000;

// A file descriptor that is closed when it goes.
class Descriptor {
  public:
    explicit Descriptor(int number = -1) : number_(number) {}
    Descriptor(Descriptor&& other) noexcept : number_(std::exchange(other.number_, -1)) {}
    Descriptor& operator=(Descriptor&& other) noexcept {
        std::swap(number_, other.number_);
        return *this;
    }
    ~Descriptor() { close(); }
    int number() const { return number_; }
    void close() {
        if (number_ >= 0) ::close(std::exchange(number_, -1));
    }

  private:
    int number_;
};

struct Ends {
    Descriptor ours, theirs;
};

Ends pair_of_ends() {
    int both[2] = {-1, -1};
    if (socketpair(AF_UNIX, SOCK_STREAM | SOCK_CLOEXEC, 0, both) != 0) return {Descriptor(), Descriptor()};
    return {Descriptor(both[0]), Descriptor(both[1])};
}

class Conversation {
  public:
    Conversation(Ends& input, Ends& output, Ends& errors, const std::string& text)
        : to_(input.ours), from_(output.ours), complaints_(errors.ours), text_(text) {}

    // False when the time was over, or far too much was said, before the program closed its output.
    bool hold(std::chrono::steady_clock::time_point until, ChildAnswer& answer) {
        while (from_.number() >= 0 || complaints_.number() >= 0) {
            const auto left = std::chrono::ceil<std::chrono::milliseconds>(until - std::chrono::steady_clock::now());
            pollfd waiting[3] = {
                {to_.number(), POLLOUT, 0}, {from_.number(), POLLIN, 0}, {complaints_.number(), POLLIN, 0}};
            if (left.count() <= 0 || answer.output.size() > most_output) return false;
            const int ready = poll(waiting, 3, static_cast<int>(std::min<long long>(left.count(), 60'000)));
            if (ready < 0 && errno != EINTR) return false;
            if (ready <= 0) continue;
            if (waiting[0].revents != 0) write_some();
            if (waiting[1].revents != 0) read_some(from_, answer.output, most_output + 1);
            if (waiting[2].revents != 0) read_some(complaints_, answer.errors, most_errors);
        }
        return true;
    }

  private:
    void write_some() {
        const ssize_t sent =
            send(to_.number(), text_.data() + written_, text_.size() - written_, MSG_NOSIGNAL | MSG_DONTWAIT);
        if (sent > 0) written_ += static_cast<std::size_t>(sent);
        const bool again = sent < 0 && (errno == EAGAIN || errno == EINTR);
        if (written_ == text_.size() || (sent < 0 && !again)) to_.close();
    }

    static void read_some(Descriptor& from, std::string& into, std::size_t most) {
        char buffer[65536];
        const ssize_t got = recv(from.number(), buffer, sizeof buffer, MSG_DONTWAIT);
        if (got > 0)
            into.append(buffer, std::min(static_cast<std::size_t>(got), most - std::min(most, into.size())));
        else if (got == 0 || (errno != EAGAIN && errno != EINTR))
            from.close();
    }

    Descriptor &to_, &from_, &complaints_;
    const std::string& text_;
    std::size_t written_ = 0;
};

// The process id, or the error number of the start below zero.
pid_t start(const std::string& program, const Ends& input, const Ends& output, const Ends& errors) {
    posix_spawn_file_actions_t actions;
    posix_spawn_file_actions_init(&actions);
    posix_spawn_file_actions_adddup2(&actions, input.theirs.number(), 0);
    posix_spawn_file_actions_adddup2(&actions, output.theirs.number(), 1);
    posix_spawn_file_actions_adddup2(&actions, errors.theirs.number(), 2);
    std::string name = program;
    char* const words[] = {name.data(), nullptr};
    pid_t child = -1;
    const int failed = posix_spawn(&child, program.c_str(), &actions, nullptr, words, environ);
    posix_spawn_file_actions_destroy(&actions);
    return failed != 0 ? -failed : child;
}

void wait_for(pid_t child, ChildAnswer& answer) {
    int status = 0;
    while (waitpid(child, &status, 0) < 0 && errno == EINTR) {
    }
    const bool signalled = WIFSIGNALED(status);
    answer.end = signalled ? ChildAnswer::End::signalled : ChildAnswer::End::exited;
    answer.code = signalled ? WTERMSIG(status) : WEXITSTATUS(status);
}

}  // namespace

ChildAnswer run_child(const std::string& program, const std::string& input, double seconds) {
    using std::chrono::duration_cast;
    const auto allowed = std::chrono::duration<double>(std::clamp(seconds, 0.0, 1e6));
    const auto until = std::chrono::steady_clock::now() + duration_cast<std::chrono::milliseconds>(allowed);
    ChildAnswer answer;
    Ends to = pair_of_ends(), from = pair_of_ends(), complaints = pair_of_ends();
    if (to.ours.number() < 0 || from.ours.number() < 0 || complaints.ours.number() < 0) {
        answer.code = errno;
        return answer;
    }
    const pid_t child = start(program, to, from, complaints);
    if (child < 0) {
        answer.code = -child;
        return answer;
    }
    to.theirs.close();
    from.theirs.close();
    complaints.theirs.close();
    const bool heard = Conversation(to, from, complaints, input).hold(until, answer);
    if (!heard) kill(child, SIGKILL);
    wait_for(child, answer);
    if (!heard) answer.end = ChildAnswer::End::too_late;
    return answer;
}

}  // namespace tapbook
