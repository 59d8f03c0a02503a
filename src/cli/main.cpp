// The program: words in, one answer out, one exit code. The only place that catches and prints errors.
#include <fmt/format.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <csignal>
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

// Writes all of `text`; false when the reader has gone or the disk is full.
bool write_all(int handle, std::string_view text) {
    while (!text.empty()) {
        const auto written = ::write(handle, text.data(), text.size());
        if (written < 0 && errno == EINTR) continue;
        if (written <= 0) return false;
        text.remove_prefix(static_cast<std::size_t>(written));
    }
    return true;
}

int finish(const Session& session, const Failure& failure) {
    constexpr std::string_view own_name = "tapbook: ";
    const std::string_view message = failure.message;
    const bool named = message.starts_with(own_name);
    if (session.json)
        write_all(STDOUT_FILENO, json_failure(failure.code, message.substr(named ? own_name.size() : 0), failure.hint));
    else
        write_all(STDERR_FILENO, failure.message + (failure.message.ends_with('\n') ? "" : "\n") +
                                     (failure.hint.empty() ? "" : failure.hint + "\n"));
    return static_cast<int>(failure.exit);
}

Failure usage_failure(const std::string& message, const std::string& hint) {
    return {Exit::wrong_usage, "wrong_usage", "tapbook: " + message, hint};
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
    if (invocation.version)
        return write_all(STDOUT_FILENO, "tapbook " TAPBOOK_VERSION "\n") ? 0 : static_cast<int>(Exit::input_output);
    if (invocation.help || invocation.command == nullptr) {
        const std::string text = !invocation.help                ? short_help_text()
                                 : invocation.command == nullptr ? help_text()
                                                                 : help_text(*invocation.command);
        return write_all(STDOUT_FILENO, text) ? 0 : static_cast<int>(Exit::input_output);
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
    if (!write_all(STDOUT_FILENO, session.out)) return static_cast<int>(Exit::input_output);
    return static_cast<int>(std::get<Exit>(result));
}

}  // namespace
}  // namespace tapbook

int main(int count, char** words) {
    std::signal(SIGPIPE, SIG_IGN);
    return tapbook::program(std::vector<std::string>(words + 1, words + count));
}
