// How long may the car stand? Two rows of a service bulletin on batteries (0.6 Ah for each minute of reserve, a
// no-start once four tenths are drawn), 0.6 Ah a day for every 25 mA, and a twin that counts the days one by one.
#include "electrical/battery_drain.h"

#include <catch2/catch.hpp>

#include "arbitrary.h"

using namespace tapbook;

namespace {

constexpr double seconds_per_day = 86400;

double days(Seconds time) {
    return time.in(seconds) / seconds_per_day;
}

// Whole days until four tenths of the battery are gone, a day's charge taken at a time.
int days_counted(double capacity_mah, double drain_ma) {
    double left = 0.4 * capacity_mah;
    int count = 0;
    for (; left >= 24 * drain_ma; ++count) left -= 24 * drain_ma;
    return count;
}

}  // namespace

TEST_CASE("100 minutes of reserve stand 50 mA for 20 days, 90 minutes for 18") {
    const auto hundred = standing_time(std::nullopt, 100, amps(0), true);
    CHECK(hundred->capacity.in(amp_hours) == Approx(60));
    CHECK(hundred->from_reserve);
    CHECK(days(hundred->before) == Approx(20.0));
    CHECK((hundred->capacity * usable_charge).in(amp_hours) == Approx(24.0));
    CHECK(days(standing_time(std::nullopt, 90, amps(0), true)->before) == Approx(18.0));
    CHECK(capacity_from_reserve(90).in(amp_hours) == Approx(54));
}

// The same bulletin: 500 mA draw 12 Ah a day, so 30 usable Ah are gone in two and a half days. 75 Ah hold 30 usable.
TEST_CASE("500 mA in all flatten a 75 Ah battery in two and a half days") {
    const auto time = standing_time(amp_hours(75), std::nullopt, milliamps(450), true);
    CHECK(days(time->after) == Approx(2.5));
    CHECK(days(time->before) == Approx(25));
    CHECK(time->base.in(milliamps) == 50);
    CHECK_FALSE(time->from_reserve);
}

TEST_CASE("the printed capacity outranks the reserve, and without either there is no answer") {
    const auto both = standing_time(amp_hours(70), 100, amps(0), true);
    CHECK(both->capacity == amp_hours(70));
    CHECK_FALSE(both->from_reserve);
    CHECK_FALSE(standing_time(std::nullopt, std::nullopt, milliamps(3), true).has_value());
}

TEST_CASE("what is not stated adds nothing to the drain, and the answer remembers that") {
    const auto unstated = standing_time(amp_hours(70), std::nullopt, amps(0), false);
    CHECK_FALSE(unstated->added_known);
    CHECK(unstated->after == unstated->before);
    CHECK(standing_time(amp_hours(70), std::nullopt, milliamps(1), true)->added_known);
}

TEST_CASE("standing time is in proportion to the battery, and as much again as the car's own drain halves it") {
    const bool holds = rc::check("charge over current", [] {
        const AmpHours capacity = arbitrary::between(milliamp_hours, 1000, 400000);
        const Amps added = arbitrary::between(milliamps, 0, 2000);
        const auto once = standing_time(capacity, std::nullopt, added, true);
        const auto twice = standing_time(capacity * 2.0, std::nullopt, added, true);
        RC_ASSERT(std::abs((twice->after / once->after).in(ratio)-2) < 1e-9);
        RC_ASSERT(once->after <= once->before);
        RC_ASSERT((once->after == once->before) == (added == amps(0)));
        const auto doubled = standing_time(capacity, std::nullopt, base_drain, true);
        RC_ASSERT(std::abs(doubled->after.in(seconds)*2 - doubled->before.in(seconds)) < 1e-6);
    });
    CHECK(holds);
}

TEST_CASE("counting the days one by one gives the whole days of the formula") {
    const bool holds = rc::check("the formula against the count", [] {
        const int capacity = *rc::gen::inRange(20000, 200000);
        const int added = *rc::gen::inRange(0, 300);
        const auto time = standing_time(milliamp_hours(capacity), std::nullopt, milliamps(added), true);
        const int counted = days_counted(capacity, 50 + added);
        RC_ASSERT(counted <= days(time->after) + 1e-9);
        RC_ASSERT(days(time->after) < counted + 1 + 1e-9);
    });
    CHECK(holds);
}
