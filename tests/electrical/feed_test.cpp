// Will this cable do, and which fuses protect it? The cases of practice (common practice, no source: 900 W of class D
// over 5.5 m, 8 AWG too thin, 4 AWG right), 33 CFR 183.425 table 5 for the amps, laws, and a slow twin for the choice.
#include <catch2/catch.hpp>

#include <cmath>

#include "arbitrary.h"

using namespace tapbook;

namespace {

constexpr BodyReturn perfect{ohms(0), ohms(0), ohms(0)};
constexpr CableConditions known{Metal::copper, Insulation::rated_105, CablePlace::elsewhere};

// 900 W of class D, 0.80: 1125 W drawn.
Feed nine_hundred(const CableSize& size, FeedReturn back = BodyReturn{}) {
    return {running_supply, ohms(0), {size, metres(5.5)}, {{watts(1125), std::nullopt}}, back, known};
}

double drop_percent(const Feed& feed) {
    return worst_drop(judge_feed(feed))->in(percent);
}

Feed constant_amps(Feed feed) {
    feed.amplifiers[0].draw = amps(900 / 0.8 / 13.8);
    return feed;
}

FedAmplifier behind_block(Draw draw, const CableSize& size) {
    return {draw, std::nullopt, FeedCable{size, metres(1)}};
}

Feed arbitrary_feed() {
    Feed feed = nine_hundred(Awg{4});
    feed.main.length = arbitrary::between(millimetres, 500, 8000);
    feed.amplifiers[0].draw = arbitrary::between(milliwatts, 50000, 3000000);
    if (*rc::gen::arbitrary<bool>())
        feed.amplifiers.push_back(behind_block(arbitrary::between(milliwatts, 50000, 900000), Awg{8}));
    if (*rc::gen::arbitrary<bool>()) feed.back = EqualCableReturn{};
    feed.conditions = {arbitrary::any_of<Metal>(), arbitrary::perhaps(arbitrary::any_of<Insulation>()),
                       arbitrary::any_of<CablePlace>()};
    return feed;
}

bool is_good_with(Feed feed, const CableSize& size) {
    feed.main.size = size;
    const FeedAnswer answer = judge_feed(feed);
    return answer.fused && worst_drop(answer) && *worst_drop(answer) <= percent(3);
}

}  // namespace

TEST_CASE("900 W over 5.5 m of 8 AWG lose 6.7 % in the cable alone: too thin, whatever the return") {
    CHECK(drop_percent(constant_amps(nine_hundred(Awg{8}, perfect))) == Approx(6.7).margin(0.05));
    CHECK(drop_percent(nine_hundred(Awg{8}, perfect)) == Approx(7.2).margin(0.05));  // it draws more as the volts fall
    CHECK(judge_feed(nine_hundred(Awg{8}, perfect)).grade == FeedGrade::too_thin);
    CHECK(judge_feed(nine_hundred(Awg{8})).grade == FeedGrade::too_thin);
}

TEST_CASE("900 W over 5.5 m of 4 AWG lose 2.7 % in the cable alone: good, and care with 1 mohm of body") {
    CHECK(drop_percent(nine_hundred(Awg{4}, perfect)) == Approx(2.7).margin(0.05));
    CHECK(judge_feed(nine_hundred(Awg{4}, perfect)).grade == FeedGrade::good);
    const FeedAnswer answer = judge_feed(nine_hundred(Awg{4}));
    CHECK(answer.grade == FeedGrade::care);
    CHECK(answer.amplifiers[0].at.low->drop.in(percent) == Approx(2.7).margin(0.05));
    CHECK(answer.amplifiers[0].at.high->drop > answer.amplifiers[0].at.likely->drop);
}

// 800 W at 0.80 over 5 m, worked out outside: 5.41 % on 8 AWG, 2.14 % on 4 AWG; 4.28 % with a return of the same cable.
TEST_CASE("800 W over 5 m lose 5.41 % on 8 AWG, 2.14 % on 4 AWG, and twice that with an equal cable back") {
    const auto percent_of = [](Awg size, FeedReturn back) {
        return drop_percent({running_supply, ohms(0), {size, metres(5)}, {{amps(72.4638), std::nullopt}}, back, known});
    };
    CHECK(percent_of(Awg{8}, perfect) == Approx(5.41).margin(0.005));
    CHECK(percent_of(Awg{4}, perfect) == Approx(2.14).margin(0.005));
    CHECK(percent_of(Awg{4}, EqualCableReturn{}) == Approx(4.28).margin(0.005));
    CHECK(percent_of(Awg{0}, EqualCableReturn{}) == Approx(1.69).margin(0.005));
}

