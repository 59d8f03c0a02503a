// Which fuse protects a cable? Laws over all sizes and conditions, by hand for the cases of practice, and a slow twin
// that tries every listed rating.
#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>

#include "arbitrary.h"

using namespace tapbook;

namespace {

CableConditions arbitrary_conditions() {
    return {arbitrary::any_of<Metal>(), arbitrary::perhaps(arbitrary::any_of<Insulation>()),
            arbitrary::any_of<CablePlace>()};
}

CableFuse fuse(const char* size, double current, const CableConditions& conditions = {}) {
    return fuse_for(*ampacity(*parse_awg(size), conditions), amps(current), conditions);
}

std::optional<Amps> by_trying_every_rating(Amps current, Amps allowed) {
    std::optional<Amps> best;
    for (const Amps rating : listed_fuse_ratings())
        if (rating >= current && rating <= allowed && (!best || rating < *best)) best = rating;
    return best;
}

}  // namespace

// 72.46 A: an 800 W class D amplifier at 0.80 and 13.8 V.
TEST_CASE("the fuse is the smallest listed rating between load and ampacity") {
    CHECK(fuse("4", 72.46).rating == amps(80));
    CHECK(fuse("8", 55).verdict == FuseVerdict::no_rating_between);  // 55 A in, 55 A allowed, no 55 A fuse
    CHECK(fuse("8", 50).rating == amps(50));
    CHECK(fuse("8", 72.46).verdict == FuseVerdict::cable_too_thin);
    CHECK(fuse("4/0", 320, {Metal::copper, Insulation::rated_200, {}}).verdict == FuseVerdict::beyond_all_ratings);
}

TEST_CASE("a cable too thin names the size that would do") {
    CHECK(fuse("8", 72.46).thicker_size->number == 6);  // 80 A fuse, 80 A allowed at 60 C
    CHECK(fuse("8", 55).thicker_size->number == 6);     // 60 A fuse
    CHECK_FALSE(fuse("4/0", 320).thicker_size.has_value());
    CHECK_FALSE(fuse("4", 60).thicker_size.has_value());
}

TEST_CASE("a fuse may blow when the load can draw more than its rating, not when there is none") {
    CHECK(may_blow(fuse("4", 72.46), amps(82.8)));  // 80 A
    CHECK_FALSE(may_blow(fuse("4", 72.46), amps(80)));
    CHECK_FALSE(may_blow(fuse("4", 72.46), std::nullopt));
    CHECK_FALSE(may_blow(fuse("8", 72.46), amps(82.8)));
}

TEST_CASE("copper-clad aluminium carries 0.794 of copper, near the root of its conductivity") {
    const CableConditions clad{Metal::copper_clad, Insulation::rated_105, {}};
    CHECK(ampacity(Awg{4}, clad)->allowed.in(amps) == Approx(160 * 0.794));
    CHECK(copper_clad_ampacity.in(ratio) == Approx(std::sqrt(0.63)).margin(1e-3));  // amps go with sqrt(1/R)
}

TEST_CASE("the listed ratings rise and hold every blade rating up to 100 A") {
    const auto ratings = listed_fuse_ratings();
    CHECK(ratings.size() == 25);
    CHECK(ratings.front() == amps(1));
    CHECK(ratings.back() == amps(300));
    CHECK(std::ranges::is_sorted(ratings));
}

TEST_CASE("a fuse is never above the ampacity, never below the load, and no listed one is missed") {
    const bool holds = rc::check("slow twin of fuse_for", [] {
        const CableConditions conditions = arbitrary_conditions();
        const Awg size{*rc::gen::inRange(-3, 19)};
        const Amps current = arbitrary::between(milliamps, 1, 600000);
        const Ampacity cable = *ampacity(size, conditions);
        const CableFuse found = fuse_for(cable, current, conditions);
        RC_ASSERT(found.rating == by_trying_every_rating(current, cable.allowed));
        RC_ASSERT((found.verdict == FuseVerdict::fits) == found.rating.has_value());
        if (found.rating) RC_ASSERT(*found.rating <= cable.allowed && *found.rating >= current);
        if (found.thicker_size) {
            const Ampacity thicker = *ampacity(*found.thicker_size, conditions);
            RC_ASSERT(fuse_for(thicker, current, conditions).verdict == FuseVerdict::fits);
            const Awg thinner{found.thicker_size->number + 1};
            if (const auto next = ampacity(thinner, conditions); next && next->row.number != found.thicker_size->number)
                RC_ASSERT(fuse_for(*next, current, conditions).verdict != FuseVerdict::fits);
        }
    });
    CHECK(holds);
}

TEST_CASE("more copper, better insulation and cooler places never carry less") {
    const bool holds = rc::check("ampacity is monotone", [] {
        const CableConditions conditions = arbitrary_conditions();
        const auto thin = arbitrary::between(thousandths_of_square_millimetre, 830, 120000);
        const auto thick = thin + arbitrary::between(thousandths_of_square_millimetre, 0, 50000);
        const Amps allowed = ampacity(thin, conditions)->allowed;
        RC_ASSERT(ampacity(thick, conditions)->allowed >= allowed);
        RC_ASSERT(area(ampacity(thin, conditions)->row) <= thin);
        CableConditions kinder = conditions;
        kinder.place = CablePlace::elsewhere;
        kinder.metal = Metal::copper;
        RC_ASSERT(ampacity(thin, kinder)->allowed >= allowed);
        kinder = conditions;
        kinder.insulation = Insulation::rated_200;
        RC_ASSERT(ampacity(thin, kinder)->allowed >= allowed);
    });
    CHECK(holds);
}

// By hand: 800 W / (0.80 x 13.8 V) = 72.46 A, 0.85: 68.20 A, 0.75: 77.29 A.
TEST_CASE("an amplifier draws its watts over efficiency and volts") {
    CHECK(supply_current(watts(800), ratio(0.80), dc_volts(13.8)).in(amps) == Approx(72.46).margin(0.005));
    CHECK(supply_current(watts(800), ratio(0.85), dc_volts(13.8)).in(amps) == Approx(68.20).margin(0.005));
    CHECK(supply_current(watts(800), ratio(0.75), dc_volts(13.8)).in(amps) == Approx(77.29).margin(0.005));
    for (const auto& [amplifier_class, word] : words_of<AmplifierClass>()) {
        const EfficiencyRange range = efficiency_of(amplifier_class);
        CHECK(range.low < range.likely);
        CHECK(range.likely < range.high);
        CHECK(range.high < ratio(1));
    }
    CHECK(efficiency_of(AmplifierClass::d).low > efficiency_of(AmplifierClass::ab).likely);
}
