// Which car did the person mean? A few words in any order, with typing mistakes, without the make, glued together, with
// a two- or four-digit year. Restricted Damerau-Levenshtein distance between folded words; no guess is ever run, only
// offered.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

namespace tapbook {

class NameTable;  // all names of a catalog, see Catalog::names()

struct VehicleName {
    std::string path, make, model, body;
    int first_year = 0, last_year = 0;

    friend bool operator==(const VehicleName&, const VehicleName&) = default;
};

struct VehicleHit {
    VehicleName vehicle;
    int cost = 0;                        // typing mistakes bridged; 0 is an exact match
    bool year_fits = true;               // false: the asked year lies outside the car's years
    std::vector<std::string> also = {};  // other paths that were said to be this car
};

// Cars that match `words`, best first; all cars for no words. Ties: the name that was typed more completely, then by
// path.
std::vector<VehicleHit> find_vehicles(const NameTable& names, std::string_view words);
std::vector<VehicleHit> find_vehicles(std::span<const VehicleName> vehicles, std::string_view words);

// A car that words name exactly, and the year among them.
struct NamedVehicle {
    VehicleName vehicle;
    std::optional<int> year;
};

// Cars that words name exactly (no mistakes bridged): every word is a word of its make, model or body, or the words are
// a tail run of its path. A year among the words must lie in the car's years; a number may be a year or part of a name
// ("Velar 50"). A path with slashes names a car and no year.
std::vector<NamedVehicle> vehicles_named(const NameTable& names, std::string_view words);
std::vector<VehicleName> exact_vehicles(std::span<const VehicleName> vehicles, std::string_view words);

// The first year in `words`, when there is one ("18", "2018").
std::optional<int> year_in(std::string_view words);

}  // namespace tapbook
