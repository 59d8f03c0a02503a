// Does the charging system carry it? Common practice, no source, worked out by hand: an alternator of 120 A leaves
// 120/3 - 60 = -20, 0.4 x 120 - 45 = 3 or 120/2 - 30 = 30 A at idle.
#include <catch2/catch.hpp>

#include "arbitrary.h"

using namespace tapbook;

TEST_CASE("an alternator of 120 A leaves -20, 3 or 30 A at idle") {
    const AmpsRange left = charging_reserve(ChargingSource::alternator, amps(120));
    CHECK(left.low.in(amps) == Approx(-20));
    CHECK(left.likely.in(amps) == Approx(3));
    CHECK(left.high.in(amps) == Approx(30));
}

TEST_CASE("a converter of 150 A leaves its whole rating less what the vehicle takes") {
    const AmpsRange left = charging_reserve(ChargingSource::dc_converter, amps(150));
    CHECK(left.low.in(amps) == Approx(90));
    CHECK(left.likely.in(amps) == Approx(105));
    CHECK(left.high.in(amps) == Approx(120));
}

// -9 dB is 1/8 of power; class AB draws with the root of power, class D with power.
TEST_CASE("80 A of class D average 26.7 A with bass and 10 A with full-range music, class AB 46.2 and 28.3 A") {
    const auto average = [](AmplifierClass amplifier_class, AmplifierUse use) {
        return average_current(amps(80), amplifier_class, music_share(use), amps(0)).in(amps);
    };
    CHECK(average(AmplifierClass::d, AmplifierUse::sub) == Approx(26.667).margin(0.001));
    CHECK(average(AmplifierClass::d, AmplifierUse::full_range) == Approx(10));
    CHECK(average(AmplifierClass::ab, AmplifierUse::sub) == Approx(46.188).margin(0.001));
    CHECK(average(AmplifierClass::ab, AmplifierUse::full_range) == Approx(28.284).margin(0.001));
}

TEST_CASE("idle current adds, and an average lies between idle and full plus idle") {
    const bool holds = rc::check("bounds of the average", [] {
        const Amps full = arbitrary::between(milliamps, 1, 300000), idle = arbitrary::between(milliamps, 0, 5000);
        const auto amplifier_class = arbitrary::any_of<AmplifierClass>();
        const Ratio share = arbitrary::between(thousandths, 0, 1000);
        const Amps average = average_current(full, amplifier_class, share, idle);
        RC_ASSERT(average >= idle);
        RC_ASSERT(average <= full + idle);
        RC_ASSERT(average_current(full, AmplifierClass::ab, share, idle) >=
                  average_current(full, AmplifierClass::d, share, idle));
    });
    CHECK(holds);
}

TEST_CASE("enough is within the low end, too small above the high end, uncertain between") {
    const AmpsRange left{amps(-20), amps(3), amps(30)};
    CHECK(judge_reserve(amps(26.7), left) == ReserveVerdict::uncertain);
    CHECK(judge_reserve(amps(30.1), left) == ReserveVerdict::too_small);
    CHECK(judge_reserve(amps(26.7), {amps(27), amps(30), amps(40)}) == ReserveVerdict::enough);
    for (const auto& [kind, word] : words_of<ChargingSource>()) {
        const AmpsRange any = charging_reserve(kind, amps(100));
        CHECK(any.low < any.likely);
        CHECK(any.likely < any.high);
    }
}
