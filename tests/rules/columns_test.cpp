// Is the one table of columns complete, and does every getter answer with its type?
#include <catch2/catch.hpp>
#include <set>

#include "facts_fixture.h"

using namespace tapbook;
using namespace tapbook::fixture;

namespace {

void check_type(const Column& column, const sqlite::Value& value) {
    INFO(full_name(column));
    if (std::holds_alternative<std::monostate>(value)) return;
    if (column.type == "INTEGER") CHECK(std::holds_alternative<std::int64_t>(value));
    if (column.type == "REAL") CHECK(std::holds_alternative<double>(value));
    if (column.type == "TEXT") CHECK(std::holds_alternative<std::string>(value));
}

}  // namespace

TEST_CASE("every column has a unit, a meaning, a type and a name of its own") {
    const std::set<std::string_view> relations = {"vehicle", "system",    "circuit", "tap",       "signal",
                                                  "job",     "converter", "level",   "amplifier", "turn_on",
                                                  "feed",    "load",      "plan"};
    std::set<std::string> names;
    for (const Column& column : columns()) {
        INFO(full_name(column));
        CHECK(relations.count(column.relation) == 1);
        CHECK_FALSE(column.unit.empty());
        CHECK(column.meaning.size() > 8);
        CHECK((column.type == "INTEGER" || column.type == "REAL" || column.type == "TEXT"));
        CHECK((column.unit == "yes/no") <= (column.type == "INTEGER"));
        CHECK(names.insert(full_name(column)).second);
        CHECK(find_column(full_name(column)) == &column);
    }
    CHECK(column_relations().size() == relations.size());
}

TEST_CASE("every getter answers with its column's type, or not at all when nothing is recorded") {
    const Bench full;
    Bench empty;
    empty.system = {};
    empty.tap = {};
    empty.output = {};
    empty.signal = {};
    empty.converter = {};
    empty.amplifier.reset();
    Candidate tap_alone = empty.candidate();
    tap_alone.converter = nullptr;
    tap_alone.terms = nullptr;
    for (const Column& column : columns()) {
        check_type(column, column.get(full.candidate()));
        check_type(column, column.get(empty.candidate()));
        check_type(column, column.get(tap_alone));
        INFO(full_name(column));
        if (!is_of_tap(column.relation)) CHECK(std::holds_alternative<std::monostate>(column.get(tap_alone)));
    }
}

TEST_CASE("a value is shown with its unit, yes or no in words, and what is not known as unknown") {
    const auto shown_as = [](std::string_view name, sqlite::Value value) {
        return shown_value(*find_column(name), value);
    };
    CHECK(shown_as("signal.clean_high_v", 9.6) == "9.6 V");
    CHECK(shown_as("signal.clean_high_v", 9.0) == "9 V");
    CHECK(shown_as("tap.minus_is_driven", std::int64_t{1}) == "yes");
    CHECK(shown_as("tap.minus_is_driven", std::int64_t{0}) == "no");
    CHECK(shown_as("converter.channels", std::int64_t{2}) == "2");
    CHECK(shown_as("tap.drive", std::string("bridged")) == "bridged");
    CHECK(shown_as("tap.drive", std::monostate{}) == "unknown");
}

TEST_CASE("an unknown word is NULL, so that a rule comes out unsettled") {
    Bench bench;
    bench.converter.spec.reference = Reference::unknown;
    bench.converter.spec.negatives = Negatives::unknown;
    bench.amplifier->spec.shield = AmplifierShield::unknown;
    bench.output.stage.drive = Drive::unknown;
    for (const auto name : {"converter.reference", "converter.negatives", "amplifier.shield", "tap.drive"}) {
        INFO(name);
        CHECK(std::holds_alternative<std::monostate>(find_column(name)->get(bench.candidate())));
    }
}

TEST_CASE("whether a separate amplifier feeds a speaker depends on circuit, notes and expectation together") {
    struct Row {
        std::optional<FedBy> fed_by;
        Standing premium;
        std::optional<bool> expected;
        std::optional<std::int64_t> side;
    };
    const Standing yes = settled("true"), no = settled("false"), blank = graded(Grade::blank),
                   mixed = graded(Grade::mixed), paper = settled("true", Grade::paper);
    const std::optional<FedBy> unsaid;
    const Row rows[] = {
        {FedBy::amplifier, blank, {}, 1},
        {FedBy::amplifier, no, false, 1},
        {FedBy::radio, blank, {}, 0},
        {FedBy::radio, yes, true, 0},
        {FedBy::radio, yes, false, {}},
        {FedBy::radio, mixed, false, {}},
        {FedBy::radio, mixed, true, 0},
        {unsaid, blank, true, {}},
        {unsaid, mixed, true, {}},
        {unsaid, mixed, false, {}},
        {unsaid, blank, false, 0},
        {unsaid, blank, {}, {}},
        {unsaid, no, true, 0},
        {unsaid, yes, false, {}},
        {unsaid, paper, true, {}},
        {unsaid, settled("false", Grade::matched), {}, 0},
    };
    for (const Row& row : rows) {
        Bench bench;
        bench.tap.circuit.fed_by = row.fed_by;
        bench.system.premium = row.premium;
        bench.system.entry.premium_expected = row.expected;
        const auto value = find_column("circuit.premium_side")->get(bench.candidate());
        INFO("row " << &row - rows);
        if (row.side)
            CHECK(value == sqlite::Value{*row.side});
        else
            CHECK(std::holds_alternative<std::monostate>(value));
    }
    Bench line;
    line.tap.circuit.role = Role::line_level;
    line.tap.circuit.fed_by = FedBy::amplifier;
    CHECK(find_column("circuit.premium_side")->get(line.candidate()) == sqlite::Value{std::int64_t{0}});
}

TEST_CASE("a turn-on that senses half the supply works where the d.c. is certainly enough, and not where it is not") {
    Bench bench;
    const Column& sensed = *find_column("level.half_supply_sensed");
    const auto with = [&](std::optional<double> low, std::optional<double> high) {
        bench.signal.dc_each.low = low ? std::optional(dc_volts(*low)) : std::nullopt;
        bench.signal.dc_each.high = high ? std::optional(dc_volts(*high)) : std::nullopt;
        return sensed.get(bench.candidate());
    };
    CHECK(std::holds_alternative<std::monostate>(with(3.8, 8.3)));  // no threshold is printed
    bench.converter.spec.half_supply_threshold = dc_volts(3);
    CHECK(with(3.0, 8.3) == sqlite::Value{std::int64_t{1}});
    CHECK(with(0, 0) == sqlite::Value{std::int64_t{0}});
    CHECK(with(0, 2.9) == sqlite::Value{std::int64_t{0}});
    CHECK(std::holds_alternative<std::monostate>(with(0, 3.0)));
    CHECK(std::holds_alternative<std::monostate>(with(0, {})));
    CHECK(std::holds_alternative<std::monostate>(with({}, {})));
}
