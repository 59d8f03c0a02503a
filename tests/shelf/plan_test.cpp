// Does one plan say what to keep, what to order, and what is lost without a model? And is what cannot be planned
// refused?
#include <rapidcheck.h>

#include <catch2/catch.hpp>

#include "every_choice.h"

using namespace tapbook;
using namespace tapbook::fixture;
using Catch::Matchers::WithinAbs;

namespace {

std::string refusal(const ShelfInput& input, const PlanAsk& ask) {
    try {
        plan_shelf(input, ask);
    } catch (const ShelfRefused& refused) {
        return refused.what();
    }
    return "not refused";
}

// Two systems, three models: "ab" does both with care for the second, "aa" the first, "ac" the second.
ShelfInput three_models() {
    ShelfInput input = input_of({{1}, {1}, {2}}, {30, 10});
    input.systems[1].choices.push_back({.converter = 1, .suits = Suits::care});
    return input;
}

}  // namespace

TEST_CASE("a job done with care counts less, and both shares are told") {
    PlanAsk ask = at_most(1);
    ask.care_penalty = 0.2;
    const ShelfPlan plan = plan_shelf(three_models(), ask);
    CHECK(names_of(plan) == std::vector<std::string>{"ab"});
    CHECK_THAT(plan.covered_share, WithinAbs((30 + 0.8 * 10) / 40, 1e-9));
    CHECK_THAT(plan.care_share, WithinAbs(0.25, 1e-9));
    CHECK_THAT(plan.models[0].covers_share, WithinAbs(0.95, 1e-9));
}

TEST_CASE("dropping a model loses the systems that no other kept one does, and the care of those that one does worse") {
    PlanAsk ask = at_most(2);
    ask.care_penalty = 0.2;
    const ShelfPlan plan = plan_shelf(three_models(), ask);
    CHECK(names_of(plan) == std::vector<std::string>{"ab", "ac"});
    REQUIRE(plan.lost.size() == 2);
    CHECK(plan.lost[0].name == "ab");
    CHECK_THAT(plan.lost[0].share, WithinAbs(0.75, 1e-9));
    REQUIRE(plan.lost[0].systems.size() == 1);
    CHECK(plan.lost[0].systems[0].system == 0);
    CHECK(plan.lost[1].systems.empty());
    CHECK_THAT(plan.lost[1].share, WithinAbs(0.2 * 0.25, 1e-9));
}

TEST_CASE("the curve never falls, ends where all that can be is covered, and holds the plan itself") {
    std::mt19937 random(21);
    for (int trial = 0; trial < 300; ++trial) {
        const ShelfInput input = random_input(random, 8, 10);
        const ShelfPlan plan = plan_shelf(input, at_most(3));
        for (std::size_t i = 1; i < plan.curve.size(); ++i)
            REQUIRE(plan.curve[i].covered_share > plan.curve[i - 1].covered_share);
        REQUIRE(plan.curve.front().covered_share == 0);
        const std::size_t place = std::min<std::size_t>(3, plan.curve.size() - 1);
        REQUIRE_THAT(plan.curve[place].covered_share, WithinAbs(plan.covered_share, 1e-12));
    }
}

TEST_CASE("the same input and ask give the same plan, whatever the order of the converters") {
    std::mt19937 random(22);
    for (int trial = 0; trial < 200; ++trial) {
        const ShelfInput input = random_input(random, 8, 10);
        ShelfInput turned = input;
        const auto last = static_cast<std::uint32_t>(input.converters.size() - 1);
        std::reverse(turned.converters.begin(), turned.converters.end());
        for (ShelfSystem& system : turned.systems)
            for (Choice& choice : system.choices) choice.converter = last - choice.converter;
        const ShelfPlan one = plan_shelf(input, at_most(2)), other = plan_shelf(turned, at_most(2));
        REQUIRE(names_of(one) == names_of(other));
        REQUIRE(one.covered_share == other.covered_share);
        REQUIRE(one.order_cents == other.order_cents);
    }
}

TEST_CASE("equal models are chosen by price, then by name") {
    ShelfInput input = input_of({{1}, {1}, {1}}, {5});
    CHECK(names_of(plan_shelf(input, at_most(1))) == std::vector<std::string>{"aa"});
    input.converters[2].cost_cents = 900;
    CHECK(names_of(plan_shelf(input, at_most(1))) == std::vector<std::string>{"ac"});
}

