// Which car did the person mean? A few words in any order, with typing mistakes, without the make, glued together, with
// a two- or four-digit year. Restricted Damerau-Levenshtein distance between folded words; no guess is ever run, only
// offered.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

namespace tapbook {

struct VehicleName {
    std::string path, make, model, body;
    int first_year = 0, last_year = 0;
};

struct VehicleHit {
    VehicleName vehicle;
    int cost = 0;           // typing mistakes bridged; 0 is an exact match
    bool year_fits = true;  // false: the asked year lies outside the car's years
};

// Cars that match `words`, best first; all cars for no words. Ties by path.
std::vector<VehicleHit> find_vehicles(std::span<const VehicleName> vehicles, std::string_view words);

// How words name one car exactly (no mistakes bridged): every word is a word of its make, model or body, or the words
// are a tail run of its path. A year among the words must lie in the car's years.
std::vector<VehicleName> exact_vehicles(std::span<const VehicleName> vehicles, std::string_view words);

// The year in `words`, when there is one ("18", "2018").
std::optional<int> year_in(std::string_view words);

}  // namespace tapbook
