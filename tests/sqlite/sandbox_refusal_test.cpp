// What does the sandbox refuse, and does it say why and where? One row per hostile or mistaken expression.
#include <algorithm>
#include <catch2/catch.hpp>

#include "sqlite/sqlite.h"

using namespace tapbook::sqlite;

namespace {

Sandbox sample() {
    return Sandbox({{"tap", {{"volts", "REAL"}, {"name", "TEXT"}}},
                    {"converter", {{"volts", "REAL"}, {"limit_volts", "REAL"}}},
                    {"job", {{"lowest", "INTEGER"}}}});
}

struct Refused {
    std::string expression;
    Refusal reason;
    std::string name;
    std::optional<std::size_t> offset;
};

std::string many(int count, const std::string& text) {
    std::string all;
    for (int i = 0; i < count; ++i) all += text;
    return all;
}

const Refused hostile[] = {
    // not an expression
    {"", Refusal::syntax_error, "", {}},
    {" \n\t ", Refusal::syntax_error, "", {}},
    {"tap.volts >", Refusal::syntax_error, "", 12},
    {"> 2", Refusal::syntax_error, "", 1},
    {"tap.volts = = 2", Refusal::syntax_error, "", 13},
    {"1 2", Refusal::syntax_error, "", 3},
    {"12volts", Refusal::syntax_error, "", 1},
    {"'open", Refusal::syntax_error, "", 1},
    {"1 = \"open", Refusal::syntax_error, "", 5},
    {"[open", Refusal::syntax_error, "", 1},
    {"`open", Refusal::syntax_error, "", 1},
    {std::string("1\0 = 1", 6), Refusal::syntax_error, "", 2},
    {"1 = #1", Refusal::syntax_error, "", 5},
    {"tap.*", Refusal::syntax_error, "", 5},
    {"*", Refusal::syntax_error, "", 1},
    {"x'zz'", Refusal::syntax_error, "", 1},
    {"1 AS one", Refusal::syntax_error, "", 3},
    {"1 FROM tap", Refusal::syntax_error, "", 3},
    {"1 WHERE 1", Refusal::syntax_error, "", 3},
    {"1 UNION VALUES (1)", Refusal::subquery, "", 9},
    {"DROP TABLE tap", Refusal::syntax_error, "", 1},
    {"tap.volts IN ()", Refusal::syntax_error, "in", 11},
    {"nonsense IN ( )", Refusal::syntax_error, "in", 10},
    {"tap.name = 'a' COLLATE nonsense", Refusal::syntax_error, "", {}},
    // parentheses
    {"(1", Refusal::unbalanced_parenthesis, "", 1},
    {"((1)", Refusal::unbalanced_parenthesis, "", 1},
    {"1)", Refusal::unbalanced_parenthesis, "", 2},
    {"1) FROM tap, (converter", Refusal::unbalanced_parenthesis, "", 2},
    {"1), d AS (SELECT 1", Refusal::unbalanced_parenthesis, "", 2},
    {")(", Refusal::unbalanced_parenthesis, "", 1},
    {"']' = (\"[\" = ')'", Refusal::unbalanced_parenthesis, "", 7},
    // more than one thing
    {"1; DROP TABLE tap", Refusal::second_statement, "", 2},
    {"1;", Refusal::second_statement, "", 2},
    {";1", Refusal::second_statement, "", 1},
    {"1, 2", Refusal::second_value, "", 2},
    {"(1, 2)", Refusal::second_value, "", {}},
    {"1 -- and more", Refusal::comment, "", 3},
    {"5--3", Refusal::comment, "", 2},
    {"1 /* and more */", Refusal::comment, "", 3},
    {"1 /* open", Refusal::comment, "", 3},
    // parameters
    {"tap.volts > ?", Refusal::parameter, "?", 13},
    {"tap.volts > ?1", Refusal::parameter, "?1", 13},
    {"tap.volts > :x", Refusal::parameter, ":x", 13},
    {"tap.volts > @x", Refusal::parameter, "@x", 13},
    {"tap.volts > $x", Refusal::parameter, "$x", 13},
    // other tables
    {"(SELECT 1)", Refusal::subquery, "", 2},
    {"(SELECT sql FROM sqlite_schema)", Refusal::subquery, "", 2},
    {"EXISTS (SELECT 1)", Refusal::subquery, "", 1},
    {"NOT EXISTS (SELECT 1)", Refusal::subquery, "", 5},
    {"1 IN (SELECT volts FROM tap)", Refusal::subquery, "", 7},
    {"(VALUES (1))", Refusal::subquery, "", 2},
    {"(WITH x AS (SELECT 1) SELECT 1)", Refusal::subquery, "", 13},
    {"1 IN job", Refusal::subquery, "in", 3},
    {"1 IN main.job", Refusal::subquery, "in", 3},
    {"'x' IN pragma_table_list", Refusal::subquery, "in", 5},
    {"1 IN json_each('[1]')", Refusal::subquery, "in", 3},
    {"0 AND (SELECT 1)", Refusal::subquery, "", 8},
    // columns
    {"tap.volt > 1", Refusal::unknown_column, "tap.volt", 1},
    {"1 < taps.volts", Refusal::unknown_column, "taps.volts", 5},
    {"misspelt", Refusal::unknown_column, "misspelt", 1},
    {"\"misspelt\" = 'x'", Refusal::unknown_column, "misspelt", 1},
    {"tap.\"misspelt\"", Refusal::unknown_column, "tap.misspelt", 1},
    {"tap", Refusal::unknown_column, "tap", 1},
    {"sqlite_schema.sql", Refusal::unknown_column, "sqlite_schema.sql", 1},
    {"temp.tap.volts", Refusal::unknown_column, "temp.tap.volts", 1},
    {"tap.rowid", Refusal::unknown_column, "tap.ROWID", 5},
    {"1 = tap._rowid_", Refusal::unknown_column, "tap.ROWID", 9},
    {"0 AND misspelt", Refusal::unknown_column, "misspelt", 7},
    {"misspelt AND 0", Refusal::unknown_column, "misspelt", 1},
    {"(0 ) AND tap.misspelt > 0", Refusal::unknown_column, "tap.misspelt", 10},
    {"0x0 AND (00 AND misspelt)", Refusal::unknown_column, "misspelt", 17},
    {"false AND misspelt", Refusal::unknown_column, "misspelt", 11},
    {"NULL AND misspelt", Refusal::unknown_column, "misspelt", 10},
    {"1 OR misspelt", Refusal::unknown_column, "misspelt", 6},
    {"CASE WHEN 0 THEN misspelt END", Refusal::unknown_column, "misspelt", 18},
    {"coalesce(1, misspelt)", Refusal::unknown_column, "misspelt", 13},
    {"iif(0, misspelt, 1)", Refusal::unknown_column, "misspelt", 8},
    {"volts > 1", Refusal::ambiguous_column, "volts", 1},
    {"1 < volts + job.lowest", Refusal::ambiguous_column, "volts", 5},
    // functions
    {"nonsense(1)", Refusal::unknown_function, "nonsense", 1},
    {"tap.name REGEXP 'x'", Refusal::unknown_function, "REGEXP", 10},
    {"concat(1, 2)", Refusal::unknown_function, "concat", 1},
    {"1 = load_extension('x')", Refusal::forbidden_function, "load_extension", 5},
    {"0 AND load_extension('x')", Refusal::forbidden_function, "load_extension", 7},
    {"printf('%1000000d', 1)", Refusal::forbidden_function, "printf", 1},
    {"zeroblob(1000000)", Refusal::forbidden_function, "zeroblob", 1},
    {"replace(tap.name, 'a', 'b')", Refusal::forbidden_function, "replace", 1},
    {"sqlite_version()", Refusal::forbidden_function, "sqlite_version", 1},
    {"json_extract('{}', '$')", Refusal::forbidden_function, "json_extract", 1},
    {"tap.name -> 'x'", Refusal::forbidden_function, "->", 10},
    {"tap.name ->> 'x'", Refusal::forbidden_function, "->>", 10},
    {"tap.name MATCH 'x'", Refusal::forbidden_function, "match", 10},
    {"likely(1)", Refusal::forbidden_function, "likely", 1},
    {"fts3_tokenizer('simple')", Refusal::forbidden_function, "fts3_tokenizer", 1},
    {"RAISE(ABORT, 'x')", Refusal::forbidden_function, "raise", 1},
    {"random() > 0", Refusal::not_deterministic, "random", 1},
    {"RANDOM() > 0", Refusal::not_deterministic, "random", 1},
    {"randomblob(4)", Refusal::not_deterministic, "randomblob", 1},
    {"date('now')", Refusal::not_deterministic, "date", 1},
    {"\"date\"('now')", Refusal::not_deterministic, "date", 1},
    {"1 < julianday('now')", Refusal::not_deterministic, "julianday", 5},
    {"strftime('%s', 'now')", Refusal::not_deterministic, "strftime", 1},
    {"unixepoch()", Refusal::not_deterministic, "unixepoch", 1},
    {"CURRENT_TIMESTAMP", Refusal::not_deterministic, "current_timestamp", 1},
    {"current_date", Refusal::not_deterministic, "current_date", 1},
    {"changes()", Refusal::not_deterministic, "changes", 1},
    {"last_insert_rowid()", Refusal::not_deterministic, "last_insert_rowid", 1},
    {"count(*)", Refusal::aggregate, "count", 1},
    {"sum(tap.volts) > 1", Refusal::aggregate, "sum", 1},
    {"group_concat(tap.name)", Refusal::aggregate, "group_concat", 1},
    {"min(tap.volts)", Refusal::aggregate, "min", 1},
    {"1 + max((tap.volts))", Refusal::aggregate, "max", 5},
    {"max(abs(min(1, 2)))", Refusal::aggregate, "max", 1},
    {"\"max\"(tap.volts)", Refusal::aggregate, "max", 1},
    {"[min] (tap.volts)", Refusal::aggregate, "min", 1},
    {"MIN(DISTINCT tap.volts)", Refusal::aggregate, "min", 1},
    {"max(iif(1, 2, 3))", Refusal::aggregate, "max", 1},
    {"abs(1) FILTER (WHERE 1)", Refusal::aggregate, "", 8},
    {"max(1, 2) OVER ()", Refusal::window, "", 11},
    {"sum(1) OVER (ORDER BY 1)", Refusal::window, "", 8},
    {"row_number() OVER w", Refusal::window, "", 14},
    {"row_number()", Refusal::window, "row_number", 1},
    {"lag(tap.volts)", Refusal::window, "lag", 1},
    {"abs(1, 2)", Refusal::wrong_arguments, "abs", 1},
    {"1 + iif(1, 2)", Refusal::wrong_arguments, "iif", 5},
    {"max()", Refusal::wrong_arguments, "max", 1},
    {"max(1, 2, 3, 4, 5, 6, 7, 8, 9)", Refusal::wrong_arguments, "max", 1},
    // sizes
    {many(most_expression_bytes, " ") + "1", Refusal::too_long, "", most_expression_bytes + 1},
    {"1" + many(50, " + 1"), Refusal::too_deep, "", {}},
    {many(51, "(") + "1" + many(51, ")"), Refusal::too_deep, "", 51},
    {many(51, "-") + "1", Refusal::comment, "", 1},
    {many(51, "NOT ") + "1", Refusal::too_deep, "", {}},
};

}  // namespace

