// Which cars do words mean, when a car may have several names? The search goes over every name, those that only an
// alias gives among them; what it finds is one car a class, under the smallest path.
#include <algorithm>
#include <iterator>
#include <set>

#include "catalog/alias_classes.h"

namespace tapbook {
namespace {

std::string words_of_slug(std::string_view slug) {
    std::string words(slug);
    std::replace(words.begin(), words.end(), '-', ' ');
    return words;
}

class AnyName {
  public:
    explicit AnyName(sqlite::Database& database) {
        KeptNames kept = kept_names(database);
        table_ = std::move(kept.table);
        if (kept.has_aliases) same_ = alias_classes(database);
        if (!same_.empty()) add_names();
    }

    const NameTable& table() const { return table_; }

    // The smallest path of the class that an entry here has: what is written down of a car is written under it.
    std::string path_of_entry(const std::string& name) const {
        const auto entry = entries_.find(name);
        return entry == entries_.end() ? name : entry->second.path;
    }

    // Not a name that only an alias gives.
    bool is_entry(std::string_view path) const { return only_names_.find(path) == only_names_.end(); }

    // Each class once: as its first, under its name; with what the entry of its smallest path says.
    template <class Found, class CarOf>
    std::vector<Found> one_a_class(std::vector<Found> found, CarOf car_of) const {
        if (same_.empty()) return found;
        std::set<std::string> seen;
        std::vector<Found> kept;
        for (auto& one : found) {
            VehicleName& car = car_of(one);
            const std::string name = same_.name_of(car.path);
            if (!seen.insert(name).second) continue;
            if (const auto entry = entries_.find(name); entry != entries_.end()) car = entry->second;
            car.path = name;
            kept.push_back(std::move(one));
        }
        return kept;
    }

    std::vector<VehicleHit> hits(std::vector<VehicleHit> found) const {
        auto kept = one_a_class(std::move(found), [](VehicleHit& hit) -> VehicleName& { return hit.vehicle; });
        if (same_.empty()) return kept;
        for (auto& hit : kept) {
            hit.also = same_.members(hit.vehicle.path);
            std::erase(hit.also, hit.vehicle.path);
        }
        return kept;
    }

  private:
    // Names of cars that no entry here has, with the years of the entry that another name of the car has.
    void add_names() {
        auto cars = table_.vehicles();
        std::set<std::string> here;
        for (const auto& car : cars) here.insert(car.path);
        const std::size_t entries = cars.size();
        for (std::size_t i = 0; i < entries; ++i) {
            const auto members = same_.members(cars[i].path);
            if (members.size() < 2 || !entries_.emplace(same_.name_of(cars[i].path), cars[i]).second) continue;
            for (const auto& member : members)
                if (here.insert(member).second) {
                    only_names_.insert(member);
                    const auto parts = path_parts(member);
                    cars.push_back({member, words_of_slug(parts[0]), words_of_slug(parts[1]), words_of_slug(parts[2]),
                                    cars[i].first_year, cars[i].last_year});
                }
        }
        if (cars.size() > entries) table_ = NameTable::of(std::move(cars));
    }

    NameTable table_;
    AliasClasses same_;
    std::set<std::string, std::less<>> only_names_;
    std::map<std::string, VehicleName> entries_;  // by the name of their class: that of the smallest path
};

}  // namespace

FoundVehicles Catalog::find(std::string_view words) const {
    try {
        FoundVehicles found;
        const auto typed = vin_in(words);
        const auto* vin = typed ? std::get_if<Vin>(&*typed) : nullptr;
        const AnyName names(state_->database);
        if (vin != nullptr) found.hits = names.hits(vehicles_of_vin(*vin));
        if (!found.hits.empty()) {
            found.vin = *vin;
            return found;
        }
        found.hits = names.hits(find_vehicles(names.table(), words));
        if (!found.hits.empty() || !typed) return found;
        if (vin != nullptr)
            found.vin = *vin;
        else
            found.no_vin = std::get<VinRefusal>(*typed);
        return found;
    } catch (const sqlite::Error& error) {
        throw_catalog_error(error, state_->file);
    }
}

std::vector<NamedVehicle> Catalog::named(std::string_view words) const {
    try {
        const AnyName names(state_->database);
        auto found = vehicles_named(names.table(), words);
        if (found.size() == 1 && found.front().vehicle.path == words && names.is_entry(words)) return found;
        auto kept =
            names.one_a_class(std::move(found), [](NamedVehicle& named) -> VehicleName& { return named.vehicle; });
        for (auto& one : kept) one.vehicle.path = names.path_of_entry(one.vehicle.path);
        return kept;
    } catch (const sqlite::Error& error) {
        throw_catalog_error(error, state_->file);
    }
}

}  // namespace tapbook
