// Is the solver understood, and is each of its failures an answer of its own?
#include "solver/solver.h"

#include <rapidcheck.h>
#include <sys/stat.h>

#include <catch2/catch.hpp>
#include <filesystem>
#include <fstream>
#include <random>

#include "shelf/every_choice.h"

using namespace tapbook;
using namespace tapbook::fixture;
using Catch::Matchers::WithinAbs;

namespace {

CoverModel six_rows() {
    CoverModel model;
    model.costs = {300, 300, 250};
    for (const auto& columns : std::vector<std::vector<std::uint32_t>>{{0, 2}, {0, 2}, {0}, {1, 2}, {1, 2}, {1}})
        model.rows.push_back({.weight = 1, .columns = columns});
    model.at_most = 2;
    return model;
}

// A program made of a few lines of shell, in a folder of its own.
class Script {
  public:
    explicit Script(const std::string& lines)
        : folder_(std::filesystem::temp_directory_path() /
                  ("tapbook-solver-" + std::to_string(std::random_device{}()))) {
        std::filesystem::create_directories(folder_);
        std::ofstream(path()) << "#!/bin/sh\n" << lines << '\n';
        std::filesystem::permissions(path(), std::filesystem::perms::owner_all);
    }
    ~Script() { std::filesystem::remove_all(folder_); }
    std::string path() const { return (folder_ / "solver").string(); }

  private:
    std::filesystem::path folder_;
};

std::string refusal_of_question(std::string_view text) {
    try {
        question_from(text);
    } catch (const ModelTextRefused& refused) {
        return refused.what();
    }
    return "not refused";
}

}  // namespace

TEST_CASE("a question that was written is read as the same") {
    CHECK(rc::check([] {
        CoverModel model;
        model.seek = *rc::gen::element(CoverModel::Seek::most_covered, CoverModel::Seek::fewest_columns);
        const int columns = *rc::gen::inRange(1, 9);
        for (int c = 0; c < columns; ++c) model.costs.push_back(*rc::gen::inRange(0, 100000));
        const int rows = *rc::gen::inRange(0, 9);
        for (int r = 0; r < rows; ++r) {
            CoverModel::Row row{.weight = *rc::gen::inRange<std::int64_t>(0, 4'000'000'000'000), .columns = {}};
            for (int c = 0; c < columns; ++c)
                if (*rc::gen::arbitrary<bool>()) row.columns.push_back(static_cast<std::uint32_t>(c));
            model.rows.push_back(row);
        }
        if (*rc::gen::arbitrary<bool>()) model.at_most = *rc::gen::inRange(0, 9);
        if (*rc::gen::arbitrary<bool>()) model.budget = *rc::gen::inRange(0, 100000);
        if (*rc::gen::arbitrary<bool>()) model.at_least_covered = *rc::gen::inRange(0, 100000);
        const std::string text = question_text(model, 2.5);
        const CoverQuestion read = question_from(text);
        RC_ASSERT(question_text(read.model, read.seconds) == text);
    }));
}

TEST_CASE("a question reads like this") {
    CHECK(question_text(six_rows(), 10) ==
          "cover 1\nseek most_covered\ncost 300 300 250\nat_most 2\nrow 1 0 2\nrow 1 0 2\nrow 1 0\nrow 1 1 2\n"
          "row 1 1 2\nrow 1 1\nseconds 10\ndone\n");
}

TEST_CASE("what is no question is refused with its line") {
    const std::string whole = "cover 1\nseek most_covered\ncost 1 2\nrow 5 0\nseconds 1\ndone\n";
    REQUIRE_NOTHROW(question_from(whole));
    const auto with = [&](const std::string& from, const std::string& to) {
        std::string changed = whole;
        return refusal_of_question(changed.replace(changed.find(from), from.size(), to));
    };
    CHECK(refusal_of_question("") == "cut off: the last line has to be \"done\"");
    CHECK(refusal_of_question("hello\n") == "line 1: has to be \"cover 1\"");
    CHECK(with("done\n", "") == "cut off: the last line has to be \"done\"");
    CHECK(with("done\n", "done\nrow 1 0\n") == "line 7: stands behind \"done\"");
    CHECK(with("most_covered", "gold") == "line 2: \"gold\" cannot be sought");
    CHECK(with("cost 1 2", "cost 1 x") == "line 3: \"x\" is not a whole number");
    CHECK(with("cost 1 2", "cost 1 -2") == "line 3: -2 is not from 0 to 9223372036854775807");
    CHECK(with("row 5 0", "row 5 2") == "line 4: 2 is not from 0 to 1");
    CHECK(with("row 5 0", "row") == "line 4: a whole number is missing");
    CHECK(with("row 5 0", "seek most_covered") == "line 4: a second \"seek\"");
    CHECK(with("row 5 0", "colour 5") == "line 4: \"colour\" is not known here");
    CHECK(with("seconds 1", "seconds inf") == "line 5: a number without end");
    CHECK(with("seconds 1\n", "") == "the line \"seconds\" is missing");
    CHECK(with("cost 1 2\n", "") == "line 3: there are no columns yet");
}

