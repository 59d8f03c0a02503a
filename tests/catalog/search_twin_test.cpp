// Is the quick search never worse than the slow one? The slow one tries every way to give each typed word to a word of
// the car, by the plain distance; and every order of every choice of the car's words for what is said to be exact.
#include <rapidcheck.h>

#include <algorithm>
#include <catch2/catch.hpp>
#include <set>

#include "catalog/name_table.h"
#include "catalog/typed_words.h"
#include "invented/cars.h"
#include "invented/dice.h"
#include "invented/typing.h"
#include "trade/trade.h"

using namespace tapbook;

namespace {

std::vector<std::string> words_of(const VehicleName& car) {
    std::vector<std::string> words;
    for (const auto* name : {&car.make, &car.model, &car.body})
        for (auto& word : folded_words(*name)) words.push_back(std::move(word));
    return words;
}

struct Slow {
    const std::vector<std::string>& typed;
    const std::vector<std::string>& known;
    std::optional<int> best;

    void try_all(std::size_t next, unsigned used, int cost, std::size_t edits, std::size_t letters, std::size_t named) {
        if (next == typed.size()) {
            if (named * 2 >= typed.size() && named > 0 && edits <= edits_believed(letters))
                best = std::min(best.value_or(cost), cost);
            return;
        }
        const std::string& word = typed[next];
        try_all(next + 1, used, cost + cost_of_foreign_word, edits, letters, named);
        for (std::size_t i = 0; i < known.size(); ++i) {
            if ((used >> i & 1) != 0) continue;
            const std::size_t distance = edit_distance(word, known[i]);
            if (distance <= edits_considered(std::max(word.size(), known[i].size())))
                try_all(next + 1, used | 1U << i, cost + cost_of_edit * static_cast<int>(distance), edits + distance,
                        letters + word.size(), named + 1);
        }
    }
};

// The least cost of reading `typed` as this car, word by word; absent when it cannot be meant.
std::optional<int> slow_cost(const std::vector<std::string>& typed, const VehicleName& car) {
    const auto known = words_of(car);
    Slow slow{typed, known, {}};
    slow.try_all(0, 0, 0, 0, 0, 0);
    return slow.best;
}

// Everything that is said by some of the words in some order, without spaces.
std::set<std::string> sayings(std::vector<std::string> words) {
    std::set<std::string> all;
    std::sort(words.begin(), words.end());
    do {
        std::string said;
        for (const auto& word : words) all.insert(said += word);
    } while (std::next_permutation(words.begin(), words.end()));
    return all;
}

// Words typed for one of the cars, with a few mistakes; no numbers, which might be years.
std::string typed_for(const std::vector<VehicleName>& cars, invented::Dice& dice) {
    auto words = words_of(cars[dice.below(cars.size())]);
    std::erase_if(words, [](const std::string& word) { return word.find_first_of("0123456789") != std::string::npos; });
    std::string typed;
    for (const auto& word : words)
        if (dice.percent(75)) typed += (typed.empty() ? "" : " ") + word;
    for (std::size_t i = dice.below(4); i > 0 && !typed.empty(); --i) typed = invented::with_typo(typed, dice);
    return typed;
}

}  // namespace

TEST_CASE("no car is dearer than the slow search finds it, and none is left out that belongs among the hits") {
    REQUIRE(rc::check([] {
        invented::Dice dice(*rc::gen::arbitrary<std::uint64_t>());
        const auto cars = invented::cars(dice.next(), 12);
        const std::string text = typed_for(cars, dice);
        auto typed = folded_words(text);
        std::sort(typed.begin(), typed.end());
        typed.erase(std::unique(typed.begin(), typed.end()), typed.end());  // a word typed twice says nothing more
        if (typed.empty()) return;
        const auto hits = find_vehicles(cars, text);
        const int margin = hits.empty() ? 0 : hits.front().cost == 0 ? cost_of_foreign_year : cost_of_foreign_word;
        for (const auto& car : cars) {
            const auto slow = slow_cost(typed, car);
            if (!slow) continue;
            RC_ASSERT(!hits.empty());
            const auto hit = std::find_if(hits.begin(), hits.end(),
                                          [&](const VehicleHit& one) { return one.vehicle.path == car.path; });
            if (hit == hits.end())
                RC_ASSERT(*slow > hits.front().cost + margin);
            else
                RC_ASSERT(hit->cost <= *slow);
        }
    }));
}

TEST_CASE("a hit without a mistake is spelt by some of the car's words in some order") {
    REQUIRE(rc::check([] {
        invented::Dice dice(*rc::gen::arbitrary<std::uint64_t>());
        const auto cars = invented::cars(dice.next(), 8);
        const std::string text = typed_for(cars, dice);
        std::string glued;
        std::set<std::string> seen;
        for (const auto& word : folded_words(text))
            if (seen.insert(word).second) glued += word;
        for (const auto& hit : find_vehicles(cars, text))
            if (hit.cost == 0 && !glued.empty()) RC_ASSERT(sayings(words_of(hit.vehicle)).contains(glued));
    }));
}
