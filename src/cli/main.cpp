// The program: words in, one answer out, one exit code. The only place that catches and prints errors.
#include <fcntl.h>
#include <fmt/format.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <csignal>
#include <cstring>
#include <string>
#include <variant>
#include <vector>

#include "cli/command.h"
#include "cli/parse.h"

namespace tapbook {
namespace {

struct Failure {
    Exit exit;
    std::string code;     // stable word for programs
    std::string message;  // for people, without the hint
    std::string hint;
};

Exit exit_of(CatalogTrouble trouble) {
    switch (trouble) {
        case CatalogTrouble::missing:
        case CatalogTrouble::already_there:
        case CatalogTrouble::not_ours:
        case CatalogTrouble::newer:
        case CatalogTrouble::wrong_kind:
            return Exit::input_refused;
        case CatalogTrouble::not_permitted:
            return Exit::not_permitted;
        case CatalogTrouble::input_output:
            return Exit::input_output;
        case CatalogTrouble::damaged:
            return Exit::damaged;
        case CatalogTrouble::busy:
            return Exit::busy;
        case CatalogTrouble::not_found:
            return Exit::answer_is_no;
    }
    return Exit::input_output;
}

std::string code_of(CatalogTrouble trouble) {
    switch (trouble) {
        case CatalogTrouble::missing:
            return "no_catalog";
        case CatalogTrouble::already_there:
            return "already_there";
        case CatalogTrouble::not_ours:
            return "not_a_catalog";
        case CatalogTrouble::newer:
            return "newer_catalog";
        case CatalogTrouble::wrong_kind:
            return "wrong_kind_of_catalog";
        case CatalogTrouble::not_permitted:
            return "not_permitted";
        case CatalogTrouble::input_output:
            return "input_output";
        case CatalogTrouble::damaged:
            return "damaged";
        case CatalogTrouble::busy:
            return "busy";
        case CatalogTrouble::not_found:
            return "not_found";
    }
    return "error";
}

// Writes all of `text`; otherwise the reason (errno): the reader has gone, the disk is full.
int write_all(int handle, std::string_view text) {
    while (!text.empty()) {
        const auto written = ::write(handle, text.data(), text.size());
        if (written < 0 && errno == EINTR) continue;
        if (written < 0) return errno;
        text.remove_prefix(static_cast<std::size_t>(written));
    }
    return 0;
}

// Writes the answer. A reader that has gone (`| head`) is told nothing more; any other reason is said.
int write_answer(std::string_view text, Exit exit) {
    const int reason = write_all(STDOUT_FILENO, text);
    if (reason == 0) return static_cast<int>(exit);
    if (reason != EPIPE)
        write_all(STDERR_FILENO, fmt::format("tapbook: cannot write the answer: {}\nonly the answer is lost: what was "
                                             "saved stays saved\n",
                                             std::strerror(reason)));
    return static_cast<int>(Exit::input_output);
}

// A line longer than a screen can hold keeps its beginning and its end: what was typed may be a megabyte.
std::string shortened(std::string_view text) {
    constexpr std::size_t longest = 2000, kept = 900;
    const auto inside_character = [](char c) { return (static_cast<unsigned char>(c) & 0xC0U) == 0x80U; };
    std::string result;
    while (!text.empty()) {
        const auto end = std::min(text.find('\n'), text.size());
        const std::string_view line = text.substr(0, end);
        if (line.size() <= longest) {
            result += line;
        } else {
            std::size_t first = kept, last = line.size() - kept;
            while (inside_character(line[first])) --first;
            while (inside_character(line[last])) ++last;
            result += fmt::format("{} [{} more bytes] {}", line.substr(0, first), last - first, line.substr(last));
        }
        if (end < text.size()) result += '\n';
        text.remove_prefix(std::min(end + 1, text.size()));
    }
    return result;
}

int finish(const Session& session, const Failure& failure) {
    constexpr std::string_view own_name = "tapbook: ";
    const std::string message = shortened(failure.message), hint = shortened(failure.hint);
    const bool named = message.starts_with(own_name);
    if (session.json)
        return write_answer(
            json_failure(failure.code, std::string_view(message).substr(named ? own_name.size() : 0), hint),
            failure.exit);
    write_all(STDERR_FILENO, message + (message.ends_with('\n') ? "" : "\n") + (hint.empty() ? "" : hint + "\n"));
    return static_cast<int>(failure.exit);
}

Failure usage_failure(const std::string& message, const std::string& hint) {
    return {Exit::wrong_usage, "wrong_usage", "tapbook: " + message, hint};
}

// A place the system will not even look at: a name too long, links in a circle, a folder it may not enter.
Failure place_failure(const std::filesystem::filesystem_error& error) {
    const bool forbidden = error.code() == std::errc::permission_denied;
    const std::string text =
        fmt::format("tapbook: cannot reach {}: {}", shown(error.path1().string()), error.code().message());
    if (forbidden) return {Exit::not_permitted, "not_permitted", text, "ask from an account that may enter the folder"};
    return {Exit::input_output, "input_output", text, "choose another place with --db FILE"};
}

// Runs the command; every failure comes back as data.
std::variant<Exit, Failure> run(Session& session, const Invocation& invocation) {
    try {
        return invocation.command->run(session, invocation.parsed);
    } catch (const UsageError& error) {
        return usage_failure(error.what(), error.hint());
    } catch (const NoAnswer& error) {
        return Failure{Exit::answer_is_no, "no_answer", fmt::format("tapbook: {}", error.what()), error.hint()};
    } catch (const InputRefused& error) {
        std::string text = complaints_text(error.complaints());
        text.pop_back();
        return Failure{Exit::input_refused, "input_refused", text, "Nothing was changed."};
    } catch (const CatalogError& error) {
        return Failure{exit_of(error.trouble()), code_of(error.trouble()),
                       fmt::format("tapbook: {}", shown(error.what())), error.hint()};
    } catch (const std::filesystem::filesystem_error& error) {
        return place_failure(error);
    } catch (const std::bad_alloc&) {
        return Failure{Exit::input_output, "out_of_memory", "tapbook: out of memory", "nothing was changed"};
    } catch (const std::exception& error) {
        return Failure{Exit::input_output, "error", fmt::format("tapbook: {}", shown(error.what())), ""};
    }
}

int program(const std::vector<std::string>& words) {
    Session session;
    Invocation invocation;
    try {
        session.json = std::find(words.begin(), words.end(), "--json") != words.end();
        invocation = parse_command_line(words);
        const bool json = session.json;
        session = session_from_environment();
        session.json = json;
    } catch (const UsageError& error) {
        return finish(session, usage_failure(error.what(), error.hint()));
    }
    if (invocation.version) return write_answer("tapbook " TAPBOOK_VERSION "\n", Exit::done);
    if (invocation.help || invocation.command == nullptr) {
        const std::string text = !invocation.help                ? short_help_text()
                                 : invocation.command == nullptr ? help_text()
                                                                 : help_text(*invocation.command);
        return write_answer(text, Exit::done);
    }
    if (const auto place = invocation.parsed.text("--db")) {
        session.database = *place;
        session.database_given = true;
    }
    const auto result = run(session, invocation);
    if (const auto* failure = std::get_if<Failure>(&result)) {
        if (!session.out.empty() && !session.json) write_all(STDOUT_FILENO, session.out);
        return finish(session, *failure);
    }
    if (!session.remark.empty()) write_all(STDERR_FILENO, session.remark);
    return write_answer(session.out, std::get<Exit>(result));
}

// Ctrl-C, or a request to end. The store undoes what was not committed the next time it is opened.
void cancel(int) {
    constexpr std::string_view text = "tapbook: cancelled; what was not saved yet is undone\n";
    static_cast<void>(::write(STDERR_FILENO, text.data(), text.size()));
    ::_exit(static_cast<int>(Exit::cancelled));
}

// The three standard handles are there, so that no file of ours takes their number; a full disk or a reader that has
// gone is an answer of write(), not the end of the program.
void prepare_process() {
    for (int handle = 0; handle <= STDERR_FILENO; ++handle)
        if (::fcntl(handle, F_GETFD) < 0) static_cast<void>(::open("/dev/null", O_RDONLY));
    std::signal(SIGPIPE, SIG_IGN);
    std::signal(SIGXFSZ, SIG_IGN);
    for (const int request : {SIGINT, SIGTERM})
        if (std::signal(request, cancel) == SIG_IGN) std::signal(request, SIG_IGN);  // who started us ignores it
}

}  // namespace
}  // namespace tapbook

int main(int count, char** words) {
    tapbook::prepare_process();
    return tapbook::program(std::vector<std::string>(words + 1, words + count));
}
