// Which one car do the words or the VIN mean? A typing mistake is answered with what was probably meant, never run.
#include <fmt/format.h>

#include "cli/chosen.h"

namespace tapbook {
namespace {

std::string car_words(const VehicleName& car) {
    return fmt::format("{} {} {}, {}-{}", car.make, car.model, car.body, car.first_year, car.last_year);
}

std::string list_of(const std::vector<VehicleName>& cars) {
    std::string list;
    for (const auto& car : cars) list += fmt::format("\n  {:<40} {}", car_words(car), car.path);
    return list;
}

// Of the cars whose pattern fits, those of the VIN's model year; all when there are none.
ChosenCar car_of_vin(const std::vector<VehicleHit>& hits, const Vin& vin) {
    std::vector<VehicleName> cars;
    for (const auto& hit : hits)
        if (hit.year_fits == hits.front().year_fits) cars.push_back(hit.vehicle);
    if (cars.size() > 1)
        throw UsageError(fmt::format("the VIN fits {} cars:{}", cars.size(), list_of(cars)), "choose one by its path");
    return {cars.front(), model_year(vin), vin};
}

[[noreturn]] void refuse_words(const std::string& words, const FoundVehicles& found) {
    if (found.no_vin) throw UsageError(found.no_vin->message(), "a car can be named by its make and model as well");
    if (found.vin) throw no_car_of_vin(*found.vin);
    if (found.hits.empty())
        throw NoAnswer(fmt::format("no car is called \"{}\"", shown(words)), "tapbook find lists all cars");
    const auto& near = found.hits.front();
    throw NoAnswer(fmt::format("no car is called exactly \"{}\"", shown(words)),
                   near.year_fits
                       ? fmt::format("did you mean {} ({})?", car_words(near.vehicle), near.vehicle.path)
                       : fmt::format("{} ({}) was not built in that year", car_words(near.vehicle), near.vehicle.path));
}

std::optional<int> typed_year(const Parsed& parsed) {
    const auto typed = parsed.text("--year");
    if (!typed) return std::nullopt;
    const auto year = parse_model_year(*typed);
    if (const auto* refusal = std::get_if<YearRefusal>(&year))
        throw UsageError(fmt::format("--year: {}", refusal->message()));
    return std::get<int>(year);
}

}  // namespace

ChosenCar chosen_car_of(const Catalog& catalog, const Parsed& parsed, const std::string& words) {
    ChosenCar chosen = chosen_car_and_year(catalog, words);
    if (const auto typed = typed_year(parsed)) chosen.year = typed;
    check_year(chosen.vehicle, chosen.year);
    return chosen;
}

ChosenCar chosen_car_and_year(const Catalog& catalog, const std::string& words) {
    const auto named = catalog.named(words);
    if (named.size() == 1) return {named.front().vehicle, named.front().year, {}};
    if (named.size() > 1) {
        std::vector<VehicleName> cars;
        for (const auto& one : named) cars.push_back(one.vehicle);
        throw UsageError(fmt::format("\"{}\" names {} cars:{}", shown(words), cars.size(), list_of(cars)),
                         "add the body, the year or the path");
    }
    const FoundVehicles found = catalog.find(words);
    if (found.vin && !found.hits.empty()) return car_of_vin(found.hits, *found.vin);
    refuse_words(words, found);
}

VehicleName chosen_car(const Catalog& catalog, const std::string& words) {
    return chosen_car_and_year(catalog, words).vehicle;
}

}  // namespace tapbook
