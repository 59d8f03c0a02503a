// Votes that were not struck, grouped by value and then by shop; caps last, so that they can be shown.
#include "evidence/reckoning.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <set>

#include "evidence/dated_cars.h"
#include "evidence/tally.h"

namespace tapbook {
namespace {

bool was_struck(const Standing& standing, const Vote& vote) {
    return std::any_of(standing.struck.begin(), standing.struck.end(),
                       [&](const Strike& strike) { return strike.note == vote.note && strike.value == vote.value; });
}

struct ShopVotes {
    std::set<std::string> names, cars;
    const Vote* best = nullptr;
};

struct ValueVotes {
    std::map<std::string, ShopVotes> shops;  // by witness
    std::map<std::string, int> paper;        // points by source
};

void add(ValueVotes& value, const Vote& vote, const KnownShops& known) {
    if (!vote.looked_at) {
        int& points = value.paper[vote.source];
        points = std::max(points, vote.points);
        return;
    }
    auto& shop = value.shops[vote.vouched && known.contains(vote.shop) ? vote.shop : std::string()];
    shop.names.insert(vote.shop);
    shop.cars.insert(vote.car);
    if (shop.best == nullptr || vote.points > shop.best->points) shop.best = &vote;
}

ShopShare share_of(const std::string& witness, const ShopVotes& votes) {
    ShopShare share{witness, static_cast<int>(votes.names.size()), votes.best->points, votes.best->method_word, 0, 0,
                    false};
    const bool has_untold = votes.cars.contains("");
    const int all = static_cast<int>(votes.cars.size());
    share.cars = has_untold ? std::max(1, all - 1) : all;
    const int sum = share.best + share.cars - 1;
    share.points = std::min(sum, most_points_of_a_shop);
    share.capped = sum > most_points_of_a_shop;
    return share;
}

ValueSum sum_of(const std::string& name, const ValueVotes& votes) {
    ValueSum sum;
    sum.value = name;
    for (const auto& [witness, shop] : votes.shops) sum.shops.push_back(share_of(witness, shop));
    std::stable_sort(sum.shops.begin(), sum.shops.end(),
                     [](const ShopShare& a, const ShopShare& b) { return a.points > b.points; });
    int paper = 0;
    for (const auto& [source, points] : votes.paper) paper += points;
    sum.paper_sources = static_cast<int>(votes.paper.size());
    sum.paper_points = std::min(paper, most_points_of_paper);
    sum.paper_capped = paper > most_points_of_paper;
    sum.points = sum.paper_points;
    for (const auto& shop : sum.shops) sum.points += shop.points;
    return sum;
}

std::optional<YearTestSum> year_test_of(const std::vector<const Vote*>& live) {
    const auto cars = dated_cars(live);
    const auto best = best_year_split(cars);
    if (!best) return std::nullopt;
    const double odds = 9.0 * best->breaks * (best->values - 1);
    return YearTestSum{*best, std::log(odds) / std::log(3.0), year_split_of(cars).has_value()};
}

}  // namespace

Reckoning reckoning_of(std::span<const Vote> votes, const KnownShops& known, Standing standing) {
    Reckoning reckoning;
    reckoning.standing = std::move(standing);
    std::vector<const Vote*> live;
    std::map<std::string, ValueVotes> by_value;
    for (const Vote& vote : votes) {
        if (was_struck(reckoning.standing, vote)) continue;
        live.push_back(&vote);
        add(by_value[vote.value], vote, known);
    }
    for (const auto& claim : reckoning.standing.claims)
        if (const auto found = by_value.find(claim.value); found != by_value.end())
            reckoning.values.push_back(sum_of(claim.value, found->second));
    int next = 0;
    for (const auto& value : reckoning.values) {
        reckoning.all_points += value.points;
        if (&value != &reckoning.values.front()) next = std::max(next, value.points);
    }
    if (!reckoning.values.empty()) {
        reckoning.lead = reckoning.values.front().points - next;
        reckoning.has_share = 5 * reckoning.values.front().points >= 4 * reckoning.all_points;
    }
    reckoning.year_test = year_test_of(live);
    return reckoning;
}

}  // namespace tapbook
