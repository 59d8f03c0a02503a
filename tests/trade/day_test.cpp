// Is a day counted right? Against a second formula (days of whole years by the leap-year rule, then a table of months),
// over every day from year 53 to year 9909, and tables of texts that are and are not days.
#include "trade/day.h"

#include <catch2/catch.hpp>
#include <string>

using namespace tapbook;

namespace {

bool is_leap(std::int64_t year) {
    return (year % 4 == 0 && year % 100 != 0) || year % 400 == 0;  // Gregorian rule
}

struct Date {
    std::int64_t year, month, day;
};

// The next day, by the calendar alone.
Date after(Date date) {
    const int lengths[] = {31, is_leap(date.year) ? 29 : 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
    if (++date.day <= lengths[date.month - 1]) return date;
    date.day = 1;
    if (++date.month <= 12) return date;
    return {date.year + 1, 1, 1};
}

std::string padded(std::int64_t number, std::size_t width) {
    std::string text = std::to_string(number);
    return std::string(width - std::min(width, text.size()), '0') + text;
}

std::string text_of(const Date& date) {
    return padded(date.year, 4) + "-" + padded(date.month, 2) + "-" + padded(date.day, 2);
}

// Days from 0000-01-01 to the start of a year, by counting leap years.
std::int64_t days_before(std::int64_t year) {
    const std::int64_t last = year - 1;
    return year == 0 ? 0 : year * 365 + last / 4 - last / 100 + last / 400 + 1;  // + 1: year 0 is a leap year
}

}  // namespace

TEST_CASE("every day from -700000 to 2900000 is written and read as the calendar has it") {
    const std::int64_t epoch = days_before(1970);
    REQUIRE(epoch ==
            719528);  // 0000-01-01 to 1970-01-01, also in ISO 8601 texts on the proleptic calendar (from memory)
    std::int64_t number = days_before(53) - epoch;
    REQUIRE(number <= -700000);
    std::int64_t wrong = 0;
    for (Date date{53, 1, 1}; number <= 2900000; date = after(date), ++number) {
        const std::string text = text_of(date);
        if (day_text(number) != text || day_number(text) != number) ++wrong;
    }
    CHECK(wrong == 0);
}

TEST_CASE("well-known days have their numbers") {
    CHECK(day_number("1970-01-01") == 0);
    CHECK(day_number("1970-01-02") == 1);
    CHECK(day_number("1969-12-31") == -1);
    CHECK(day_number("2000-03-01") == 11017);  // 946,684,800 s is 2000-01-01 = day 10957 (POSIX time); + 60
    CHECK(day_number("0000-01-01") == -719528);
    CHECK(day_number("9999-12-31") == 2932896);
    CHECK(day_text(-719528) == "0000-01-01");
    CHECK(day_text(2932896) == "9999-12-31");
}

TEST_CASE("leap days exist in leap years only") {
    for (const char* good : {"2000-02-29", "2024-02-29", "1996-02-29", "2400-02-29"}) CHECK(day_number(good));
    for (const char* bad : {"1900-02-29", "2100-02-29", "2023-02-29", "2024-02-30"}) CHECK_FALSE(day_number(bad));
}

TEST_CASE("only a day of the calendar as YYYY-MM-DD is a day") {
    for (const char* bad : {"",
                            "2024",
                            "2024-05",
                            "2024-5-2",
                            "24-05-02",
                            "2024-05-2",
                            "2024-05-002",
                            "02-05-2024",
                            "02.05.2024",
                            "2024/05/02",
                            "2024-05-02 ",
                            " 2024-05-02",
                            "2024-05-02T00:00",
                            "20240502",
                            "2024-00-10",
                            "2024-13-10",
                            "2024-05-00",
                            "2024-05-32",
                            "2024-04-31",
                            "2024-99-99",
                            "-024-05-02",
                            "+024-05-02",
                            "2024-0x-02",
                            "2024-05-0x",
                            "2024-05--2",
                            "٢٠٢٤-05",
                            "today",
                            "12024-05-02"}) {
        INFO(bad);
        CHECK(day_number(bad) == std::nullopt);
    }
}
