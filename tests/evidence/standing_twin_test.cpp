// A second, slow way to the grade, written from the evidence chapter alone: it asks each rule anew of the whole list
// of notes. Both ways must agree on 20,000 small ledgers.
#include <catch2/catch.hpp>
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
    int points = 0, cars = 0;
    std::vector<int> years;
};

Sum sum_of(const std::string& value, const Votes& live) {
    Sum sum{value, 0, 0, {}};
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
        sum.points += std::min(5, best + (cars_of(own) - 1));
    }
    sum.points += std::min<int>(2, static_cast<int>(sources.size()));  // a copied note is worth 1
    return sum;
}

struct Answer {
    Grade grade;
    std::optional<std::string> value;
};

Answer slow_standing(const Votes& all, std::optional<int> year, int withdrawn) {
    const Votes live = only(all, [&](const Vote& vote) { return !is_struck(vote, all); });
    if (live.empty()) return {withdrawn > 0 ? Grade::pulled : Grade::blank, {}};
    std::vector<Sum> sums;
    for (const auto* value : {"white", "tan", "brown"})
        if (!only(live, [&](const Vote& v) { return v.value == value; }).empty()) sums.push_back(sum_of(value, live));
    const bool anybody_looked = std::any_of(sums.begin(), sums.end(), [](const Sum& sum) { return sum.cars > 0; });
    const Sum* leading = nullptr;
    for (const Sum& sum : sums)
        if ((sum.cars > 0) == anybody_looked && (leading == nullptr || sum.points > leading->points)) leading = &sum;
    for (const Sum& sum : sums) {
        if (&sum == leading) continue;
        const bool is_rival_in_kind = (sum.cars > 0) == anybody_looked;
        if (sum.points >= 3 || (is_rival_in_kind && sum.points == leading->points)) return {Grade::mixed, {}};
    }
    const bool outside =
        year && (leading->years.empty() || *std::min_element(leading->years.begin(), leading->years.end()) > *year ||
                 *std::max_element(leading->years.begin(), leading->years.end()) < *year);
    const Grade steps[] = {Grade::paper, Grade::one_car, Grade::matched};
    const int step = std::max(0, std::min(2, leading->cars) - (outside ? 1 : 0));
    return {steps[step], leading->value};
}

}  // namespace

TEST_CASE("a slow second way from the text of the rules agrees on 20,000 random ledgers") {
    Dice dice(2024);
    std::map<Grade, int> met;
    for (int round = 0; round < 20000; ++round) {
        const auto votes = ledgers::any_votes(dice, 8);
        const std::optional<int> year = dice.one_in(2) ? std::optional(2009 + dice.below(9)) : std::nullopt;
        const int withdrawn = dice.below(2);
        const auto fast = standing_of(votes, known(), year, withdrawn);
        const auto slow = slow_standing(votes, year, withdrawn);
        INFO("round " << round << ": " << word_of(fast.grade) << " and " << word_of(slow.grade));
        REQUIRE(fast.grade == slow.grade);
        REQUIRE(fast.value == slow.value);
        ++met[slow.grade];
    }
    for (const auto grade : {Grade::blank, Grade::pulled, Grade::paper, Grade::one_car, Grade::matched, Grade::mixed})
        CHECK(met[grade] > 200);  // the ledgers reach every grade
}