TEST_CASE("the solver finds the 6 that taking the largest first misses") {
    const SearchAnswer answer = ask_solver(TAPBOOK_SOLVE, six_rows(), 10);
    CHECK(answer.says == "");
    CHECK(answer.end == SearchEnd::optimal);
    CHECK(answer.chosen == std::vector<std::uint32_t>{0, 1});
    REQUIRE(answer.bound);
    CHECK_THAT(*answer.bound, WithinAbs(6, 1e-6));
}

TEST_CASE("what cannot be is infeasible") {
    CoverModel model = six_rows();
    model.seek = CoverModel::Seek::fewest_columns;
    model.at_least_covered = 7;
    model.at_most.reset();
    CHECK(ask_solver(TAPBOOK_SOLVE, model, 10).end == SearchEnd::infeasible);
    model.at_least_covered = 6;
    const SearchAnswer answer = ask_solver(TAPBOOK_SOLVE, model, 10);
    CHECK(answer.end == SearchEnd::optimal);
    CHECK(answer.chosen == std::vector<std::uint32_t>{0, 1});
}

TEST_CASE("a solver that is missing, ends badly, hangs or talks nonsense is told apart") {
    const SearchAnswer missing = ask_solver("/nonexistent/solver", six_rows(), 1);
    CHECK(missing.end == SearchEnd::missing);
    CHECK(missing.says == "/nonexistent/solver cannot be started: No such file or directory");
    const Script killed("kill -9 $$"), hangs("exec sleep 30"), nonsense("echo 42"),
        fails("cat >/dev/null; echo no licence >&2; exit 3");
    const Script silent("exit 0"), cut_off("cat >/dev/null; echo 'answer 1'; echo 'end optimal'");
    const Script outside("cat >/dev/null; printf 'answer 1\\nend optimal\\nchosen 99\\ndone\\n'");
    CHECK(ask_solver(killed.path(), six_rows(), 1).end == SearchEnd::killed);
    CHECK(ask_solver(killed.path(), six_rows(), 1).says == killed.path() + " was ended by signal 9");
    const SearchAnswer late = ask_solver(hangs.path(), six_rows(), -0.5);
    CHECK(late.end == SearchEnd::killed);
    CHECK(late.says == hangs.path() + " did not answer within -0.5 s and was ended");
    CHECK(ask_solver(nonsense.path(), six_rows(), 1).says ==
          nonsense.path() + " gave no answer that can be read: line 1: has to be \"answer 1\"");
    CHECK(ask_solver(fails.path(), six_rows(), 1).says == fails.path() + " ended with code 3: no licence");
    CHECK(ask_solver(silent.path(), six_rows(), 1).end == SearchEnd::garbage);
    CHECK(ask_solver(cut_off.path(), six_rows(), 1).end == SearchEnd::garbage);
    // What names columns that are not there is found out by the planner, which goes on with its own choice.
    const ShelfInput input = input_of({{1, 2}, {2, 3}, {3, 1}}, {3, 4, 5});
    PlanAsk ask = at_most(2);
    ask.effort = 0;
    for (const std::string& solver : {outside.path(), missing.says, hangs.path()}) {
        ask.time_limit_seconds = -0.5;
        const ShelfPlan plan = plan_shelf(input, ask, solver_search(solver));
        CHECK(plan.models.size() == 2);
        CHECK(plan.other_search.has_value());
        CHECK(plan.covered_share + plan.gap >= 1 - 1e-9);
    }
}

TEST_CASE("a large question is written while the solver has not begun to read, and one it never reads does no harm") {
    CoverModel model = six_rows();
    for (int i = 0; i < 200'000; ++i) model.rows.push_back({.weight = 1, .columns = {0, 1, 2}});
    const Script slow("sleep 0.2; cat >/dev/null; printf 'answer 1\\nend stopped\\nbound 7\\nchosen 0\\ndone\\n'");
    const SearchAnswer answer = ask_solver(slow.path(), model, 5);
    CHECK(answer.end == SearchEnd::stopped);
    CHECK(answer.bound == 7.0);
    const Script deaf("printf 'answer 1\\nend stopped\\nchosen\\ndone\\n'");
    CHECK(ask_solver(deaf.path(), model, 5).end == SearchEnd::stopped);
}

TEST_CASE(
    "where the own search gives up at once, number, share and budget are answered by the solver as by trying all") {
    std::mt19937 random(31);
    for (int trial = 0; trial < 30; ++trial) {
        const ShelfInput input = random_input(random, 9, 12);
        PlanAsk ask;
        ask.effort = 0;
        ask.care_penalty = 0.25;
        if (trial % 3 == 0) ask.models.at_most = 3;
        if (trial % 3 == 1) ask.models.budget_cents = 700;
        if (trial % 3 == 2) ask.models.share = 0.8;
        const ShelfPlan elsewhere = plan_shelf(input, ask, solver_search(TAPBOOK_SOLVE));
        ask.effort = 1'000'000;
        const ShelfPlan own = plan_shelf(input, ask);
        INFO("trial " << trial << ": " << elsewhere.other_search_says);
        REQUIRE(own.proved);
        REQUIRE(elsewhere.proved);
        REQUIRE_THAT(elsewhere.covered_share, WithinAbs(own.covered_share, 1e-9));
        if (ask.models.share) REQUIRE(elsewhere.models.size() == own.models.size());
    }
}
