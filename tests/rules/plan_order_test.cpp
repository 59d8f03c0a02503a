// Is the order of work the plan's own? Against random steps whose needs are drawn without a circle, and by hand.
#include "rules/plan_order.h"

#include <fmt/format.h>
#include <rapidcheck.h>

#include <algorithm>
#include <catch2/catch.hpp>

using namespace tapbook;

namespace {

constexpr PowerPhase phases[] = {PowerPhase::live_check, PowerPhase::power_off, PowerPhase::dead_work,
                                 PowerPhase::power_on, PowerPhase::final_check};

PlanStep step(std::string id, PowerPhase phase, std::vector<std::string> needs = {},
              Airbags airbags = Airbags::untouched) {
    return {phase, id, {}, {}, id, std::move(needs), airbags};
}

std::string order_of(const std::vector<PlanStep>& steps) {
    std::string text;
    for (const auto& one : steps) text += (text.empty() ? "" : " ") + one.id;
    return text;
}

// Steps numbered 0, 1, 2 ...; each needs only lower numbers of its own or an earlier phase. Shuffled.
std::vector<PlanStep> random_steps() {
    const int count = *rc::gen::inRange(1, 14);
    std::vector<PlanStep> steps;
    for (int i = 0; i < count; ++i) {
        const auto phase = phases[*rc::gen::inRange(0, 5)];
        std::vector<std::string> needs;
        for (const auto& earlier : steps)
            if (earlier.phase <= phase && *rc::gen::inRange(0, 4) == 0) needs.push_back(earlier.id);
        steps.push_back(step(std::to_string(i), phase, needs));
    }
    std::vector<PlanStep> shuffled;
    while (!steps.empty()) {
        const auto at = *rc::gen::inRange<std::size_t>(0, steps.size());
        shuffled.push_back(steps[at]);
        steps.erase(steps.begin() + static_cast<std::ptrdiff_t>(at));
    }
    return shuffled;
}

}  // namespace

TEST_CASE("whatever order steps are listed in, they come out by phase, none before one it needs, and none is lost") {
    rc::check([] {
        const auto listed = random_steps();
        const auto ordered = in_order_of_work(listed);
        RC_ASSERT(check_order(ordered).out_of_order == 0);
        RC_ASSERT(ordered.size() == listed.size());
        for (const auto& one : listed)
            RC_ASSERT(std::count_if(ordered.begin(), ordered.end(),
                                    [&](const PlanStep& other) { return other.id == one.id; }) == 1);
    });
}

TEST_CASE("steps that need nothing of each other keep the order they were listed in") {
    const auto ordered = in_order_of_work({step("c", PowerPhase::dead_work), step("a", PowerPhase::live_check),
                                           step("b", PowerPhase::dead_work), step("z", PowerPhase::dead_work, {"b"})});
    CHECK(order_of(ordered) == "a c b z");
}

TEST_CASE("a need that no step has holds nothing up, and a circle of needs is counted and not endless") {
    CHECK(order_of(in_order_of_work({step("a", PowerPhase::dead_work, {"nowhere"})})) == "a");
    const auto circle =
        in_order_of_work({step("a", PowerPhase::dead_work, {"b"}), step("b", PowerPhase::dead_work, {"a"})});
    CHECK(circle.size() == 2);
    CHECK(check_order(circle).out_of_order == 1);
}

TEST_CASE("a step that needs a later phase is out of order, and so is an earlier phase behind a later one") {
    const auto ordered =
        in_order_of_work({step("read", PowerPhase::live_check, {"join"}), step("join", PowerPhase::dead_work)});
    CHECK(check_order(ordered).out_of_order == 1);
    CHECK(check_order({step("on", PowerPhase::power_on), step("join", PowerPhase::dead_work)}).out_of_order == 1);
}

TEST_CASE("a live step between an opened and a mated air-bag connector is counted, a dead one is not") {
    const auto open = step("open", PowerPhase::power_off, {}, Airbags::may_open);
    const auto mated = step("mated", PowerPhase::power_on, {}, Airbags::mated);
    const auto live = step("live", PowerPhase::live_check), dead = step("dead", PowerPhase::dead_work);
    CHECK(check_order({open, dead, mated, live}).live_with_airbag_open == 0);
    CHECK(check_order({open, live, dead, mated}).live_with_airbag_open == 1);
    CHECK(check_order({open, dead, live, live, mated, live}).live_with_airbag_open == 2);
}
