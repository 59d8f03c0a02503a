// Does an expression give the value SQL defines on the rows as they are now, and tell exactly what it reads?
#include <catch2/catch.hpp>
#include <limits>

#include "kinds_of_error.h"
#include "sqlite/sqlite.h"

using namespace tapbook::sqlite;

namespace {

using Reads = std::vector<ColumnRead>;

Sandbox sample(std::int64_t budget = default_step_budget) {
    return Sandbox({{"tap", {{"volts", "REAL"}, {"name", "TEXT"}}},
                    {"converter", {{"volts", "REAL"}, {"limit_volts", "REAL"}}},
                    {"job", {{"lowest", "INTEGER"}}}},
                   budget);
}

}  // namespace

TEST_CASE("a comparison follows the rows it is given") {
    Sandbox sandbox = sample();
    Expression over = sandbox.compile("tap.volts > converter.limit_volts");
    CHECK_FALSE(over.truth().has_value());
    sandbox.set("tap", {9.6, "front"});
    CHECK_FALSE(over.truth().has_value());
    sandbox.set("converter", {1.0, 8.0});
    CHECK(over.truth() == true);
    sandbox.set("tap", {7.9, "front"});
    CHECK(over.truth() == false);
    sandbox.clear("tap");
    CHECK_FALSE(over.truth().has_value());
}

TEST_CASE("conditions follow three-valued logic") {
    Sandbox sandbox = sample();
    sandbox.set("job", {30});  // tap.volts stays NULL
    // The tables of AND, OR and NOT with unknown: ISO/IEC 9075-2 8.x <boolean value expression>, from memory.
    const std::pair<const char*, std::optional<bool>> rows[] = {
        {"tap.volts > 1", std::nullopt},
        {"NOT tap.volts > 1", std::nullopt},
        {"NULL AND 0", false},
        {"tap.volts > 1 AND job.lowest < 0", false},
        {"tap.volts > 1 AND job.lowest > 0", std::nullopt},
        {"tap.volts > 1 OR job.lowest > 0", true},
        {"tap.volts > 1 OR job.lowest < 0", std::nullopt},
        {"tap.volts = tap.volts", std::nullopt},
        {"tap.volts IS NULL", true},
        {"tap.volts IS NULL OR tap.volts > 1", true},
        {"job.lowest IN (1, tap.volts)", std::nullopt},
        {"job.lowest IN (30, tap.volts)", true},
        {"coalesce(tap.volts, 5) > 1", true},
        {"max(tap.volts, 1) > 0", std::nullopt},
        {"ln(-1) > 0", std::nullopt},
        {"1 / 0", std::nullopt},
        {"0.4", true},
        {"0.0", false},
        {"-0", false},
        {"9223372036854775807", true},
        {"'2 volts'", true},
        {"'volts'", false},
    };
    for (const auto& [expression, expected] : rows) {
        INFO(expression);
        CHECK(sandbox.compile(expression).truth() == expected);
    }
}

TEST_CASE("an expression has a value of SQL's own type") {
    Sandbox sandbox = sample();
    sandbox.set("tap", {2.0, "front left"});
    sandbox.set("job", {30});
    const std::pair<const char*, Value> rows[] = {
        {"job.lowest + 1", 31},
        {"job.lowest / 4", 7},
        {"job.lowest / 4.0", 7.5},
        {"tap.volts", 2.0},
        {"pow(tap.volts, 2) / 4", 1.0},
        {"substr(tap.name, 1, 5) || '!'", "front!"},
        {"x'41'", Blob{"A"}},
        {"converter.volts", std::monostate()},
        {"min(3, job.lowest, 2)", 2},
        {"iif(tap.name LIKE 'FRONT%', 'f', 'r')", "f"},
        {"0", 0},
        {"00", 0},
        {"0x0 + 0x1F", 31},
        {"5 -0", 5},
        {"round(2.6, 0)", 3.0},
        {"tap.name = 'a' AND 0", 0},
    };
    for (const auto& [expression, expected] : rows) {
        INFO(expression);
        CHECK(sandbox.compile(expression).value() == expected);
    }
}

