// How is the solver run, and what when it fails? (run_solver.h)
#include "solver/run_solver.h"

#include <fmt/format.h>
#include <unistd.h>

#include <algorithm>
#include <cstdlib>
#include <cstring>
#include <filesystem>

#include "solver/child_process.h"
#include "solver/model_text.h"

namespace tapbook {

namespace {

constexpr double grace_seconds = 1;

SearchAnswer failed(SearchEnd end, std::string says) {
    return {.end = end, .chosen = {}, .bound = {}, .says = std::move(says)};
}

// What it complained of, on one line.
std::string complaint(const ChildAnswer& child) {
    const std::string first = child.errors.substr(0, child.errors.find('\n'));
    return first.empty() ? std::string() : fmt::format(": {}", first);
}

// `tapbook-solve` in the folder of the running program. Empty when that is not known.
std::string beside_program() {
    std::error_code error;
    const std::filesystem::path own = std::filesystem::read_symlink("/proc/self/exe", error);
    return error ? std::string() : (own.parent_path() / "tapbook-solve").string();
}

}  // namespace

SearchAnswer ask_solver(const std::string& program, const CoverModel& model, double within_seconds) {
    const ChildAnswer child = run_child(program, question_text(model, within_seconds), within_seconds + grace_seconds);
    switch (child.end) {
        case ChildAnswer::End::no_program:
            return failed(SearchEnd::missing,
                          fmt::format("{} cannot be started: {}", program, std::strerror(child.code)));
        case ChildAnswer::End::too_late:
            return failed(SearchEnd::killed,
                          fmt::format("{} did not answer within {} s and was ended", program, within_seconds));
        case ChildAnswer::End::signalled:
            return failed(SearchEnd::killed, fmt::format("{} was ended by signal {}", program, child.code));
        case ChildAnswer::End::exited:
            break;
    }
    if (child.code != 0)
        return failed(SearchEnd::garbage,
                      fmt::format("{} ended with code {}{}", program, child.code, complaint(child)));
    try {
        return answer_from(child.output);
    } catch (const ModelTextRefused& refused) {
        return failed(SearchEnd::garbage,
                      fmt::format("{} gave no answer that can be read: {}", program, refused.what()));
    }
}

OtherSearch solver_search(std::string program) {
    return [program = std::move(program)](const CoverModel& model, double within_seconds) {
        return ask_solver(program, model, within_seconds);
    };
}

std::string installed_solver() {
    const std::string beside = beside_program();
    if (!beside.empty() && ::access(beside.c_str(), X_OK) == 0) return beside;
    const char* path = std::getenv("PATH");
    for (std::string_view rest = path == nullptr ? "" : path; !rest.empty();) {
        const auto end = std::min(rest.find(':'), rest.size());
        const std::string place = fmt::format("{}/tapbook-solve", rest.substr(0, end));
        if (end > 0 && place.front() == '/' && ::access(place.c_str(), X_OK) == 0) return place;
        rest.remove_prefix(std::min(end + 1, rest.size()));
    }
    return beside.empty() ? std::string("tapbook-solve") : beside;
}

}  // namespace tapbook
