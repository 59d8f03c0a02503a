// tapbook-solve: a question about coverage on standard input, its answer on standard output (solver/model_text.h). A
// program of its own, so that tapbook needs no solver and starts without one's libraries. Exit 0: answered; 2: the
// question cannot be read; 4: no answer could be written.
#include <unistd.h>

#include <cstdio>
#include <exception>
#include <string>

#include "solve/cbc_search.h"

namespace {

std::string all_of_standard_input() {
    std::string text;
    char buffer[65536];
    for (std::size_t got = 0; (got = std::fread(buffer, 1, sizeof buffer, stdin)) > 0;) text.append(buffer, got);
    return text;
}

}  // namespace

int main() {
    // The solver's library writes to standard output as it likes: that goes where complaints go, the answer alone to
    // where it belongs.
    const int answers = dup(STDOUT_FILENO);
    if (answers < 0 || dup2(STDERR_FILENO, STDOUT_FILENO) < 0) return 4;
    try {
        const std::string text =
            tapbook::answer_text(tapbook::search_with_cbc(tapbook::question_from(all_of_standard_input())));
        std::FILE* const out = fdopen(answers, "w");
        const bool written = out != nullptr && std::fwrite(text.data(), 1, text.size(), out) == text.size();
        return written && std::fclose(out) == 0 ? 0 : 4;
    } catch (const tapbook::ModelTextRefused& refused) {
        std::fprintf(stderr, "tapbook-solve: %s\n", refused.what());
        return 2;
    } catch (const std::exception& error) {
        std::fprintf(stderr, "tapbook-solve: %s\n", error.what());
        return 4;
    }
}
