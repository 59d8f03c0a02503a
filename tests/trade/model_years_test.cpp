// Model years as typed, and ranges of them. The range 1950 to 2079 and the pivot of two-digit
// years are the project's own choice.
#include "trade/model_years.h"

#include <rapidcheck.h>

#include <catch2/catch.hpp>
#include <optional>

using namespace tapbook;
using Refused = YearRefusalReason;

namespace {

std::optional<int> year(std::string_view text) {
    const auto result = parse_model_year(text);
    const auto* found = std::get_if<int>(&result);
    return found ? std::optional(*found) : std::nullopt;
}

std::optional<ModelYears> years(std::string_view text) {
    const auto result = parse_model_years(text);
    const auto* found = std::get_if<ModelYears>(&result);
    return found ? std::optional(*found) : std::nullopt;
}

std::string message_for(std::string_view text) {
    const auto result = parse_model_years(text);
    const auto* refusal = std::get_if<YearRefusal>(&result);
    return refusal ? refusal->message() : "taken";
}

}  // namespace

TEST_CASE("four digits are a year from 1950 to 2079, and every one of them") {
    int taken = 0;
    for (int number = 0; number <= 9999; ++number) {
        std::string text = std::to_string(number);
        text.insert(0, 4 - text.size(), '0');
        const auto found = year(text);
        if (!found) continue;
        ++taken;
        CHECK(*found == number);
    }
    CHECK(taken == 130);
    CHECK(year("1950") == 1950);
    CHECK(year("2079") == 2079);
    CHECK_FALSE(year("1949"));
    CHECK_FALSE(year("2080"));
}

TEST_CASE("two digits mean 1950 to 2049: every pair of digits, once") {
    CHECK(year("18") == 2018);
    CHECK(year("98") == 1998);
    CHECK(year("00") == 2000);
    CHECK(year("08") == 2008);  // decimal: 08 is no octal number at all
    CHECK(year("10") == 2010);
    CHECK(year("49") == 2049);
    CHECK(year("50") == 1950);
    for (int two = 0; two < 100; ++two) {
        const std::string text{static_cast<char>('0' + two / 10), static_cast<char>('0' + two % 10)};
        const auto found = year(text);
        REQUIRE(found);
        CHECK(*found % 100 == two);
        CHECK(contains({1950, 2049}, *found));
    }
}

TEST_CASE("whatever is not exactly two or four digits in range is refused") {
    for (const auto* text : {"",      " ",     "2",      "8",     "010",    "018",          "0010",
                             "02018", "20180", "002018", "18.0",  "2018.0", "-18",          "+18",
                             "+2018", " 2018", "2018 ",  "2 018", "'18",    "0x7E2",        "2e3",
                             "MY18",  "abcd",  "twenty", "2018a", "20l8",   "\xEF\xBC\x92", "99999999999999999999",
                             "1899",  "2100",  "0000",   "2018\n"}) {
        CAPTURE(text);
        CHECK_FALSE(year(text));
    }
}

TEST_CASE("010 is ten, not octal eight, and the message says so") {
    CHECK(message_for("010") ==
          "\"010\" is the number 10, outside the model years 1950 to 2079; write four digits, or the last two");
    CHECK(message_for("000") ==
          "\"000\" is the number 0, outside the model years 1950 to 2079; write four digits, or the last two");
    CHECK(message_for("2080") ==
          "\"2080\" is the number 2080, outside the model years 1950 to 2079; write four digits, or the last two");
}

TEST_CASE("the other refusals say what to write") {
    CHECK(message_for("") == "no model year given; write four digits, or the last two");
    CHECK(message_for("+18") == "\"+18\" is not a model year; write four digits, or the last two");
    CHECK(message_for("2018\x1B") == "\"2018<U+001B>\" is not a model year; write four digits, or the last two");
    CHECK(message_for("02018") == "\"02018\" has 5 digits; write four digits, or the last two");
    CHECK(message_for("2016-2013") == "\"2016-2013\" ends before it begins; write the earlier year first");
}

TEST_CASE("a range is one year or two with - or .. between them") {
    CHECK(years("2013-2016") == ModelYears{2013, 2016});
    CHECK(years("2013..2016") == ModelYears{2013, 2016});
    CHECK(years("13-16") == ModelYears{2013, 2016});
    CHECK(years("98-2003") == ModelYears{1998, 2003});
    CHECK(years("2018") == ModelYears{2018, 2018});
    for (const auto* text : {"", "-", "..", "2013-", "-2016", "2013--2016", "2013...2016", "2013 - 2016",
                             "2013-2016-2018", "2016-2013", "2013/2016", "2013to2016", "13-010", "2013-2080"}) {
        CAPTURE(text);
        CHECK_FALSE(years(text));
    }
}

TEST_CASE("a range is written as it is read, a single year without a dash") {
    CHECK(words(ModelYears{2013, 2016}) == "2013-2016");
    CHECK(words(ModelYears{2013, 2013}) == "2013");
    REQUIRE(rc::check([] {
        const int first = *rc::gen::inRange(earliest_model_year, latest_model_year + 1);
        const int last = *rc::gen::inRange(first, latest_model_year + 1);
        RC_ASSERT(years(words(ModelYears{first, last})) == (ModelYears{first, last}));
    }));
}

TEST_CASE("two ranges overlap when a year lies in both") {
    for (int a = 2010; a <= 2014; ++a)
        for (int b = a; b <= 2014; ++b)
            for (int c = 2010; c <= 2014; ++c)
                for (int d = c; d <= 2014; ++d) {
                    bool shared = false;
                    for (int tried = 2010; tried <= 2014; ++tried)
                        shared = shared || (contains({a, b}, tried) && contains({c, d}, tried));
                    CHECK(overlaps({a, b}, {c, d}) == shared);
                }
}
