// A second, slow way to the grade, written from the evidence chapter alone: it asks each rule anew of the whole list
// of notes. Both ways must agree on 20,000 small ledgers.
#include <catch2/catch.hpp>
#include <cmath>
#include <map>

#include "evidence/ledgers.h"

using namespace tapbook;
using ledgers::Dice;
using ledgers::known;

namespace {

using Votes = std::vector<Vote>;

std::string counts_as(const Vote& vote) {
    return vote.vouched && known().contains(vote.shop) ? vote.shop : "everybody else";
}

bool is_newer_vote(const Vote& a, const Vote& b) {
    if (a.date != b.date) return a.date > b.date;
    if (a.turn != b.turn) return a.turn > b.turn;
    return a.note > b.note;
}

// "A shop that contradicts itself on one car: its newest note counts": gone is a note for which a newest note of that
// car says something else.
bool is_struck(const Vote& vote, const Votes& all) {
    if (!vote.looked_at || vote.car.empty()) return false;
    const Vote* newest = &vote;
    for (const Vote& other : all)
        if (other.looked_at && other.shop == vote.shop && other.car == vote.car && other.vouched == vote.vouched &&
            is_newer_vote(other, *newest))
            newest = &other;
    return newest->value != vote.value;
}

template <class Test>
Votes only(const Votes& all, Test test) {
    Votes some;
    for (const Vote& vote : all)
        if (test(vote)) some.push_back(vote);
    return some;
}

int cars_of(const Votes& of_one_shop) {
    std::vector<std::string> told;
    for (const Vote& vote : of_one_shop)
        if (!vote.car.empty() && std::count(told.begin(), told.end(), vote.car) == 0) told.push_back(vote.car);
    return std::max<int>(of_one_shop.empty() ? 0 : 1, static_cast<int>(told.size()));
}

struct Sum {
    std::string value;
    int points = 0, cars = 0, measured = 0, known_shops = 0;
    std::vector<int> years;
};

Sum sum_of(const std::string& value, const Votes& live) {
    Sum sum{value, 0, 0, 0, 0, {}};
    std::vector<std::string> shops, sources;
    for (const Vote& vote : only(live, [&](const Vote& v) { return v.value == value; })) {
        auto& seen = vote.looked_at ? shops : sources;
        const std::string witness = vote.looked_at ? counts_as(vote) : vote.source;
        if (vote.looked_at && vote.year) sum.years.push_back(*vote.year);
        if (std::count(seen.begin(), seen.end(), witness) == 0) seen.push_back(witness);
    }
    for (const auto& shop : shops) {
        const Votes own =
            only(live, [&](const Vote& v) { return v.value == value && v.looked_at && counts_as(v) == shop; });
        int best = 0;
        for (const Vote& vote : own) best = std::max(best, vote.points);
        sum.cars += cars_of(own);
        sum.measured += cars_of(only(own, [](const Vote& v) { return v.measured; }));
        sum.known_shops += shop == "everybody else" ? 0 : 1;
        sum.points += std::min(5, best + (cars_of(own) - 1));
    }
    sum.points += std::min<int>(2, static_cast<int>(sources.size()));  // a copied note is worth 1
    return sum;
}

struct Answer {
    Grade grade;
    std::optional<std::string> value;
};

Answer slow_value(const Votes& live, std::optional<int> year) {
    std::vector<Sum> sums;
    int all_points = 0;
    for (const auto* value : {"white", "tan", "brown"})
        if (!only(live, [&](const Vote& v) { return v.value == value; }).empty()) {
            sums.push_back(sum_of(value, live));
            all_points += sums.back().points;
        }
    const bool anybody_looked = std::any_of(sums.begin(), sums.end(), [](const Sum& sum) { return sum.cars > 0; });
    const Sum* leading = nullptr;
    for (const Sum& sum : sums)
        if ((sum.cars > 0) == anybody_looked && (leading == nullptr || sum.points > leading->points)) leading = &sum;
    bool is_proven = leading->known_shops >= 2 && leading->cars >= 2 && leading->measured >= 2 &&
                     leading->points >= 0.8 * all_points && leading->points >= 6;
    for (const Sum& sum : sums)
        if (&sum != leading && leading->points - sum.points < 6) is_proven = false;
    for (const Sum& sum : sums) {
        if (&sum == leading || is_proven) continue;
        const bool is_rival_in_kind = (sum.cars > 0) == anybody_looked;
        if (sum.points >= 3 || (is_rival_in_kind && sum.points == leading->points)) return {Grade::mixed, {}};
    }
    const bool outside =
        year && (leading->years.empty() || *std::min_element(leading->years.begin(), leading->years.end()) > *year ||
                 *std::max_element(leading->years.begin(), leading->years.end()) < *year);
    const Grade steps[] = {Grade::paper, Grade::one_car, Grade::matched, Grade::proven};
    const int own_step = is_proven ? 3 : std::min(2, leading->cars);
    return {steps[std::max(0, own_step - (outside ? 1 : 0))], leading->value};
}

// A car of the year test: the best of its notes, and of equal ones the newest.
Votes cars_with_years(const Votes& live) {
    const auto dated = only(live, [](const Vote& v) { return v.looked_at && v.year; });
    Votes cars;
    for (const Vote& vote : dated) {
        const bool has_better = std::any_of(dated.begin(), dated.end(), [&](const Vote& other) {
            const bool is_same_car = other.shop == vote.shop && other.vouched == vote.vouched &&
                                     other.value == vote.value && other.car == vote.car;
            const bool is_named_car = other.shop == vote.shop && other.vouched == vote.vouched &&
                                      other.value == vote.value && !other.car.empty() && vote.car.empty();
            return is_named_car || (is_same_car && (other.points > vote.points ||
                                                    (other.points == vote.points && is_newer_vote(other, vote))));
        });
        if (!has_better) cars.push_back(vote);
    }
    return cars;
}

struct Change {
    std::string before, after;
    int last_old, first_new;
};

std::optional<Change> slow_change(const Votes& live) {
    const Votes cars = cars_with_years(live);
    std::vector<std::string> values;
    int first = 9999, last = 0, single = 0, best = -1;
    for (const Vote& car : cars) {
        if (std::count(values.begin(), values.end(), car.value) == 0) values.push_back(car.value);
        first = std::min(first, *car.year);
        last = std::max(last, *car.year);
    }
    const auto points = [&](auto test) {
        int sum = 0;
        for (const Vote& car : cars) sum += test(car) ? car.points : 0;
        return sum;
    };
    for (const auto& value : values) single = std::max(single, points([&](const Vote& v) { return v.value == value; }));
    std::vector<std::tuple<std::string, std::string, int>> tried;
    const auto explains = [](const Vote& v, const auto& before, const auto& after, int year) {
        return v.value == (*v.year < year ? before : after);
    };
    for (const auto& before : values)
        for (const auto& after : values)
            for (int year = first + 1; year <= last && before != after; ++year) {
                const int sum = points([&](const Vote& v) { return explains(v, before, after, year); });
                if (sum > best) tried.clear();
                if (sum >= best) tried.emplace_back(before, after, year);
                best = std::max(best, sum);
            }
    if (tried.empty()) return std::nullopt;
    const auto& [before, after, first_break] = tried.front();
    for (const auto& other : tried)
        if (std::get<0>(other) != before || std::get<1>(other) != after) return std::nullopt;
    if (std::pow(3.0, best - single - 3) < 9.0 * (last - first) * (static_cast<double>(values.size()) - 1))
        return std::nullopt;
    const int last_break = std::get<2>(tried.back());
    const auto old_cars = only(
        cars, [&, &value = before, &year = first_break](const Vote& v) { return v.value == value && *v.year < year; });
    const auto new_cars =
        only(cars, [&, &value = after](const Vote& v) { return v.value == value && *v.year >= last_break; });
    if (old_cars.size() < 2 || new_cars.size() < 2) return std::nullopt;
    Change change{before, after, 0, 9999};
    for (const Vote& car : old_cars) change.last_old = std::max(change.last_old, *car.year);
    for (const Vote& car : new_cars) change.first_new = std::min(change.first_new, *car.year);
    return change;
}

Answer slow_standing(const Votes& all, std::optional<int> year, int withdrawn) {
    const Votes live = only(all, [&](const Vote& vote) { return !is_struck(vote, all); });
    if (live.empty()) return {withdrawn > 0 ? Grade::pulled : Grade::blank, {}};
    const auto change = slow_change(live);
    if (!change) return slow_value(live, year);
    if (year && *year <= change->last_old)
        return slow_value(
            only(live, [&](const Vote& v) { return v.year ? *v.year < change->first_new : v.value != change->after; }),
            year);
    if (year && *year >= change->first_new)
        return slow_value(
            only(live, [&](const Vote& v) { return v.year ? *v.year > change->last_old : v.value != change->before; }),
            year);
    return {Grade::year_split, {}};
}

}  // namespace

TEST_CASE("a slow second way from the text of the rules agrees on 20,000 random ledgers") {
    Dice dice(2024);
    std::map<Grade, int> met;
    for (int round = 0; round < 20000; ++round) {
        const auto votes = round % 4 == 0 ? ledgers::any_changed_votes(dice, 12) : ledgers::any_votes(dice, 8);
        const std::optional<int> year = dice.one_in(2) ? std::optional(2009 + dice.below(9)) : std::nullopt;
        const int withdrawn = dice.below(2);
        const auto fast = standing_of(votes, known(), year, withdrawn);
        const auto slow = slow_standing(votes, year, withdrawn);
        INFO("round " << round << ": " << word_of(fast.grade) << " and " << word_of(slow.grade));
        REQUIRE(fast.grade == slow.grade);
        REQUIRE(fast.value == slow.value);
        ++met[slow.grade];
    }
    for (const auto grade : {Grade::blank, Grade::pulled, Grade::paper, Grade::one_car, Grade::matched, Grade::proven,
                             Grade::mixed, Grade::year_split})
        CHECK(met[grade] > 200);  // the ledgers reach every grade
}
