// Does the authorizer hold by itself, should the look at the text ever let something through?
#include <catch2/catch.hpp>

#include "sqlite/sandbox_state.h"

using namespace tapbook::sqlite;

namespace {

// Results and action codes that SQLite publishes for authorizers: https://www.sqlite.org/c3ref/c_alter_table.html, from
// memory.
constexpr int ok = 0, deny = 1;
constexpr int a_read = 20, a_select = 21, a_function = 31, a_recursion = 33;

const std::vector<Relation> relations = {{"tap", {{"volts", "REAL"}}}};

}  // namespace

TEST_CASE("the judge allows one SELECT over the relations' own columns and the listed functions") {
    Judge judge(relations);
    judge.begin();
    CHECK(judge.answer(a_select, nullptr, nullptr) == ok);
    CHECK(judge.answer(a_read, "tap", "volts") == ok);
    CHECK(judge.answer(a_read, "tap", "") == ok);
    CHECK(judge.answer(a_function, nullptr, "abs") == ok);
    CHECK_FALSE(judge.denial().has_value());
    CHECK(judge.reads() == std::vector<ColumnRead>{{"tap", "volts"}});
}

TEST_CASE("the judge denies a second SELECT, recursion and every other action") {
    Judge judge(relations);
    judge.begin();
    CHECK(judge.answer(a_select, nullptr, nullptr) == ok);
    CHECK(judge.answer(a_select, nullptr, nullptr) == deny);
    REQUIRE(judge.denial().has_value());
    CHECK(judge.denial()->reason == Refusal::subquery);
    CHECK(judge.answer(a_recursion, nullptr, nullptr) == deny);
    for (int action = 0; action < 40; ++action) {
        if (action == a_read || action == a_select || action == a_function) continue;
        INFO(action);
        CHECK(judge.answer(action, "tap", "volts") == deny);
    }
}

TEST_CASE("the judge denies columns and functions that are not listed, and remembers the first") {
    Judge judge(relations);
    judge.begin();
    CHECK(judge.answer(a_read, "tap", "ROWID") == deny);
    CHECK(judge.answer(a_read, "sqlite_master", "sql") == deny);
    CHECK(judge.answer(a_function, nullptr, "load_extension") == deny);
    REQUIRE(judge.denial().has_value());
    CHECK(judge.denial()->name == "tap.ROWID");
    judge.begin();
    CHECK_FALSE(judge.denial().has_value());
    CHECK(judge.reads().empty());
}

TEST_CASE("the judge has no say in our own SQL") {
    Judge judge(relations);
    for (int action = 0; action < 40; ++action) CHECK(judge.answer(action, "x", "y") == ok);
}
