// How is the solver run, and what when it fails? (run_solver.h)
#include "solver/run_solver.h"

#include <fmt/format.h>

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

std::string solver_beside_program() {
    std::error_code error;
    const std::filesystem::path own = std::filesystem::read_symlink("/proc/self/exe", error);
    return error ? std::string() : (own.parent_path() / "tapbook-solve").string();
}

}  // namespace tapbook
