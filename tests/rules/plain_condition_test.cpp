// Is a plain condition answered as SQLite answers it? SQLite in the sandbox is the slow second way, over the shipped
// rules and over random conditions, and a list says what is left to it.
#include "rules/plain_condition.h"

#include <rapidcheck.h>

#include <catch2/catch.hpp>
#include <limits>

#include "rules/rules.h"

using namespace tapbook;

namespace {

// Few values, so that equal ones, zero, NULL and the edges of whole numbers meet often.
sqlite::Value random_value(const Column& column) {
    if (*rc::gen::inRange(0, 4) == 0) return std::monostate{};
    if (column.type == "TEXT")
        return std::string(*rc::gen::element("chassis", "floating", "MIXED", "sub", "radio", "a'b", ""));
    if (column.type == "INTEGER")
        return *rc::gen::element<std::int64_t>(0, 1, 2, 3, -1, 7, std::numeric_limits<std::int64_t>::max(),
                                               std::numeric_limits<std::int64_t>::min(), 9007199254740993);
    return *rc::gen::element(0.0, -0.0, 1.0, 2.5, 3.0, -12.0, 0.3, 9007199254740992.0, 1e300, 0.1);
}

std::string shown_truth(std::optional<bool> truth) {
    return !truth ? "unsettled" : *truth ? "fires" : "silent";
}

// Both ways over the same random row; fails when they differ in what they read or say.
void compare(const std::string& when, const PlainCondition& plain, sqlite::Sandbox& sandbox) {
    sqlite::Expression checked = sandbox.compile(when);
    CandidateValues values;
    values.forget();
    std::vector<std::string> plain_reads, checked_reads;
    for (const Column* column : plain.reads()) {
        values.give(*column, random_value(*column));
        plain_reads.push_back(full_name(*column));
    }
    for (const auto& read : checked.reads()) checked_reads.push_back(read.relation + "." + read.column);
    RC_ASSERT(plain_reads == checked_reads);
    for (const Column* column : plain.reads()) sandbox.set(column->relation, values.row(column->relation));
    RC_ASSERT(shown_truth(plain.truth(values)) == shown_truth(checked.truth()));
}

std::string number_expression(int depth);

std::string text_expression(int depth) {
    const std::string simple = *rc::gen::element<std::string>("converter.reference", "tap.pair_grade", "job.use",
                                                              "'chassis'", "'MIXED'", "'a''b'", "''");
    if (depth == 0 || *rc::gen::inRange(0, 3) > 0) return simple;
    const std::string call = *rc::gen::element<std::string>("coalesce", "min", "MAX", "ifnull");
    return call + "(" + simple + ", " + text_expression(depth - 1) + ")";
}

std::string truth_expression(int depth) {
    if (depth == 0) return number_expression(0);
    const auto number = [&] { return number_expression(depth - 1); };
    const auto text = [&] { return text_expression(depth - 1); };
    const auto truth = [&] { return truth_expression(depth - 1); };
    const std::string sign =
        *rc::gen::element<std::string>(" = ", "==", " <> ", "!=", " < ", "<=", " > ", ">=", " IS ", " IS NOT ");
    const std::string turned = *rc::gen::element<std::string>(" ", " NOT ");
    switch (*rc::gen::inRange(0, 10)) {
        case 0:
            return truth() + " AND " + truth();
        case 1:
            return truth() + " or " + truth();
        case 2:
            return "NOT " + truth();
        case 3:
            return "(" + truth() + ")";
        case 4:
            return number() + *rc::gen::element<std::string>(" IS NULL", " IS NOT NULL", " ISNULL", " NOTNULL");
        case 5:
            return number() + turned + "IN (" + number() + ", " + number() + ")";
        case 6:
            return text() + turned + "IN (" + text() + ")";
        case 7:
            return number() + turned + "BETWEEN " + number() + " AND " + number();
        case 8:
            return text() + sign + text();
        default:
            return number() + sign + number();
    }
}

std::string number_expression(int depth) {
    const std::string simple = *rc::gen::element<std::string>(
        "level.pairs", "tap.hazards", "signal.clean_high_v", "converter.limit_at_lowest_v", "level.drive_margin_db",
        "0", "1", "2", "12.5", "0.3", "0.1", "9007199254740992", "converter.isolates");
    if (depth == 0) return simple;
    switch (*rc::gen::inRange(0, 6)) {
        case 0:
            return number_expression(depth - 1) + *rc::gen::element<std::string>(" + ", "-", " * ", "/") +
                   number_expression(depth - 1);
        case 1:
            return "- " + number_expression(depth - 1);
        case 2:
            return *rc::gen::element<std::string>("min", "max", "coalesce", "ifnull") + "(" +
                   number_expression(depth - 1) + "," + truth_expression(depth - 1) + ")";
        case 3:
            return "(" + truth_expression(depth - 1) + ")";
        default:
            return simple;
    }
}

}  // namespace

