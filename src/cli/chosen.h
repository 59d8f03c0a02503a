// Which car, year, sound system and tap point did the words name? Shared by the commands at the car. Nothing is
// guessed: a typing mistake is answered with what was probably meant.
#pragma once

#include <optional>
#include <string>

#include "cli/command.h"

namespace tapbook {

// A car with the model year that the words or the VIN tell, and the VIN when it was one.
struct ChosenCar {
    VehicleName vehicle;
    std::optional<int> year;
    std::optional<Vin> vin;
};

// The one car the words name exactly or whose pattern fits the VIN; a typing mistake is answered with what was probably
// meant, never run. Throws NoAnswer, or UsageError with the list when there are several.
ChosenCar chosen_car_and_year(const Catalog& catalog, const std::string& words);
VehicleName chosen_car(const Catalog& catalog, const std::string& words);

// The same; --year counts before the year that the words or the VIN tell. Throws UsageError, and NoAnswer when the car
// was not built in that year.
ChosenCar chosen_car_of(const Catalog& catalog, const Parsed& parsed, const std::string& words);

// No pattern fits the VIN, and how to change that.
NoAnswer no_car_of_vin(const Vin& vin);

// Throws NoAnswer when the car was not built in that year.
void check_year(const VehicleName& car, std::optional<int> year);

// Throws NoAnswer, with the nearest, when the car has no such sound system. "" passes.
void check_system(const CarFacts& car, const std::string& system);

// The tap point that words name by a tail run of its path, within the chosen system ("" for all); "" for no words.
// Throws NoAnswer with the nearest, or UsageError with the list.
std::string chosen_tap(const CarFacts& car, const std::string& system, const std::string& words);

}  // namespace tapbook