TEST_CASE("every hostile expression is refused with its own reason, name and place") {
    Sandbox sandbox = sample();
    for (const Refused& row : hostile) {
        INFO(row.expression);
        try {
            sandbox.compile(row.expression);
            FAIL_CHECK("taken");
        } catch (const RefusedExpression& refused) {
            INFO(refused.what());
            CHECK(words(refused.reason()) == words(row.reason));
            CHECK(refused.name() == row.name);
            CHECK(refused.offset().value_or(0) == row.offset.value_or(0));
        }
    }
}

TEST_CASE("every reason has a row among the hostile expressions") {
    for (int reason = 0; reason <= static_cast<int>(Refusal::too_deep); ++reason) {
        INFO(words(static_cast<Refusal>(reason)));
        const auto has_it = [&](const Refused& row) { return row.reason == static_cast<Refusal>(reason); };
        CHECK(std::any_of(std::begin(hostile), std::end(hostile), has_it));
    }
}

TEST_CASE("a refusal says in words what is wrong") {
    Sandbox sandbox = sample();
    CHECK_THROWS_WITH(sandbox.compile("tap.volt > 1"), "unknown column: tap.volt");
    CHECK_THROWS_WITH(sandbox.compile("min(tap.volts)"), "aggregate function: min, it needs two values or more");
    CHECK_THROWS_WITH(sandbox.compile("tap.volts >"), "syntax error: the expression ends too early");
    CHECK_THROWS_WITH(sandbox.compile("1 2"), "syntax error: near \"2\": syntax error");
    CHECK_THROWS_WITH(sandbox.compile("1; 2"), "second statement");
}

