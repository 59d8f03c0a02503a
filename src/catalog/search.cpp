// See search.h.
#include "catalog/search.h"

#include <algorithm>
#include <limits>
#include <set>
#include <tuple>

#include "catalog/name_score.h"
#include "trade/trade.h"

namespace tapbook {
namespace {

std::optional<int> year_of_word(std::string_view word) {
    if (word.size() != 2 && word.size() != 4) return std::nullopt;
    const auto year = parse_model_year(word);
    const auto* number = std::get_if<int>(&year);
    return number == nullptr ? std::nullopt : std::optional(*number);
}

bool year_fits(const NamedCar& car, std::optional<int> year) {
    return !year || (*year >= car.first_year && *year <= car.last_year);
}

// The cheapest reading of a car so far.
struct Best {
    int rank = std::numeric_limits<int>::max();
    int cost = 0, unsaid = 0;
    bool year_fits = true;

    void offer(const CarScore& score, bool fits) {
        const int next = score.cost + (fits ? 0 : cost_of_foreign_year);
        if (std::tie(next, score.unsaid) < std::tie(rank, unsaid)) *this = {next, score.cost, score.unsaid, fits};
    }
};

void score_all(const NameTable& names, const TypedReading& reading, std::vector<Best>& best) {
    if (reading.words.empty()) {
        for (std::size_t car = 0; car < best.size(); ++car)
            if (year_fits(names.cars()[car], reading.year)) best[car].offer({}, true);
        return;
    }
    const NameScore scores(names, reading);
    for (const auto& model : names.models())
        scores.for_each_car(model, [&](std::size_t car, const CarScore& score) {
            best[car].offer(score, year_fits(names.cars()[car], reading.year));
        });
}

// Which typed words stand in a name, as a set.
WordSet words_in(const std::vector<std::string>& typed, const KnownName& name) {
    WordSet found = 0;
    for (std::size_t i = 0; i < typed.size() && i < most_words; ++i) {
        std::size_t at = name.folded.find(typed[i]);
        for (; at != std::string_view::npos; at = name.folded.find(typed[i], at + 1)) {
            const std::size_t end = at + typed[i].size();
            if ((at == 0 || name.folded[at - 1] == ' ') && (end == name.folded.size() || name.folded[end] == ' ')) {
                found |= WordSet{1} << i;
                break;
            }
        }
    }
    return found;
}

std::vector<NamedVehicle> cars_of_path_end(const NameTable& names, std::string_view words) {
    std::vector<NamedVehicle> found;
    const auto last = words.substr(words.find_last_of("/ ") + 1);  // all of them when there is no slash or space
    const auto year = words.find('/') == std::string_view::npos ? year_of_word(last) : std::nullopt;
    for (const auto& model : names.models())
        for (std::size_t car = model.first_car; car < model.first_car + model.cars; ++car) {
            if (names.last_part(names.cars()[car]) != last) continue;
            VehicleName vehicle = names.vehicle(model, car);
            if (is_tail_run(vehicle.path, words)) found.push_back({std::move(vehicle), year});
        }
    return found;
}

}  // namespace

std::vector<VehicleHit> find_vehicles(const NameTable& names, std::string_view words) {
    std::vector<Best> best(names.cars().size());
    for (const auto& reading : readings_of(words, names)) score_all(names, reading, best);
    int least = std::numeric_limits<int>::max();
    for (const auto& one : best) least = std::min(least, one.rank);
    // Beside a car that was named without a mistake, only those that a single mistake lies between.
    const int margin = least == 0 ? cost_of_foreign_year : cost_of_foreign_word;
    std::vector<std::pair<Best, std::size_t>> kept;
    for (std::size_t car = 0; car < best.size(); ++car)
        if (best[car].rank < std::numeric_limits<int>::max() && best[car].rank <= least + margin)
            kept.emplace_back(best[car], car);
    std::sort(kept.begin(), kept.end(), [](const auto& a, const auto& b) {
        return std::tie(a.first.rank, a.first.unsaid, a.second) < std::tie(b.first.rank, b.first.unsaid, b.second);
    });
    std::vector<VehicleHit> hits;
    hits.reserve(kept.size());
    for (const auto& [score, car] : kept) hits.push_back({names.vehicle(car), score.cost, score.year_fits});
    return hits;
}

std::vector<VehicleHit> find_vehicles(std::span<const VehicleName> vehicles, std::string_view words) {
    return find_vehicles(NameTable::of({vehicles.begin(), vehicles.end()}), words);
}

std::vector<NamedVehicle> vehicles_named(const NameTable& names, std::string_view words) {
    auto found = cars_of_path_end(names, words);
    if (!found.empty()) return found;
    std::set<std::size_t> seen;
    for (const auto& reading : readings_of(words, names)) {
        if (reading.words.empty() || reading.words.size() > most_words) continue;
        const WordSet all = (WordSet{1} << reading.words.size()) - 1;
        std::vector<WordSet> in_make, in_body;
        for (const auto& make : names.makes()) in_make.push_back(words_in(reading.words, make));
        for (const auto& body : names.bodies()) in_body.push_back(words_in(reading.words, body));
        for (const auto& model : names.models()) {
            const WordSet known = words_in(reading.words, model.name) | in_make[model.make];
            for (std::size_t car = model.first_car; car < model.first_car + model.cars; ++car)
                if ((known | in_body[names.cars()[car].body]) == all && year_fits(names.cars()[car], reading.year) &&
                    seen.insert(car).second)
                    found.push_back({names.vehicle(model, car), reading.year});
        }
    }
    return found;
}

std::vector<VehicleName> exact_vehicles(std::span<const VehicleName> vehicles, std::string_view words) {
    std::vector<VehicleName> found;
    for (auto& named : vehicles_named(NameTable::of({vehicles.begin(), vehicles.end()}), words))
        found.push_back(std::move(named.vehicle));
    return found;
}

std::optional<int> year_in(std::string_view words) {
    for (const auto& word : folded_words(words))
        if (const auto year = year_of_word(word)) return year;
    return std::nullopt;
}

}  // namespace tapbook
