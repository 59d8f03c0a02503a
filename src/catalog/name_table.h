// What are all cars called, each make, model and body written once? Small enough to be read whole for every search:
// names stand in a list each, cars are four small numbers. For the files of this folder.
#pragma once

#include <cstdint>
#include <deque>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "catalog/search.h"

namespace tapbook {

// One make, model or body. The views point into the table that holds it.
struct KnownName {
    std::string_view shown;   // as people write it
    std::string_view slug;    // its part of the path
    std::string_view folded;  // its words as compared, one space between
    std::string_view glued;   // the same without spaces
};

struct NamedModel {
    KnownName name;
    std::uint32_t make = 0, first_car = 0, cars = 0;
};

struct NamedCar {
    std::uint32_t body = 0, last_part = 0;  // places in the lists of bodies and of last path parts
    std::uint16_t first_year = 0, last_year = 0;
};

// make/model/body/rest: a path that names a vehicle has four parts or more.
bool names_a_vehicle(std::string_view path);

class NameTable {
  public:
    NameTable() = default;
    NameTable(NameTable&&) noexcept = default;
    NameTable& operator=(NameTable&&) noexcept = default;

    // From cars in any order; those whose path names no vehicle are left out.
    static NameTable of(std::vector<VehicleName> cars);

    // The table as one value and back. Nothing when the bytes are not of this layout or contradict themselves.
    std::string pack() const;
    static std::optional<NameTable> unpack(std::string bytes);

    std::span<const KnownName> makes() const { return makes_; }
    std::span<const KnownName> bodies() const { return bodies_; }
    std::span<const NamedModel> models() const { return models_; }  // a model's cars follow each other
    std::span<const NamedCar> cars() const { return cars_; }        // in path order
    std::string_view last_part(const NamedCar& car) const { return last_parts_[car.last_part]; }

    // REQUIRES car < cars().size() and that it is one of the model's.
    VehicleName vehicle(const NamedModel& model, std::size_t car) const;
    VehicleName vehicle(std::size_t car) const;
    std::vector<VehicleName> vehicles() const;

  private:
    friend class NameTableMaking;

    std::vector<KnownName> makes_, bodies_;
    std::vector<NamedModel> models_;
    std::vector<NamedCar> cars_;
    std::vector<std::string_view> last_parts_;
    std::deque<std::string> texts_;  // what the views point to
};

}  // namespace tapbook