TEST_CASE("every plain shipped condition reads and says what SQLite says, whatever the values") {
    sqlite::Sandbox sandbox(column_relations());
    const RuleBook book = RuleBook::shipped(RuleCases::left_out);
    std::size_t plain_ones = 0;
    for (const Rule& rule : book.rules()) {
        const auto plain = PlainCondition::read(rule.when);
        if (!plain) continue;
        ++plain_ones;
        INFO(rule.when);
        CHECK(rc::check(rule.id, [&] { compare(rule.when, *plain, sandbox); }));
    }
    CHECK(plain_ones * 10 >= book.rules().size() * 9);  // else start-up pays for the sandbox again
}

TEST_CASE("a random plain condition reads and says what SQLite says, whatever the values") {
    sqlite::Sandbox sandbox(column_relations());
    int plain_ones = 0;
    REQUIRE(rc::check([&] {
        const std::string when = truth_expression(*rc::gen::inRange(1, 5));
        const auto plain = PlainCondition::read(when);
        RC_PRE(plain.has_value());
        ++plain_ones;
        RC_LOG() << when << "\n";
        compare(when, *plain, sandbox);
    }));
    CHECK(plain_ones >= 100);
}

TEST_CASE("what is foreseen of a condition is what it says with every part") {
    int foreseen_ones = 0, open_ones = 0;
    REQUIRE(rc::check([&] {
        const std::string when = truth_expression(*rc::gen::inRange(1, 5));
        const auto plain = PlainCondition::read(when);
        RC_PRE(plain.has_value());
        RC_LOG() << when << "\n";
        CandidateValues values;
        values.forget();
        const auto give = [&](bool of_tap) {
            for (const Column* column : plain->reads())
                if (is_of_tap(column->relation) == of_tap) values.give(*column, random_value(*column));
        };
        give(true);
        const auto foreseen = plain->foreseen(values);
        ++(foreseen == PlainCondition::Foreseen::open ? open_ones : foreseen_ones);
        if (foreseen == PlainCondition::Foreseen::open) return;
        for (int part = 0; part < 10; ++part) {
            give(false);
            const auto truth = plain->truth(values);
            RC_ASSERT(foreseen == (!truth   ? PlainCondition::Foreseen::unsettled
                                   : *truth ? PlainCondition::Foreseen::fires
                                            : PlainCondition::Foreseen::silent));
        }
    }));
    CHECK(foreseen_ones >= 20);
    CHECK(open_ones >= 20);
}

TEST_CASE("a condition is foreseen where the tap alone settles it, and open where the part decides") {
    CandidateValues values;
    values.forget();
    values.give(*find_column("signal.clean_high_v"), 9.6);
    values.give(*find_column("tap.hazards"), std::int64_t{0});
    const std::pair<const char*, PlainCondition::Foreseen> expected[] = {
        {"tap.hazards = 1 AND converter.isolates = 0", PlainCondition::Foreseen::silent},
        {"converter.isolates = 0 AND tap.hazards = 1", PlainCondition::Foreseen::silent},
        {"tap.hazards = 0 OR converter.isolates = 0", PlainCondition::Foreseen::fires},
        {"signal.clean_high_v > 8.0", PlainCondition::Foreseen::fires},
        {"signal.clean_low_v < converter.input_min_v", PlainCondition::Foreseen::unsettled},
        {"signal.clean_high_v > converter.input_max_v", PlainCondition::Foreseen::open},
        {"converter.input_max_v IS NULL", PlainCondition::Foreseen::open},
        {"signal.clean_low_v IS converter.input_min_v", PlainCondition::Foreseen::open},
        {"coalesce(converter.input_max_v, signal.clean_high_v) > 1", PlainCondition::Foreseen::open},
    };
    for (const auto& [when, foreseen] : expected) {
        INFO(when);
        CHECK(PlainCondition::read(when)->foreseen(values) == foreseen);
    }
}