TEST_CASE("what only looks dangerous is taken") {
    Sandbox sandbox = sample();
    for (const char* good : {"'; DROP TABLE tap -- ?1 :x /* (SELECT 1)' = tap.name",
                             "\"tap\".\"volts\" > 1",
                             "[tap].[volts] > 1",
                             "`tap`.`volts` > 1",
                             "TAP.VOLTS > 1",
                             "main.tap.volts > 1",
                             "limit_volts > lowest",
                             "tap.name LIKE 'a\\_%' ESCAPE '\\'",
                             "tap.name GLOB 'a*'",
                             "CAST(tap.volts AS INTEGER) % 2",
                             "tap.volts BETWEEN 1 AND 2",
                             "tap.name IN ('a', 'b')",
                             "tap.volts IS NOT NULL",
                             "tap.volts ISNULL",
                             "tap.name = 'A' COLLATE NOCASE",
                             "CASE tap.name WHEN 'a' THEN 1 ELSE 0 END",
                             "- -1",
                             "5 - -3",
                             "x'00ff' = tap.name",
                             "min(tap.volts, converter.volts) > 0x10",
                             "'it''s' || tap.name = 'x'",
                             "tap.volts > 0 AND job.lowest > 0",
                             "round(tap.volts, 0) = .0",
                             "job.lowest << 2 = 1e3"}) {
        INFO(good);
        CHECK_NOTHROW(sandbox.compile(good));
    }
}

