// Which comparisons of a text with a number are found, and which conditions are left in peace?
#include "rules/mismatched_types.h"

#include <catch2/catch.hpp>

#include "rules/rules.h"

using namespace tapbook;

TEST_CASE("a text compared with a number is found at its place, with the way out") {
    struct Row {
        std::string when, message, hint;
        std::size_t offset;
    };
    const Row rows[] = {
        {"tap.drive = 5", "tap.drive is a text, 5 is a number", "write '5' in single quotes", 0},
        {"tap.minutes > 4 AND 5 <> tap.drive", "5 is a number, tap.drive is a text", "write '5' in single quotes", 20},
        {"signal.clean_high_v > 'nine'", "signal.clean_high_v is a number, 'nine' is a text",
         "write the number without quotes", 0},
        {"NOT (TAP.MINUTES IS '9')", "tap.minutes is a number, '9' is a text", "write the number without quotes", 5},
        {"tap.drive = converter.channels", "tap.drive is a text, converter.channels is a number",
         "compare a text with a text and a number with a number", 0},
    };
    for (const Row& row : rows) {
        INFO(row.when);
        const auto found = mismatched_types(row.when);
        REQUIRE(found.has_value());
        CHECK(found->message == "the condition compares a text with a number: " + row.message);
        CHECK(found->hint == row.hint);
        CHECK(found->offset == row.offset);
    }
}

TEST_CASE("sound comparisons, and sides that are reckoned with, are left in peace") {
    for (const char* when : {"tap.drive = 'bridged'", "signal.clean_high_v > 9", "tap.minutes + 5 > 9",
                             "tap.drive IS NULL", "tap.drive IN ('a', 'b')", "upper(tap.drive) = 'X'",
                             "'a' = 'b' OR 1 = 2", "CAST(tap.minutes AS TEXT) = '5'", "\"tap\".\"drive\" = 5", ""}) {
        INFO(when);
        CHECK_FALSE(mismatched_types(when).has_value());
    }
}

TEST_CASE("no shipped rule compares a text with a number") {
    const RuleBook book = RuleBook::shipped();
    for (const Rule& rule : book.rules()) {
        INFO(rule.id);
        CHECK_FALSE(mismatched_types(rule.when).has_value());
    }
}
