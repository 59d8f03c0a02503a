// Values and shops are numbered, the estimate is made, and the numbers are turned back.
#include "evidence/shop_errors.h"

#include <algorithm>
#include <map>
#include <set>

#include "evidence/error_rates.h"

namespace tapbook {
namespace {

constexpr PriorRate wrong_once_in_ten{2, 0.1};

template <class Key>
std::map<Key, int> numbered(const std::set<Key>& keys) {
    std::map<Key, int> numbers;
    for (const auto& key : keys) numbers.emplace(key, static_cast<int>(numbers.size()));
    return numbers;
}

ObserverAnswers answers_of(std::span<const FactSayings> facts, const std::map<std::string, int>& shops) {
    constexpr int least_values = 2;  // something else might be there even where all agree
    ObserverAnswers given{static_cast<int>(facts.size()), static_cast<int>(shops.size()), {}, {}};
    for (std::size_t item = 0; item < facts.size(); ++item) {
        std::set<std::string> values;
        for (const auto& saying : facts[item].sayings) values.insert(saying.value);
        const auto numbers = numbered(values);
        given.values_of_item.push_back(std::max(least_values, static_cast<int>(numbers.size())));
        for (const auto& saying : facts[item].sayings)
            given.answers.push_back({static_cast<int>(item), shops.at(saying.shop), numbers.at(saying.value)});
    }
    return given;
}

}  // namespace

std::vector<ShopErrors> shop_errors(std::span<const FactSayings> facts) {
    std::set<std::string> ids;
    for (const auto& fact : facts)
        for (const auto& saying : fact.sayings) ids.insert(saying.shop);
    const auto shops = numbered(ids);
    const ObserverAnswers given = answers_of(facts, shops);
    const ErrorRates rates = error_rates(given, ErrorModel::one_rate, wrong_once_in_ten);
    std::vector<ShopErrors> list;
    for (const auto& [id, number] : shops) list.push_back({id, 0, 0, 0, {}, false});
    for (const auto& answer : given.answers) {
        auto& shop = list[static_cast<std::size_t>(answer.observer)];
        const auto& truth = rates.truth[static_cast<std::size_t>(answer.item)];
        ++shop.answers;
        if (truth[static_cast<std::size_t>(answer.value)] > 0.5) ++shop.agreed;
    }
    for (std::size_t i = 0; i < list.size(); ++i) {
        const ShareInterval right = share_interval(list[i].agreed, list[i].answers - list[i].agreed);
        list[i].wrong = rates.wrong_share[i];
        list[i].between = {1 - right.high, 1 - right.low};
        list[i].is_enough = list[i].answers >= least_answers;
    }
    return list;
}

}  // namespace tapbook