TEST_CASE("reads names every column of the expression once, in the order of the relations") {
    Sandbox sandbox = sample();
    const std::pair<const char*, Reads> rows[] = {
        {"1 + 1", {}},
        {"'tap.volts'", {}},
        {"tap.volts", {{"tap", "volts"}}},
        {"lowest", {{"job", "lowest"}}},
        {"TAP.Volts + \"tap\".\"VOLTS\" + main.tap.volts", {{"tap", "volts"}}},
        {"job.lowest > converter.limit_volts AND converter.volts > tap.volts",
         {{"tap", "volts"}, {"converter", "volts"}, {"converter", "limit_volts"}, {"job", "lowest"}}},
        {"0 AND tap.volts > 1", {{"tap", "volts"}}},
        {"tap.volts > 1 AND 0", {{"tap", "volts"}}},
        {"coalesce(1, job.lowest)", {{"job", "lowest"}}},
        {"CASE WHEN 0 THEN tap.name ELSE job.lowest END", {{"tap", "name"}, {"job", "lowest"}}},
        {"tap.name LIKE 'x'", {{"tap", "name"}}},
        {"tap.name IS NULL", {{"tap", "name"}}},
        {"job.lowest IN (1, tap.volts)", {{"tap", "volts"}, {"job", "lowest"}}},
    };
    for (const auto& [expression, expected] : rows) {
        INFO(expression);
        CHECK(sandbox.compile(expression).reads() == expected);
    }
}

TEST_CASE("only the relations it reads are joined") {
    Sandbox sandbox({{"sign", {{"volts", "REAL"}}}, {"tap", {{"volts", "REAL"}}}, {"job", {{"lowest", "INTEGER"}}}});
    CHECK(sandbox.compile("1 + 1").sql() == "SELECT (1 + 1)");
    CHECK(sandbox.compile("lowest > 1").sql() == "SELECT (lowest > 1) FROM \"job\"");
    // sign is the function here, though a relation has that name, too
    CHECK(sandbox.compile("sign(tap.volts) = 1").sql() == "SELECT (sign(tap.volts) = 1) FROM \"tap\"");
    CHECK(sandbox.compile("sign(sign.volts) = job.lowest").sql() ==
          "SELECT (sign(sign.volts) = job.lowest) FROM \"sign\", \"job\"");
}

TEST_CASE("the budget is for expressions, not for putting in a wide row") {
    std::vector<Relation::Column> columns;
    for (int i = 0; i < 200; ++i) columns.push_back({"c" + std::to_string(i), "INTEGER"});
    Sandbox sandbox({{"wide", columns}}, 10);
    sandbox.set("wide", std::vector<Value>(200, Value(7)));
    CHECK(sandbox.compile("wide.c199").value() == Value(7));
}

TEST_CASE("as many relations as are allowed are no hindrance when few are read") {
    std::vector<Relation> relations;
    for (int i = 0; i < 60; ++i) relations.push_back({"r" + std::to_string(i), {{"x", "INTEGER"}}});
    Sandbox sandbox(relations);
    sandbox.set("r0", {1});
    sandbox.set("r59", {2});
    Expression sum = sandbox.compile("r0.x + r59.x");
    CHECK(sum.value() == Value(3));
    CHECK(sum.reads() == Reads{{"r0", "x"}, {"r59", "x"}});
}

TEST_CASE("a relation named like a keyword of SQL can be used in quotes") {
    Sandbox sandbox({{"order", {{"group", "INTEGER"}}}, {"plan", {{"key", "INTEGER"}}}});
    sandbox.set("order", {4});
    sandbox.set("plan", {5});
    CHECK(sandbox.compile("\"order\".\"group\" + plan.key").value() == Value(9));
}

