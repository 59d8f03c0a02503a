// When are small parts ordered again?
#include "shelf/small_parts.h"

#include <rapidcheck.h>

#include <catch2/catch.hpp>

#include "shelf_fixture.h"

using namespace tapbook;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

// A fuse used one at a time, every three days for a year.
SmallPart fuses() {
    SmallPart part;
    part.name = "fuse 30 A";
    for (int day = 1; day < 365; day += 3) part.used.push_back({.days_ago = day, .pieces = 1});
    part.recorded_days = 365;
    part.lead_days = 9;
    part.pack = 10;
    return part;
}

Reorder answer_for(const SmallPart& part) {
    return reorder(std::vector<SmallPart>{part}, {}, {}).front();
}

}  // namespace

TEST_CASE("three a delivery are ordered again at about five, a pack at a time") {
    // Poisson with mean 3: E[(X - 5)+] is 0.1307, E[(X - 6)+] 0.0507; 5 % of 3 is 0.15. The spread of the belief
    // changes nothing yet.
    SmallPart part = fuses();
    part.on_hand = 6;
    Reorder answer = answer_for(part);
    CHECK_THAT(answer.per_year, WithinRel(121.75, 0.02));
    CHECK(answer.reorder_at == 5);
    CHECK(answer.order == 0);
    part.on_hand = 5;
    CHECK(answer_for(part).order == 10);
    part.on_order = 10;
    CHECK(answer_for(part).order == 0);
    part.on_hand = part.on_order = 0;
    part.pack = 2;
    CHECK(answer_for(part).order == 6);
}

TEST_CASE("the same pieces, but ten at once, are ordered again earlier") {
    SmallPart part = fuses(), by_ten = fuses();
    std::erase_if(by_ten.used, [](const Used& use) { return use.days_ago % 10 != 1; });
    for (Used& use : by_ten.used) use.pieces = 10;
    CHECK(answer_for(by_ten).reorder_at > answer_for(part).reorder_at);
}

TEST_CASE("what was never used is not ordered, and it is said") {
    SmallPart part;
    part.name = "relay";
    const Reorder answer = answer_for(part);
    CHECK(answer.no_use);
    CHECK(answer.order == 0);
}

TEST_CASE("without delivery time nothing is waited for: order when the last is gone") {
    SmallPart part = fuses();
    part.lead_days = 0;
    part.on_hand = 1;
    CHECK(answer_for(part).reorder_at == 0);
    CHECK(answer_for(part).order == 0);
    part.on_hand = 0;
    CHECK(answer_for(part).order == 10);
}

TEST_CASE("after an order more lies there than the point, and never a pack too many") {
    CHECK(rc::check([] {
        SmallPart part = fuses();
        part.pack = *rc::gen::inRange(1, 20);
        part.on_hand = *rc::gen::inRange(0, 20);
        part.lead_days = *rc::gen::inRange(0, 60);
        for (Used& use : part.used) use.pieces = *rc::gen::inRange(0, 4);
        const Reorder answer = answer_for(part);
        RC_ASSERT(answer.order % part.pack == 0);
        if (answer.no_use) return;
        RC_ASSERT(part.on_hand + answer.order > answer.reorder_at);
        RC_ASSERT(answer.order == 0 || part.on_hand + answer.order - part.pack <= answer.reorder_at);
        RC_ASSERT(answer.fill_rate >= 0.95);
    }));
}

TEST_CASE("counts below zero are refused by name") {
    SmallPart part = fuses();
    part.on_hand = -3;
    CHECK_THROWS_WITH(answer_for(part), "fuse 30 A: -3 on the shelf; that cannot be less than nothing. Count it again");
    part = fuses();
    part.pack = 0;
    CHECK_THROWS_WITH(answer_for(part), "fuse 30 A: a pack of 0; a pack holds one at least");
}
