// Do random conditions agree with a second, slow evaluation written here, and does no text get through as anything else
// than a refusal or an expression?
#include <rapidcheck.h>

#include <algorithm>
#include <catch2/catch.hpp>
#include <set>

#include "sqlite/sqlite.h"

using namespace tapbook::sqlite;

namespace {

using Truth = std::optional<bool>;

struct Cells {
    std::optional<std::int64_t> values[3];
};

// A condition as text together with its truth by the tables of three-valued logic and the columns it names.
struct Condition {
    std::string text;
    Truth truth;
    std::set<int> columns;
};

constexpr const char* names[] = {"near.a", "near.b", "far.c"};

Truth negated(Truth x) {
    return x ? Truth(!*x) : x;
}

Truth both(Truth x, Truth y) {
    if (x == Truth(false) || y == Truth(false)) return false;
    return x && y ? Truth(true) : std::nullopt;
}

Condition leaf(const Cells& cells) {
    const int column = *rc::gen::inRange(0, 3);
    const std::int64_t number = *rc::gen::inRange(-1, 3);
    const auto& cell = cells.values[column];
    const std::string name = names[column];
    switch (*rc::gen::inRange(0, 5)) {
        case 0:
            return {name + " > " + std::to_string(number), cell ? Truth(*cell > number) : std::nullopt, {column}};
        case 1:
            return {std::to_string(number) + "=" + name, cell ? Truth(*cell == number) : std::nullopt, {column}};
        case 2:
            return {name + " IS NULL", !cell, {column}};
        case 3:
            return {name, cell ? Truth(*cell != 0) : std::nullopt, {column}};
        default:
            return {std::to_string(number), number != 0, {}};
    }
}

Condition condition(const Cells& cells, int depth) {
    const int kind = depth == 0 ? 0 : *rc::gen::inRange(0, 4);
    if (kind == 0) return leaf(cells);
    Condition left = condition(cells, depth - 1);
    if (kind == 1) return {"NOT (" + left.text + ")", negated(left.truth), left.columns};
    Condition right = condition(cells, depth - 1);
    left.columns.insert(right.columns.begin(), right.columns.end());
    if (kind == 2) return {"(" + left.text + ") AND (" + right.text + ")", both(left.truth, right.truth), left.columns};
    const Truth either = negated(both(negated(left.truth), negated(right.truth)));
    return {"(" + left.text + ") OR (" + right.text + ")", either, left.columns};
}

Value as_value(const std::optional<std::int64_t>& cell) {
    return cell ? Value(*cell) : Value();
}

Sandbox two_relations() {
    return Sandbox({{"near", {{"a", "INTEGER"}, {"b", "INTEGER"}}}, {"far", {{"c", "INTEGER"}}}});
}

}  // namespace

TEST_CASE("random conditions agree with three-valued logic done by hand and read exactly what they name") {
    Sandbox sandbox = two_relations();
    REQUIRE(rc::check([&] {
        Cells cells;
        for (auto& cell : cells.values) {
            if (*rc::gen::inRange(0, 3) > 0) cell = *rc::gen::inRange(-1, 3);
        }
        const Condition random = condition(cells, 4);
        sandbox.set("near", {as_value(cells.values[0]), as_value(cells.values[1])});
        sandbox.set("far", {as_value(cells.values[2])});
        Expression compiled = sandbox.compile(random.text);
        RC_ASSERT(compiled.truth() == random.truth);
        std::vector<std::string> read, named;
        for (const ColumnRead& column : compiled.reads()) read.push_back(column.relation + "." + column.column);
        for (const int column : random.columns) named.push_back(names[column]);
        RC_ASSERT(read == named);
    }));
}

TEST_CASE("a row put in by set is the row expressions see") {
    Sandbox sandbox = two_relations();
    Expression a = sandbox.compile("near.a"), b = sandbox.compile("near.b");
    REQUIRE(rc::check([&](std::int64_t first, std::int64_t second) {
        sandbox.set("near", {first, second});
        RC_ASSERT(a.value() == Value(first));
        RC_ASSERT(b.value() == Value(second));
    }));
}

TEST_CASE("any text in quotes is that text and nothing more") {
    Sandbox sandbox = two_relations();
    REQUIRE(rc::check([&] {
        const auto text =
            *rc::gen::container<std::string>(rc::gen::elementOf(std::string("'\"`[]();-/*?:@$ \\%abc0.,\n")));
        std::string quoted = "'";
        for (const char c : text) quoted += c == '\'' ? std::string("''") : std::string(1, c);
        Expression expression = sandbox.compile(quoted + "'");
        RC_ASSERT(expression.value() == Value(text));
        RC_ASSERT(expression.reads().empty());
    }));
}

namespace {

using Pieces = std::vector<std::string>;

const Pieces pieces = {"near.a", "far.c",  "near",   ".",    "a",    "c",     "(",
                       ")",      ",",      "SELECT", "FROM", "near", "AND",   "OR",
                       "0",      "1",      "IN",     "IS",   "NOT",  "\"a\"", "sqlite_schema",
                       "NULL",   "'x'",    "[b]",    "+",    "abs",  "max",   "-",
                       "count",  "*",      "||",     "CASE", "WHEN", "THEN",  "END",
                       "->",     ">",      "CAST",   ";",    "--",   "/*",    "AS TEXT",
                       "OVER",   "?1",     "VALUES", "LIKE", "iif",  "*/",    "COLLATE",
                       "EXISTS", "random", "FILTER", "WITH", "'"};

const Pieces starts[] = {
    {"near.a", ">", "1", "AND", "far.c", "IN", "(", "1", ",", "near.b", ")"},
    {"max", "(", "near.a", ",", "abs", "(", "far.c", ")", ")", "IS", "NOT", "NULL"},
    {"CASE", "WHEN", "near.a", "THEN", "'x'", "END", "||", "CAST", "(", "far.c", "AS TEXT", ")", "LIKE", "'x'"},
};

// A good expression with up to three of its pieces left out, put in or replaced.
std::string spoilt_expression() {
    Pieces text = starts[*rc::gen::inRange(0, 3)];
    for (int changes = *rc::gen::inRange(0, 4); changes > 0; --changes) {
        const auto at = text.begin() + *rc::gen::inRange<std::ptrdiff_t>(0, static_cast<std::ptrdiff_t>(text.size()));
        const std::string piece = *rc::gen::elementOf(pieces);
        const int kind = *rc::gen::inRange(0, 3);
        if (kind == 0) text.erase(at);
        if (kind == 1) text.insert(at, piece);
        if (kind == 2) *at = piece;
    }
    std::string all;
    for (const std::string& piece : text) all += piece + " ";
    return all;
}

}  // namespace

TEST_CASE("a spoilt expression is either refused or reads only the relations") {
    Sandbox sandbox = two_relations();
    int taken = 0, refused = 0;
    REQUIRE(rc::check([&] {
        for (int round = 0; round < 20; ++round) {
            const std::string text = spoilt_expression();
            try {
                Expression expression = sandbox.compile(text);
                ++taken;
                for (const ColumnRead& read : expression.reads()) {
                    const std::string name = read.relation + "." + read.column;
                    RC_ASSERT(std::count(std::begin(names), std::end(names), name) == 1);
                }
                expression.value();
            } catch (const RefusedExpression& refusal) {
                ++refused;
                RC_ASSERT(refusal.offset().value_or(1) <= text.size() + 1);
            }
        }
    }));
    CHECK(taken > 100);
    CHECK(refused > 100);
}