TEST_CASE("the longest and the deepest expression allowed are taken") {
    Sandbox sandbox = sample();
    CHECK_NOTHROW(sandbox.compile(many(most_expression_bytes - 1, " ") + "1"));
    CHECK_NOTHROW(sandbox.compile("1" + many(most_expression_depth - 1, " + 1")));
    CHECK_NOTHROW(sandbox.compile(many(most_expression_depth, "(") + "1" + many(most_expression_depth, ")")));
}

TEST_CASE("every allowed function can be called") {
    Sandbox sandbox = sample();
    for (const std::string_view name : allowed_functions()) {
        INFO(name);
        bool taken = false;
        for (const char* arguments : {"()", "(1)", "(1, 2)", "(1, 2, 3)"}) {
            try {
                sandbox.compile(std::string(name) + arguments);
                taken = true;
            } catch (const RefusedExpression& refused) {
                const bool counted =
                    refused.reason() == Refusal::wrong_arguments || refused.reason() == Refusal::aggregate;
                CHECK(counted);
            }
        }
        CHECK(taken);
    }
}

TEST_CASE("a refused expression leaves the sandbox and its other expressions in order") {
    Sandbox sandbox = sample();
    Expression before = sandbox.compile("job.lowest = 30");
    sandbox.set("job", {30});
    for (const Refused& row : hostile) CHECK_THROWS_AS(sandbox.compile(row.expression), RefusedExpression);
    CHECK(before.truth() == true);
    CHECK(sandbox.compile("job.lowest = 30").truth() == true);
}

TEST_CASE("relations that cannot be tables are refused") {
    const std::vector<Relation::Column> one = {{"x", "INTEGER"}};
    for (const std::vector<Relation>& bad :
         {std::vector<Relation>{{"tap", {}}}, std::vector<Relation>{{"", one}}, std::vector<Relation>{{"Tap", one}},
          std::vector<Relation>{{"ta\"p", one}}, std::vector<Relation>{{"tap", one}, {"tap", one}},
          std::vector<Relation>{{"tap", {{"x", "BLOB"}}}},
          std::vector<Relation>{{"tap", {{"x", "TEXT"}, {"x", "TEXT"}}}},
          std::vector<Relation>{{"tap", {{"rowid", "TEXT"}}}}, std::vector<Relation>{{"tap", {{"x y", "TEXT"}}}},
          std::vector<Relation>(61, Relation{"tap", one}),
          std::vector<Relation>{{"tap", std::vector<Relation::Column>(201, {"x", "TEXT"})}}}) {
        CHECK_THROWS_AS(Sandbox(bad), std::invalid_argument);
    }
}