TEST_CASE("real numbers are read as the very double SQLite reads") {
    sqlite::Sandbox sandbox({{"only", {{"cell", "REAL"}}}});
    int plain_ones = 0;
    REQUIRE(rc::check([&] {
        const auto whole = *rc::gen::inRange(0, 100000);
        const auto digits = *rc::gen::container<std::string>(rc::gen::inRange('0', '9'));
        const std::string written = std::to_string(whole) + "." + digits + "7";
        const auto plain = PlainCondition::read("signal.clean_high_v = " + written);
        if (!plain) return;
        ++plain_ones;
        CandidateValues values;
        values.forget();
        values.give(*find_column("signal.clean_high_v"), sandbox.compile(written).value());
        RC_ASSERT(plain->truth(values) == true);
    }));
    CHECK(plain_ones >= 10);
}

TEST_CASE("what is not certainly plain is left to the sandbox") {
    for (const char* when : {"",
                             " ",
                             "1 +",
                             "signal.clean_high_v >",
                             "(signal.clean_high_v > 1",
                             "signal.clean_high_v > 1)",
                             "clean_high_v > 1",
                             "\"signal\".clean_high_v > 1",
                             "signal.volts > 1",
                             "signal.clean_high_v.x > 1",
                             "signal.clean_high_v > '1'",
                             "tap.drive = 1",
                             "tap.drive",
                             "'text'",
                             "tap.drive + 1",
                             "NOT tap.drive",
                             "tap.drive IN ('a', 1)",
                             "tap.drive IN ()",
                             "tap.drive IN (SELECT 1)",
                             "tap.drive LIKE 'a%'",
                             "tap.drive GLOB 'a'",
                             "tap.drive || 'a' = 'b'",
                             "tap.drive = 'a' COLLATE NOCASE",
                             "tap.drive = 'open",
                             "signal.clean_high_v > NULL",
                             "signal.clean_high_v = TRUE",
                             "signal.clean_high_v IS TRUE",
                             "signal.clean_high_v IS DISTINCT FROM 1",
                             "signal.clean_high_v > 1e3",
                             "signal.clean_high_v > .5",
                             "signal.clean_high_v > 5.",
                             "signal.clean_high_v > 0x10",
                             "signal.clean_high_v > 9007199254740993",
                             "signal.clean_high_v > +1",
                             "signal.clean_high_v > 1 -- more",
                             "signal.clean_high_v > /* */ 1",
                             "signal.clean_high_v > 1; SELECT 1",
                             "signal.clean_high_v > ?1",
                             "signal.clean_high_v > :a",
                             "signal.clean_high_v % 2 = 1",
                             "signal.clean_high_v & 1",
                             "level.pairs << 1",
                             "~level.pairs",
                             "abs(signal.clean_high_v) > 1",
                             "min(signal.clean_high_v) > 1",
                             "ifnull(level.pairs, 1, 2) = 1",
                             "coalesce(tap.drive, 1) = 1",
                             "CASE WHEN level.pairs THEN 1 ELSE 0 END",
                             "x'00' = tap.drive",
                             "level.pairs = NOT 1",
                             "level.pairs NOT NULL",
                             "(1, 2) = (1, 2)",
                             "load_extension('x')"}) {
        INFO(when);
        CHECK_FALSE(PlainCondition::read(when).has_value());
    }
    CHECK_FALSE(PlainCondition::read(std::string(60, '(') + "1" + std::string(60, ')')).has_value());
    std::string many = "1";
    for (int i = 0; i < 300; ++i) many += " + 1";
    CHECK_FALSE(PlainCondition::read(many).has_value());
    CHECK_FALSE(PlainCondition::read(std::string("level.pairs = 1\0 OR 1", 22)).has_value());
}

TEST_CASE("a whole number given for a REAL column is divided as a real") {
    const auto plain = PlainCondition::read("signal.clean_high_v / 2 = 2.5");
    REQUIRE(plain);
    CandidateValues values;
    values.forget();
    values.give(*find_column("signal.clean_high_v"), std::int64_t{5});
    CHECK(plain->truth(values) == true);
}