TEST_CASE("3 % lost is good, 5 % needs care, above is too thin") {
    CHECK(grade_of(percent(3)) == FeedGrade::good);
    CHECK(grade_of(percent(3.01)) == FeedGrade::care);
    CHECK(grade_of(percent(5)) == FeedGrade::care);
    CHECK(grade_of(percent(5.01)) == FeedGrade::too_thin);
}

// 33 CFR 183.425 table 5, 105 C: 4 AWG 160 A, 8 AWG 80 A. 1125 W draw 84.4 A on 4 AWG: 100 A fuse.
TEST_CASE("the main fuse is at or above the current that is really drawn, at or below the table's amps") {
    const FeedAnswer four = judge_feed(nine_hundred(Awg{4}));
    CHECK(four.main_fuse.fuse->rating == amps(100));
    CHECK(four.main_fuse.fuse->cable.allowed == amps(160));
    CHECK(four.total > amps(1125 / 13.8));
    CHECK(four.fused);
    const FeedAnswer eight = judge_feed(nine_hundred(Awg{8}));
    CHECK(eight.main_fuse.fuse->verdict == FuseVerdict::cable_too_thin);
    CHECK_FALSE(eight.fused);
}

TEST_CASE("a branch has its own fuse where the cable gets thinner, and none where it does not") {
    Feed feed = nine_hundred(Awg{0});
    feed.amplifiers = {behind_block(watts(600), Awg{8}), behind_block(watts(500), Awg{0})};
    const FeedAnswer answer = judge_feed(feed);
    REQUIRE(answer.amplifiers[0].branch.has_value());
    CHECK(answer.amplifiers[0].branch->fuse->rating == amps(50));  // about 45 A
    CHECK_FALSE(answer.amplifiers[1].branch.has_value());
    CHECK(answer.fused);
    feed.amplifiers[0].branch->size = Awg{16};  // 25 A at 105 C
    CHECK_FALSE(judge_feed(feed).fused);
}

TEST_CASE("a branch thinner than the table begins has no fuse, and that is not fused") {
    Feed feed = nine_hundred(Awg{4});
    feed.amplifiers = {behind_block(watts(10), Awg{22})};
    const FeedAnswer answer = judge_feed(feed);
    CHECK_FALSE(answer.amplifiers[0].branch->fuse.has_value());
    CHECK_FALSE(answer.fused);
}

TEST_CASE("an amplifier that finds no volts says so, is too thin, and still has a current to fuse for") {
    const Feed feed{running_supply, ohms(0), {Awg{16}, metres(10)}, {{watts(2000), std::nullopt}}, perfect, known};
    const FeedAnswer answer = judge_feed(feed);
    CHECK_FALSE(answer.amplifiers[0].at.likely.has_value());
    CHECK(answer.grade == FeedGrade::too_thin);
    CHECK_FALSE(worst_drop(answer).has_value());
    CHECK(answer.total.in(amps) == Approx(2000 / 13.8));
    CHECK(answer.most_resistance->in(milliohms) == Approx(1000 * 13.8 * 13.8 / 8000));
}

TEST_CASE("the limit of ohms belongs to one regulated amplifier only") {
    CHECK_FALSE(judge_feed(constant_amps(nine_hundred(Awg{4}))).most_resistance.has_value());
    Feed feed = nine_hundred(Awg{4});
    feed.amplifiers.push_back(behind_block(watts(100), Awg{8}));
    CHECK_FALSE(judge_feed(feed).most_resistance.has_value());
}