TEST_CASE("a value of another type than its column is refused and the old row stays") {
    Sandbox sandbox = sample();
    sandbox.set("job", {30});
    sandbox.set("tap", {2.0, "front"});
    CHECK(kind_of_error([&] { sandbox.set("job", {30.5}); }) == "constraint");
    CHECK(kind_of_error([&] { sandbox.set("job", {"thirty"}); }) == "constraint");
    CHECK(kind_of_error([&] { sandbox.set("tap", {3.0, Blob{"front"}}); }) == "constraint");
    CHECK(sandbox.compile("job.lowest").value() == Value(30));
    CHECK(sandbox.compile("tap.volts").value() == Value(2.0));
    sandbox.set("job", {30});  // the old row again
    CHECK(sandbox.compile("job.lowest").value() == Value(30));
    sandbox.set("job", {31.0});
    CHECK(sandbox.compile("job.lowest").value() == Value(31));
    sandbox.set("tap", {3, std::monostate()});
    CHECK(sandbox.compile("tap.volts").value() == Value(3.0));
}

TEST_CASE("set wants a known relation and a value for each column") {
    Sandbox sandbox = sample();
    CHECK_THROWS_AS(sandbox.set("nonsense", {1}), std::invalid_argument);
    CHECK_THROWS_AS(sandbox.set("job", {}), std::invalid_argument);
    CHECK_THROWS_AS(sandbox.set("job", {1, 2}), std::invalid_argument);
    CHECK_THROWS_AS(sandbox.clear("nonsense"), std::invalid_argument);
}

TEST_CASE("an evaluation that takes more steps than the budget ends, and the next one has a full budget") {
    std::string list = "1";
    for (int i = 2; i < 900; ++i) list += "," + std::to_string(i);
    const std::string long_one = "job.lowest IN (" + list + ")";
    Sandbox patient = sample();
    CHECK_FALSE(patient.compile(long_one).truth().has_value());

    Sandbox hasty = sample(100);
    Expression endless = hasty.compile(long_one);
    Expression quick = hasty.compile("job.lowest = 30");
    for (int round = 0; round < 50; ++round) {
        hasty.set("job", {30});
        CHECK(kind_of_error([&] { endless.truth(); }) == "interrupted");
        CHECK(quick.truth() == true);
    }
}

TEST_CASE("what cannot be computed is an error and no answer") {
    Sandbox sandbox = sample();
    sandbox.set("tap", {1.0, std::string(600'000, 'x')});
    sandbox.set("job", {std::numeric_limits<std::int64_t>::min()});
    CHECK_THROWS_WITH(sandbox.compile("abs(job.lowest)").value(), Catch::Contains("integer overflow"));
    CHECK_THROWS_WITH(sandbox.compile("tap.name || tap.name").value(), Catch::Contains("too big"));
    CHECK_THROWS_WITH(sandbox.compile("1 LIKE 1 ESCAPE 'ab'").value(), Catch::Contains("single character"));
    std::string pattern = "'%";
    for (int i = 0; i < 30; ++i) pattern += "_%";
    CHECK_THROWS_WITH(sandbox.compile("tap.name LIKE " + pattern + "'").value(),
                      Catch::Contains("pattern too complex"));
    CHECK(sandbox.compile("tap.name LIKE '%a%a%a%a%a%a%a%a%a%a%a%b'").truth() == false);  // not exponential
}

TEST_CASE("an expression may outlive its sandbox, and a sandbox may be moved") {
    std::optional<Expression> kept;
    {
        Sandbox sandbox = sample();
        Expression early = sandbox.compile("job.lowest + 1");
        Sandbox moved = std::move(sandbox);
        moved.set("job", {30});
        CHECK(early.value() == Value(31));
        kept = moved.compile("job.lowest * 2");
    }
    CHECK(kept->value() == Value(60));
}
