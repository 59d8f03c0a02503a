// Which converters suit a sound system: judged all at once, it is what advise() says one car after another.
#include <algorithm>
#include <catch2/catch.hpp>

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
        for (const auto& system : judge.judge(car)) {
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
        const auto first = before.judge(car), second = after.judge(car);
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