TEST_CASE("what is ordered fills the level in whole packs, and a budget is kept") {
    ShelfInput input = input_of({{1}, {2}}, {100, 100});
    for (StockModel& one : input.converters) {
        one.pack = 2;
        one.on_hand = 1;
    }
    PlanAsk ask = at_most(2);
    const ShelfPlan plan = plan_shelf(input, ask);
    for (const KeptModel& model : plan.models) {
        CHECK(model.order % 2 == 0);
        CHECK(model.on_hand + model.order >= model.keep);
        CHECK(model.on_hand + model.order < model.keep + 2);
        CHECK(model.order == model.order_wanted);
        CHECK(model.fill_rate >= 0.95);
    }
    ask.levels.order_budget_cents = plan.order_cents - 1;
    const ShelfPlan poorer = plan_shelf(input, ask);
    CHECK(poorer.order_cents <= plan.order_cents - 1);
    CHECK(poorer.order_cents >= plan.order_cents - 2000);
    CHECK(poorer.models[0].order_wanted + poorer.models[1].order_wanted >
          poorer.models[0].order + poorer.models[1].order);
}

TEST_CASE("the simulated misses lie around the formula's where no model helps another") {
    ShelfInput input = input_of({{1}, {2}}, {60, 25});
    const ShelfPlan plan = plan_shelf(input, at_most(2));
    CHECK(plan.lost_jobs.low <= plan.lost_jobs.closed_form * 1.05);
    CHECK(plan.lost_jobs.high >= plan.lost_jobs.closed_form * 0.95);
    CHECK(plan.lost_jobs.without_model == 0);
    CHECK(plan.fill_rate >= 0.94);
}

TEST_CASE("models that are wanted are kept, and others never") {
    PlanAsk ask = at_most(1);
    ask.models.with = {"aa"};
    CHECK(names_of(plan_shelf(three_models(), ask)) == std::vector<std::string>{"aa"});
    ask = at_most(1);
    ask.models.without = {"ab"};
    CHECK(names_of(plan_shelf(three_models(), ask)) == std::vector<std::string>{"aa"});
}

TEST_CASE("each model says why it is kept or not") {
    ShelfInput input = three_models();
    input.converters.push_back(converter_with("ad"));
    const PlanAsk ask = at_most(1);
    const ShelfPlan plan = plan_shelf(input, ask);
    const ModelExplained kept = explain_model(input, ask, plan, "ab");
    CHECK(kept.place == ModelPlace::kept);
    CHECK(kept.systems.size() == 2);
    CHECK(kept.joins_at == 1);
    const ModelExplained beaten = explain_model(input, ask, plan, "aa");
    CHECK(beaten.place == ModelPlace::beaten);
    CHECK(beaten.beaten_by == 1u);
    CHECK(beaten.instead == std::vector<std::size_t>{1});
    CHECK_THAT(beaten.forced_share, WithinAbs(0.75, 1e-9));
    const ModelExplained left_out = explain_model(input, ask, plan, "ac");
    CHECK(left_out.place == ModelPlace::left_out);
    CHECK_THAT(left_out.adds_share, WithinAbs(0.2 * 0.25, 1e-9));
    CHECK_THAT(left_out.only_share, WithinAbs(0.2 * 0.25, 1e-9));
    CHECK(explain_model(input, ask, plan, "ad").place == ModelPlace::suits_nothing);
    CHECK_THROWS_WITH(explain_model(input, ask, plan, "ae"), "no converter is called \"ae\"; did you mean \"aa\"?");
}

TEST_CASE("a change says what is gained, lost and to be paid") {
    const ShelfInput input = three_models();
    PlanAsk without = at_most(1);
    without.models.without = {"ab"};
    const PlanChange change = plan_change(input, at_most(1), input, without);
    CHECK_THAT(change.share, WithinAbs(0.75 - 0.95, 1e-9));
    REQUIRE(change.lost.size() == 1);
    CHECK(change.lost[0].system == 1);
    CHECK(change.gained.empty());
    REQUIRE(change.models.size() == 2);
    CHECK(change.models[0].name == "aa");
    CHECK(change.models[0].keep_before == 0);
    CHECK(change.models[1].keep_after == 0);
}