TEST_CASE("a main fuse may blow when one amplifier's least efficiency is poor and the others are as planned") {
    Feed feed = nine_hundred(Awg{4});
    feed.amplifiers[0].most_current = amps(900 / 0.7 / 13.8);  // 93.2 A, fuse 100 A
    CHECK_FALSE(judge_feed(feed).main_fuse.may_blow);
    feed.amplifiers[0].most_current = amps(101);
    CHECK(judge_feed(feed).main_fuse.may_blow);
    feed.amplifiers[0].most_current = amps(90);
    feed.amplifiers.push_back(behind_block(watts(1), Awg{8}));
    CHECK_FALSE(judge_feed(feed).main_fuse.may_blow);
}

TEST_CASE("the source's ohms lower the volts, not the share that is lost in the cable") {
    Feed feed = constant_amps(nine_hundred(Awg{4}));
    const FeedAnswer strong = judge_feed(feed);
    feed.source = milliohms(10);
    const FeedAnswer weak = judge_feed(feed);
    CHECK(weak.amplifiers[0].at.likely->volts < strong.amplifiers[0].at.likely->volts);
    CHECK(worst_drop(weak)->in(percent) == Approx(worst_drop(strong)->in(percent)));
}

TEST_CASE("the thinnest good cable for 900 W over 5.5 m is 2 AWG, and 1/0 buys 0.6 points more") {
    const auto sizes = sold_sizes(SizeSystem::awg);
    const auto chosen = thinnest_good(nine_hundred(Awg{16}), sizes);
    REQUIRE(chosen.has_value());
    CHECK(std::get<Awg>(*chosen).number == 2);
    const auto next = next_size(nine_hundred(*chosen), sizes);
    REQUIRE(next.has_value());
    CHECK(std::get<Awg>(next->size).number == 0);
    // 1 ohm mm^2/m over 58: 2.819 mohm and 1.773 mohm for 5.5 m, at about 83 A of 13.8 V 0.63 points.
    CHECK(next->saved->in(percent) == Approx(100 * (0.002819 - 0.001773) * 83 / 13.8).margin(0.02));
    CHECK_FALSE(next_size(nine_hundred(Awg{-3}), sizes).has_value());
}

TEST_CASE("the thinnest good cable is the one found by trying every size, in any order and system") {
    const bool holds = rc::check("slow twin of thinnest_good", [] {
        const Feed feed = arbitrary_feed();
        std::vector<CableSize> sizes;
        for (const auto& [system, word] : words_of<SizeSystem>())
            for (const CableSize& size : sold_sizes(system))
                if (*rc::gen::arbitrary<bool>())
                    sizes.insert(sizes.begin() + *rc::gen::inRange<int>(0, static_cast<int>(sizes.size()) + 1), size);
        std::optional<SquareMillimetres> thinnest;
        for (const CableSize& size : sizes)
            if (is_good_with(feed, size) && (!thinnest || cross_section(size) < *thinnest))
                thinnest = cross_section(size);
        const auto found = thinnest_good(feed, sizes);
        RC_ASSERT(found.has_value() == thinnest.has_value());
        if (found) RC_ASSERT(cross_section(*found) == *thinnest);
    });
    CHECK(holds);
}

TEST_CASE("a thicker cable of the same system never loses more, and copper-clad aluminium never less") {
    const bool holds = rc::check("drop falls with copper", [] {
        Feed feed = arbitrary_feed();
        feed.conditions.metal = Metal::copper;
        const auto sizes = sold_sizes(arbitrary::any_of<SizeSystem>());
        const auto index = *rc::gen::inRange<std::size_t>(0, sizes.size());
        feed.main.size = sizes[index];
        const auto drop = worst_drop(judge_feed(feed));
        if (const auto next = next_size(feed, sizes); next && drop) {
            RC_ASSERT(next->drop.has_value());
            RC_ASSERT(*next->saved > ratio(0));
        }
        feed.conditions.metal = Metal::copper_clad;
        const auto clad = worst_drop(judge_feed(feed));
        if (clad) RC_ASSERT(drop.has_value() && *clad > *drop);
    });
    CHECK(holds);
}

TEST_CASE("a cable of 60 C loses 15.7 % more at the same current than one of 20 C") {
    // 1 + 0.00393 x 40, the temperature coefficient of copper (IEC 60028)
    Feed feed = constant_amps(nine_hundred(Awg{4}, perfect));
    const double cold = drop_percent(feed);
    feed.temperature = celsius(60);
    CHECK(drop_percent(feed) / cold == Approx(1.1572).margin(0.0001));
}
