// Does decimal text become exactly the small units that were meant, and only when it is a number? Tables, and two laws.
#include "trade/decimal.h"

#include <rapidcheck.h>

#include <catch2/catch.hpp>
#include <string>

using namespace tapbook;

namespace {

std::string reason(std::string_view text, int digits) {
    const auto result = scaled(text, digits);
    const auto* bad = std::get_if<NotANumber>(&result);
    return bad == nullptr ? "taken" : bad->reason;
}

std::int64_t number(std::string_view text, int digits) {
    const auto result = scaled(text, digits);
    REQUIRE(std::holds_alternative<std::int64_t>(result));
    return std::get<std::int64_t>(result);
}

std::int64_t power_of_ten(int digits) {
    std::int64_t power = 1;
    for (int i = 0; i < digits; ++i) power *= 10;
    return power;
}

}  // namespace

TEST_CASE("decimal text is scaled exactly, without passing through a fraction") {
    CHECK(number("13.8", 3) == 13800);
    CHECK(number("0.1", 3) + number("0.2", 3) == number("0.3", 3));  // binary fractions fail this
    CHECK(number("1.005", 3) == 1005);                               // as a double it is 1.00499...
    CHECK(number("4.35", 2) == 435);                                 // as a double times 100 it is 434.99...
    CHECK(number("0.29", 2) == 29);
    CHECK(number("999999999999.999999", 6) == 999999999999999999);
    CHECK(number("0", 3) == 0);
    CHECK(number("-0", 3) == 0);
    CHECK(number("-0.015", 3) == -15);
    CHECK(number("+5", 0) == 5);
    CHECK(number("010", 0) == 10);  // ten, not eight
    CHECK(number("007.50", 3) == 7500);
    CHECK(number("2.500000000000000000000", 1) == 25);  // further zeros say nothing
    CHECK(number("5.0", 0) == 5);
    CHECK(number("0000000000000000000001", 0) == 1);
    CHECK(number("123456789012", 0) == 123456789012);
}

TEST_CASE("what is not plainly a number is refused with its reason") {
    for (const char* bad :
         {"x",  "-",   "+",   ".",  "-.",  "5.",  ".5",  "-.5", "1.2.3", "1e3", "1E3", "0x1F", "1_000", " 5",
          "5 ", "--5", "+-5", "5-", "1/2", "inf", "nan", "NaN", "5V",    "5 V", "½",   "٣",    "1 000"}) {
        INFO(bad);
        CHECK(reason(bad, 3) == "is not a number: write digits with at most one point, like 13.8");
    }
    CHECK(reason(std::string_view("5\0", 2), 3) == "is not a number: write digits with at most one point, like 13.8");
    CHECK(reason("80x", 0) == "is not a number: write digits alone, like 12");
    CHECK(reason("", 3) == "is empty: write a number");
}

TEST_CASE("a decimal comma is answered by the number with a point") {
    CHECK(reason("13,8", 3) == "uses a comma: write 13.8");
    CHECK(reason("-0,5", 3) == "uses a comma: write -0.5");
}

TEST_CASE("a comma that cannot be a decimal point is not turned into one") {
    for (const char* bad : {"1,234.5", "1.234,5", "1,2,3", ",", "5,", ",5", "x,y"}) {
        INFO(bad);
        CHECK(reason(bad, 3) == "is not a number: write digits with at most one point, like 13.8");
    }
}

TEST_CASE("digits that would be lost are refused, and so are numbers that do not fit") {
    CHECK(reason("1.5", 0) == "must be a whole number");
    CHECK(reason("1.23", 1) == "has more than 1 digit after the point");
    CHECK(reason("1.0001", 3) == "has more than 3 digits after the point");
    CHECK(reason("1234567890123", 0) == "is far too large");
    CHECK(reason("-1234567890123", 6) == "is far too large");
    CHECK(reason("999999999999", 6) == "taken");
}

TEST_CASE("a number is written as shortly as it can be") {
    CHECK(unscaled(13800, 3) == "13.8");
    CHECK(unscaled(-15, 3) == "-0.015");
    CHECK(unscaled(0, 3) == "0");
    CHECK(unscaled(5, 0) == "5");
    CHECK(unscaled(100, 0) == "100");  // these zeros count
    CHECK(unscaled(100000, 3) == "100");
    CHECK(unscaled(1, 6) == "0.000001");
    CHECK(unscaled(-1000, 3) == "-1");
}

TEST_CASE("what unscaled writes is read back, and no shorter text means the same") {
    REQUIRE(rc::check([] {
        const int digits = *rc::gen::inRange(0, 7);
        const auto most = 1000000000000 * power_of_ten(digits) - 1;
        const auto wanted =
            *rc::gen::oneOf(rc::gen::inRange<std::int64_t>(-most, most), rc::gen::inRange<std::int64_t>(-2000, 2000));
        const std::string text = unscaled(wanted, digits);
        RC_ASSERT(number(text, digits) == wanted);
        const auto point = text.find('.');
        RC_ASSERT(point == std::string::npos || (text.back() != '0' && text.back() != '.'));
        const std::size_t sign = wanted < 0 ? 1 : 0;
        RC_ASSERT(text[sign] != '0' || text.size() == sign + 1 || text[sign + 1] == '.');
    }));
}

TEST_CASE("scaling by one more digit multiplies by ten") {
    REQUIRE(rc::check([] {
        const int digits = *rc::gen::inRange(0, 6);
        const std::string text = unscaled(*rc::gen::inRange<std::int64_t>(-1000000000, 1000000000), digits);
        RC_ASSERT(number(text, digits + 1) == 10 * number(text, digits));
    }));
}
