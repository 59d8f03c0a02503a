// Which converters suit a sound system: judged all at once, it is what advise() says one car after another.
#include <algorithm>
#include <catch2/catch.hpp>
#include <map>
#include <set>
#include <span>

#include "practice_shop.h"

using namespace tapbook;

namespace {

// Converters that advise() does not refuse at the best tap, by path, with a mark for those with care.
std::vector<std::string> advised(const Advice& advice) {
    std::vector<std::string> list;
    for (const auto& candidate : advice.candidates)
        if (candidate.verdict != Verdict::no && candidate.converter != "direct")
            list.push_back(candidate.converter + (candidate.verdict == Verdict::care ? " care" : ""));
    std::sort(list.begin(), list.end());
    return list;
}

std::vector<std::string> suiting(const SuitedSystem& system, const std::vector<ShelfConverter>& converters) {
    std::vector<std::string> list;
    for (const auto& one : system.suiting)
        list.push_back(converters[one.converter].part.path + (one.verdict == Verdict::care ? " care" : ""));
    std::sort(list.begin(), list.end());
    return list;
}

bool direct_is_advised(const Advice& advice) {
    return std::any_of(advice.candidates.begin(), advice.candidates.end(), [](const auto& candidate) {
        return candidate.converter == "direct" && candidate.verdict != Verdict::no;
    });
}

// How many systems were compared.
int compare_all(const Catalog& catalog, const std::optional<Amplifier>& amplifier, bool with_notes) {
    RuleBook rules = RuleBook::shipped(RuleCases::left_out);
    const auto converters = catalog.converters();
    ConverterJudge judge(converters, amplifier, rules);
    int compared = 0;
    for (const auto& name : catalog.vehicle_names()) {
        const CarFacts car = with_notes ? catalog.car(name.path, {}) : catalog.car_layout(name.path);
        const JobFacts facts{car, converters, amplifier, true};
        const auto suited = judge.judge(std::span(&car, 1)).front();
        for (const auto& system : suited) {
            AdviseRequest request;
            request.system = path_tail(system.system, vehicle_depth);
            const Advice advice = advise(facts, request, rules);
            INFO(system.system << (amplifier ? " with " + amplifier->path : ""));
            CHECK(system.tap == advice.tap.tap.code);
            CHECK(suiting(system, converters) == advised(advice));
            CHECK(system.direct == direct_is_advised(advice));
            ++compared;
        }
    }
    CHECK(judge.judged().kinds <= judge.judged().taps);
    return compared;
}

}  // namespace

TEST_CASE(
    "converters judged for the whole catalog at once are those that advise gives car by car, with every amplifier") {
    const fixture::PracticeShop shop;
    std::vector<std::optional<Amplifier>> amplifiers = {std::nullopt};
    for (const auto& amplifier : shop.catalog().amplifiers()) amplifiers.emplace_back(amplifier);
    REQUIRE(amplifiers.size() > 3);
    for (const auto& amplifier : amplifiers)
        for (const bool with_notes : {true, false}) CHECK(compare_all(shop.catalog(), amplifier, with_notes) > 10);
}

TEST_CASE("fits stand before care, and what lies on the shelf today changes nothing") {
    const fixture::PracticeShop shop;
    RuleBook rules = RuleBook::shipped(RuleCases::left_out);
    auto converters = shop.catalog().converters();
    ConverterJudge before(converters, std::nullopt, rules);
    for (auto& converter : converters) converter.terms.on_hand = converter.terms.on_hand.value_or(0) > 0 ? 0 : 9;
    ConverterJudge after(converters, std::nullopt, rules);
    int seen = 0;
    for (const auto& name : shop.catalog().vehicle_names()) {
        const CarFacts car = shop.catalog().car(name.path, {});
        const auto first = before.judge(std::span(&car, 1)).front(), second = after.judge(std::span(&car, 1)).front();
        REQUIRE(first.size() == second.size());
        for (std::size_t i = 0; i < first.size(); ++i) {
            REQUIRE(first[i].suiting.size() == second[i].suiting.size());
            for (std::size_t k = 0; k < first[i].suiting.size(); ++k) {
                CHECK(first[i].suiting[k].converter == second[i].suiting[k].converter);
                if (k > 0) CHECK(first[i].suiting[k - 1].verdict <= first[i].suiting[k].verdict);
                ++seen;
            }
        }
    }
    CHECK(seen > 20);
}

TEST_CASE("several threads find for every car what one finds, and count the same kinds of taps") {
    const fixture::PracticeShop shop;
    RuleBook rules = RuleBook::shipped(RuleCases::left_out);
    const auto converters = shop.catalog().converters();
    std::vector<CarFacts> cars;
    for (const auto& name : shop.catalog().vehicle_names()) cars.push_back(shop.catalog().car(name.path, {}));
    ConverterJudge alone(converters, std::nullopt, rules);
    std::vector<std::vector<SuitedSystem>> expected;
    for (const CarFacts& car : cars) expected.push_back(alone.judge(std::span(&car, 1)).front());
    for (const std::size_t threads : {1U, 2U, 3U, 8U}) {
        ConverterJudge together(converters, std::nullopt, rules, threads);
        CHECK(together.judge({}).empty());
        const auto found = together.judge(cars);
        REQUIRE(found.size() == expected.size());
        for (std::size_t car = 0; car < found.size(); ++car) {
            REQUIRE(found[car].size() == expected[car].size());
            for (std::size_t i = 0; i < found[car].size(); ++i) {
                CHECK(found[car][i].system == expected[car][i].system);
                CHECK(found[car][i].tap == expected[car][i].tap);
                CHECK(suiting(found[car][i], converters) == suiting(expected[car][i], converters));
            }
        }
        CHECK(together.judged().taps == alone.judged().taps);
        CHECK(together.judged().kinds == alone.judged().kinds);
    }
}

TEST_CASE("a part alone has one value at every tap of a car, but for the columns that say they need the tap") {
    const fixture::PracticeShop shop;
    const auto converters = shop.catalog().converters();
    std::set<std::string> changed;
    for (const auto& name : shop.catalog().vehicle_names()) {
        const CarFacts car = shop.catalog().car(name.path, {});
        for (const ShelfConverter& one : converters) {
            std::map<const Column*, sqlite::Value> first;
            for (const TapFacts& tap : car.taps) {
                if (!carries_signal(tap.circuit.role)) continue;
                const EffectiveOutput output = effective_output(tap);
                const TapSignal signal = predict_tap(car, tap, hertz(40));
                const TapSurroundings around;
                Candidate candidate{car.vehicle, car.systems.front(), tap, output, signal, around, {hertz(40), 2, {}}};
                candidate.converter = &one.part;
                candidate.terms = &one.terms;
                for (const Column& column : columns()) {
                    if (column.relation != "converter" && column.relation != "level") continue;
                    const auto [known, is_new] = first.emplace(&column, column.get(candidate));
                    if (is_new || known->second == column.get(candidate)) continue;
                    changed.insert(full_name(column));
                    INFO(full_name(column));
                    CHECK_FALSE(is_of_part_alone(column));
                }
            }
        }
    }
    CHECK(changed.count("converter.withstands_clipping") == 1);  // it was looked at where it makes a difference
    CHECK(changed.count("level.drive_margin_db") == 1);
}
