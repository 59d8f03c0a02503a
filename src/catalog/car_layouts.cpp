// How are all cars read without their notes, quickly? The entries of some hundred cars that follow each other in one
// go; what no note says of a tap is worked out once for each side. A car of several names comes once.
#include <algorithm>
#include <set>
#include <unordered_map>

#include "catalog/alias_classes.h"

namespace tapbook {
namespace {

constexpr std::size_t cars_at_once = 256;

class LayoutReader {
  public:
    LayoutReader(sqlite::Database& database, std::span<CurrentEntry> vehicles)
        : database_(database), known_(known_shops(database)) {
        cars_.reserve(vehicles.size());
        for (auto& vehicle : vehicles) {
            cars_.emplace_back();
            cars_.back().vehicle = vehicle_of(vehicle.entry.values);
            number_of_[cars_.back().vehicle.path] = cars_.size() - 1;
        }
        first_ = below_first(cars_.front().vehicle.path);
        for (const auto& car : cars_) end_ = std::max(end_, below_end(car.vehicle.path));
    }

    std::vector<CarFacts> read() {
        for (const auto& entry : entries(EntryKind::system)) add_system(entry);
        for (const auto& entry : entries(EntryKind::circuit))
            circuits_[text_field(entry.entry.values, "path")] = circuit_of(entry.entry.values);
        for (const auto& entry : entries(EntryKind::tap)) add_tap(entry);
        return std::move(cars_);
    }

  private:
    std::vector<CurrentEntry> entries(EntryKind kind) { return current_entries(database_, kind, first_, end_); }

    // The car of these that the path lies below, or nullptr: between two cars' paths a third one's may lie.
    CarFacts* car_of(const std::string& path) {
        const auto found = number_of_.find(std::string(path_head(path, vehicle_depth)));
        return found == number_of_.end() ? nullptr : &cars_[found->second];
    }

    void add_system(const CurrentEntry& entry) {
        SystemFacts system;
        system.entry = sound_system_of(entry.entry.values);
        CarFacts* car = car_of(system.entry.path);
        if (car == nullptr) return;
        system.code = path_tail(system.entry.path, vehicle_depth);
        system.premium = premium_standing({}, known_, {}, 0);
        car->systems.push_back(std::move(system));
    }

    void add_tap(const CurrentEntry& entry) {
        TapFacts facts;
        facts.tap = tap_point_of(entry.entry.values);
        facts.code = facts.tap.path;
        CarFacts* car = car_of(facts.code);
        const auto circuit = circuits_.find(std::string(path_head(facts.code, circuit_depth)));
        if (car == nullptr || circuit == circuits_.end()) return;
        facts.system = path_parts(facts.code)[vehicle_depth];
        facts.concurrent_edits = entry.concurrent;
        facts.circuit = circuit->second;
        if (is_power(facts.circuit.role))
            facts.switched = switched_standing({}, known_, {}, 0, facts.tap.side, {});
        else
            facts.pair = blank_pair(facts.tap.side);
        car->taps.push_back(std::move(facts));
    }

    const PairStanding& blank_pair(std::optional<ConnectorSide> side) {
        const auto found = blank_.find(side);
        if (found != blank_.end()) return found->second;
        return blank_.emplace(side, pair_standing({}, side, known_, {}, 0, {})).first->second;
    }

    sqlite::Database& database_;
    KnownShops known_;
    std::vector<CarFacts> cars_;
    std::unordered_map<std::string, std::size_t> number_of_;
    std::string first_, end_;
    std::unordered_map<std::string, Circuit> circuits_;
    std::map<std::optional<ConnectorSide>, PairStanding> blank_;
};

}  // namespace

void Catalog::each_layout(const std::function<void(const CarFacts&)>& take) const {
    try {
        std::optional<sqlite::Transaction> one_state;
        if (!state_->database.in_transaction()) one_state.emplace(state_->database, sqlite::Transaction::Kind::read);
        auto vehicles = current_entries(state_->database, EntryKind::vehicle, "", "\x7f");
        const AliasClasses same = alias_classes(state_->database);
        std::set<std::string> seen;  // cars of several names, by the class's
        const auto give = [&](const CarFacts& car) {
            if (same.empty() || same.members(car.vehicle.path).size() == 1) return take(car);
            if (seen.insert(same.name_of(car.vehicle.path)).second) take(car_layout(car.vehicle.path));
        };
        Steps steps(state_->progress, static_cast<std::int64_t>(vehicles.size()));
        for (std::size_t first = 0; first < vehicles.size(); first += cars_at_once) {
            const auto count = std::min(cars_at_once, vehicles.size() - first);
            for (const auto& car : LayoutReader(state_->database, std::span(vehicles).subspan(first, count)).read()) {
                give(car);
                steps.one();
            }
        }
    } catch (const sqlite::Error& error) {
        throw_catalog_error(error, state_->file);
    }
}

}  // namespace tapbook
