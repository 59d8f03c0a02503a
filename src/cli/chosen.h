// Which car, year, sound system and tap point did the words name? Shared by the commands at the car. Nothing is
// guessed: a typing mistake is answered with what was probably meant.
#pragma once

#include <optional>
#include <string>

#include "cli/command.h"

namespace tapbook {

// The one car the words name exactly; a typing mistake is answered with what was probably meant, never run. Throws
// NoAnswer, or UsageError with the list when the words name several.
VehicleName chosen_car(const Catalog& catalog, const std::string& words);

// --year, else a year among the words; absent when neither is there. Throws UsageError.
std::optional<int> year_of(const Parsed& parsed, const std::string& words);

// Throws NoAnswer when the car was not built in that year.
void check_year(const VehicleName& car, std::optional<int> year);

// Throws NoAnswer, with the nearest, when the car has no such sound system. "" passes.
void check_system(const CarFacts& car, const std::string& system);

// The tap point that words name by a tail run of its path, within the chosen system ("" for all); "" for no words.
// Throws NoAnswer with the nearest, or UsageError with the list.
std::string chosen_tap(const CarFacts& car, const std::string& system, const std::string& words);

}  // namespace tapbook
