// See search.h.
#include "catalog/search.h"

#include <algorithm>
#include <limits>

#include "trade/trade.h"

namespace tapbook {
namespace {

constexpr int no_match = 1000;
constexpr int missing_word = 6;  // cost of a word that names nothing of the car

// How many mistakes a word of this length may hold.
std::size_t mistakes_allowed(std::size_t length) {
    return length < 4 ? 0 : length < 6 ? 1 : length < 9 ? 2 : 3;
}

bool is_number(std::string_view word) {
    return std::all_of(word.begin(), word.end(), [](char c) { return c >= '0' && c <= '9'; });
}

std::optional<int> year_of_word(std::string_view word) {
    if ((word.size() != 2 && word.size() != 4) || !is_number(word)) return std::nullopt;
    const auto year = parse_model_year(word);
    const auto* number = std::get_if<int>(&year);
    return number == nullptr ? std::nullopt : std::optional(*number);
}

// Folded words of one car, and those words glued in the orders people glue them.
struct Target {
    std::vector<std::string> words;
    std::vector<std::string> glued;
};

Target target_of(const VehicleName& vehicle) {
    Target target;
    const auto make = folded_words(vehicle.make), model = folded_words(vehicle.model),
               body = folded_words(vehicle.body);
    for (const auto* list : {&make, &model, &body}) target.words.insert(target.words.end(), list->begin(), list->end());
    const auto joined = [](const std::vector<std::string>& list) {
        std::string all;
        for (const auto& word : list) all += word;
        return all;
    };
    const std::string a = joined(make), b = joined(model), c = joined(body);
    target.glued = {a, b, a + b, b + a, b + c, a + b + c};
    return target;
}

int word_cost(std::string_view typed, std::string_view word) {
    if (typed == word) return 0;
    if (typed.size() >= 3 && word.starts_with(typed)) return 1;
    const auto distance = edit_distance(typed, word);
    return distance <= mistakes_allowed(std::max(typed.size(), word.size())) ? static_cast<int>(2 * distance)
                                                                             : no_match;
}

// The cheapest way to read one typed word as something of the car.
int best_cost(std::string_view typed, const Target& target) {
    int best = no_match;
    for (const auto& word : target.words) best = std::min(best, word_cost(typed, word));
    for (const auto& word : target.glued)
        if (const int cost = word_cost(typed, word); cost < no_match) best = std::min(best, cost + (cost == 0 ? 0 : 1));
    return best;
}

// Typed words against the car: each word by itself, or two neighbours read as one ("os trel").
int total_cost(const std::vector<std::string>& typed, const Target& target, int& matched) {
    int total = 0;
    for (std::size_t i = 0; i < typed.size(); ++i) {
        const int alone = best_cost(typed[i], target);
        if (i + 1 < typed.size()) {
            const int together = best_cost(typed[i] + typed[i + 1], target);
            const int next = best_cost(typed[i + 1], target);
            if (together < no_match && together < std::min(alone, missing_word) + std::min(next, missing_word)) {
                total += together;
                matched += 2;
                ++i;
                continue;
            }
        }
        if (alone < no_match) {
            total += alone;
            ++matched;
        } else {
            total += missing_word;
        }
    }
    return total;
}

struct Typed {
    std::vector<std::string> words;
    std::optional<int> year;
};

Typed typed_of(std::string_view text) {
    Typed typed;
    for (auto& word : folded_words(text)) {
        const auto year = typed.year ? std::nullopt : year_of_word(word);
        if (year)
            typed.year = year;
        else
            typed.words.push_back(std::move(word));
    }
    return typed;
}

bool year_fits(const VehicleName& vehicle, std::optional<int> year) {
    return !year || (*year >= vehicle.first_year && *year <= vehicle.last_year);
}

}  // namespace

std::vector<VehicleHit> find_vehicles(std::span<const VehicleName> vehicles, std::string_view words) {
    const Typed typed = typed_of(words);
    std::vector<VehicleHit> hits;
    for (const auto& vehicle : vehicles) {
        int matched = 0;
        const int cost = total_cost(typed.words, target_of(vehicle), matched);
        const auto wanted = static_cast<int>(typed.words.size());
        if (wanted > 0 && matched * 2 < wanted) continue;
        if (wanted > 0 && matched == 0) continue;
        const bool fits = year_fits(vehicle, typed.year);
        if (!fits && wanted == 0) continue;
        hits.push_back({vehicle, cost, fits});
    }
    std::stable_sort(hits.begin(), hits.end(), [](const VehicleHit& a, const VehicleHit& b) {
        return std::tuple(a.cost + (a.year_fits ? 0 : 3), a.vehicle.path) <
               std::tuple(b.cost + (b.year_fits ? 0 : 3), b.vehicle.path);
    });
    const int best = hits.empty() ? 0 : hits.front().cost + (hits.front().year_fits ? 0 : 3);
    std::erase_if(hits, [&](const VehicleHit& hit) {
        return !typed.words.empty() && hit.cost + (hit.year_fits ? 0 : 3) > best + missing_word;
    });
    return hits;
}

std::vector<VehicleName> exact_vehicles(std::span<const VehicleName> vehicles, std::string_view words) {
    std::vector<VehicleName> found;
    for (const auto& vehicle : vehicles)
        if (is_tail_run(vehicle.path, words)) found.push_back(vehicle);
    if (!found.empty()) return found;
    const Typed typed = typed_of(words);
    if (typed.words.empty()) return {};
    for (const auto& vehicle : vehicles) {
        const Target target = target_of(vehicle);
        const bool all = std::all_of(typed.words.begin(), typed.words.end(), [&](const std::string& word) {
            return std::find(target.words.begin(), target.words.end(), word) != target.words.end();
        });
        if (all && year_fits(vehicle, typed.year)) found.push_back(vehicle);
    }
    return found;
}

std::optional<int> year_in(std::string_view words) {
    return typed_of(words).year;
}

}  // namespace tapbook