TEST_CASE("without systems, converters, anything that fits or any demand the plan says so and keeps nothing") {
    ShelfInput input = input_of({{1}}, {5});
    ShelfInput none = input;
    none.systems.clear();
    CHECK(plan_shelf(none, at_most(1)).state == ShelfState::no_systems);
    none = input_of({}, {5});
    CHECK(plan_shelf(none, at_most(1)).state == ShelfState::no_converters);
    none = input_of({{}}, {5});
    const ShelfPlan plan = plan_shelf(none, at_most(1));
    CHECK(plan.state == ShelfState::nothing_fits);
    CHECK(plan.models.empty());
    CHECK_THAT(plan.no_converter_share, WithinAbs(1, 1e-12));
    CHECK_THAT(plan.lost_jobs.without_model, WithinAbs(5, 1e-9));
    none = input_of({{1}}, {0});
    CHECK(plan_shelf(none, at_most(1)).state == ShelfState::no_demand);
}

TEST_CASE("a model that nobody asks for is kept when wanted, but none of it lies there") {
    ShelfInput input = input_of({{1}, {2}}, {5, 0});
    PlanAsk ask = at_most(2);
    ask.models.with = {"ab"};
    const ShelfPlan plan = plan_shelf(input, ask);
    REQUIRE(plan.models.size() == 2);
    CHECK(plan.models[1].name == "ab");
    CHECK(plan.models[1].keep == 0);
    CHECK(plan.models[1].order == 0);
}

TEST_CASE("what cannot be planned with is refused with its reason") {
    const ShelfInput input = input_of({{1}, {1, 2}}, {5, 3});
    const auto changed = [&](auto change) {
        ShelfInput other = input;
        change(other);
        return refusal(other, at_most(1));
    };
    CHECK(changed([](ShelfInput& i) { i.converters[0].on_hand = -2; }) ==
          "aa: -2 on the shelf; a shelf cannot hold less than nothing. Count it again");
    CHECK(changed([](ShelfInput& i) { i.converters[0].on_order = -1; }) ==
          "aa: -1 on order; that cannot be less than nothing. Count it again");
    CHECK(changed([](ShelfInput& i) { i.converters[1].pack = 0; }) == "ab: a pack of 0; a pack holds one at least");
    CHECK(changed([](ShelfInput& i) { i.converters[1].cost_cents = -5; }) ==
          "ab: costs -5 cents; a price cannot be below zero");
    CHECK(changed([](ShelfInput& i) { i.converters[1].lead_days = -5; }) ==
          "ab: comes after -5 days; that cannot be below zero");
    CHECK(changed([](ShelfInput& i) { i.converters[1].name = "aa"; }) == "aa: two converters are called so");
    CHECK(changed([](ShelfInput& i) { i.systems[0].choices[0].converter = 9; }) ==
          "car row-1: suits converter 9, but there are only 2");
    CHECK(changed([](ShelfInput& i) { i.systems[0].choices.push_back(i.systems[0].choices[0]); }) ==
          "car row-1: aa is named twice");
    CHECK(changed([](ShelfInput& i) { i.systems[1].forecast_per_year = -1; }) ==
          "car row-2: -1 jobs a year are forecast; that must be 0 or more");
    PlanAsk ask;
    CHECK(refusal(input, ask) == "nothing says how many models: give a number, a share of the jobs, or a budget");
    ask.models.share = 0.5;
    ask.models.at_most = 2;
    CHECK(refusal(input, ask) == "a number of models, a share of the jobs and a budget exclude each other: give one");
    ask.models.at_most.reset();
    ask.models.share = 1.5;
    CHECK(refusal(input, ask) == "share of the jobs 1.5: has to be 0 to 1");
    ask = at_most(1);
    ask.levels.fill_rate = 1;
    CHECK(refusal(input, ask) ==
          "fill rate 1: has to be above 0 and below 1: no shelf is large enough to serve every job");
    ask = at_most(1);
    ask.models.with = {"aa", "ab"};
    CHECK(refusal(input, ask) == "2 models are to be kept in any case, but no more than 1 in all");
    ask.models.with = {"aa"};
    ask.models.without = {"aa"};
    CHECK(refusal(input, ask) == "aa: is to be kept and not to be kept; say one of both");
    ask = {};
    ask.models.budget_cents = 900;
    ask.models.with = {"aa"};
    CHECK(refusal(input, ask) ==
          "the models to be kept in any case cost 10.00, the budget is 9.00: keep fewer in any case, or raise the "
          "budget");
}
