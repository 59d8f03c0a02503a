// Does a source carry what it wakes? 150 to 300 mA is what aerial and amplifier outputs of car radios give (published
// descriptions of the ISO 10487 connector, contact A5); a relay's coil takes 160 to 200 mA (common practice).
#include "electrical/turn_on.h"

#include <catch2/catch.hpp>
#include <numeric>
#include <vector>

#include "arbitrary.h"

using namespace tapbook;

namespace {

using Loads = std::vector<std::optional<Amps>>;

Loads some_loads() {
    Loads loads;
    for (int left = *rc::gen::inRange(0, 9); left > 0; --left)
        loads.emplace_back(arbitrary::between(milliamps, 1, 400));
    return loads;
}

}  // namespace

TEST_CASE("two amplifiers of 70 mA hang on the least that a radio's output gives, three do not") {
    const Loads two(2, milliamps(70)), three(3, milliamps(70));
    CHECK(turn_on_current(two, milliamps(150)).carried == true);
    CHECK(turn_on_current(three, milliamps(150)).carried == false);
    CHECK(turn_on_current(three, milliamps(300)).carried == true);
}

TEST_CASE("a source that states no limit counts as 150 mA, and the answer says that it was assumed") {
    const Loads load = {milliamps(151)};
    const TurnOnCurrent current = turn_on_current(load, std::nullopt);
    CHECK(current.limit_assumed);
    CHECK(current.limit.in(milliamps) == 150);  // the least of 150 to 300 mA
    CHECK(current.carried == false);
    CHECK_FALSE(turn_on_current(load, milliamps(150)).limit_assumed);
}

TEST_CASE("the coil of a relay is counted with 200 mA, the most it takes") {
    CHECK(turn_on_current({}, milliamps(200)).relay_carried);
    CHECK_FALSE(turn_on_current({}, milliamps(199)).relay_carried);
    CHECK_FALSE(turn_on_current({}, std::nullopt).relay_carried);
    CHECK(relay_coil_low < relay_coil_high);
}

TEST_CASE("nothing to wake needs no current, and one load that is not known leaves the sum unknown") {
    CHECK(turn_on_current({}, std::nullopt).loads == amps(0));
    CHECK(turn_on_current({}, std::nullopt).carried == true);
    const Loads loads = {milliamps(10), std::nullopt};
    CHECK_FALSE(turn_on_current(loads, milliamps(500)).loads.has_value());
    CHECK_FALSE(turn_on_current(loads, milliamps(500)).carried.has_value());
}

TEST_CASE("a sum equal to the limit is within it, one milliamp more is not, whatever the sum is made of") {
    const bool holds = rc::check("whole milliamps are compared exactly", [] {
        const Loads loads = some_loads();
        int sum = 0;
        for (const auto& load : loads) sum += static_cast<int>(std::lround(load->in(milliamps)));
        RC_PRE(sum > 1);
        RC_ASSERT(turn_on_current(loads, milliamps(sum)).carried == true);
        RC_ASSERT(turn_on_current(loads, milliamps(sum - 1)).carried == false);
    });
    CHECK(holds);
}

TEST_CASE("the order of the loads says nothing, one more load never helps, and a stronger source never hurts") {
    const bool holds = rc::check("turn-on currents are a plain sum against a limit", [] {
        Loads loads = some_loads();
        const Amps gives = arbitrary::between(milliamps, 1, 1000);
        const TurnOnCurrent before = turn_on_current(loads, gives);
        const Loads turned(loads.rbegin(), loads.rend());
        RC_ASSERT(turn_on_current(turned, gives).carried == before.carried);
        const TurnOnCurrent stronger = turn_on_current(loads, gives + arbitrary::between(milliamps, 0, 500));
        RC_ASSERT(!*before.carried || *stronger.carried);
        RC_ASSERT(!before.relay_carried || stronger.relay_carried);
        loads.emplace_back(arbitrary::between(milliamps, 1, 400));
        const TurnOnCurrent more = turn_on_current(loads, gives);
        RC_ASSERT(*more.loads > *before.loads);
        RC_ASSERT(*before.carried || !*more.carried);
    });
    CHECK(holds);
}
