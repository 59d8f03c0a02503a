// See name_table.h.
#include "catalog/name_table.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <map>

#include "trade/trade.h"

namespace tapbook {
namespace {

// make/model/body/rest; nothing for a path with fewer parts.
std::optional<std::array<std::string_view, vehicle_depth>> four_parts(std::string_view path) {
    std::array<std::string_view, vehicle_depth> parts;
    for (std::size_t i = 0; i + 1 < parts.size(); ++i) {
        const auto slash = path.find('/');
        if (slash == std::string_view::npos) return std::nullopt;
        parts[i] = path.substr(0, slash);
        path.remove_prefix(slash + 1);
    }
    parts.back() = path;
    return parts;
}

std::uint16_t small_year(int year) {
    return static_cast<std::uint16_t>(std::clamp(year, 0, 0xffff));
}

}  // namespace

bool names_a_vehicle(std::string_view path) {
    return four_parts(path).has_value();
}

// Gathers names into lists, each once.
class NameTableMaking {
  public:
    void add(const VehicleName& car) {
        const auto parts = four_parts(car.path);
        if (!parts) return;
        const auto& [make_slug, model_slug, body_slug, last_part] = *parts;
        const std::uint32_t make = place_of(makes_, table_.makes_, car.make, make_slug);
        const bool same_model = !table_.models_.empty() && table_.models_.back().make == make &&
                                table_.models_.back().name.shown == car.model &&
                                table_.models_.back().name.slug == model_slug;
        if (!same_model)
            table_.models_.push_back(
                {known(car.model, model_slug), make, static_cast<std::uint32_t>(table_.cars_.size()), 0});
        ++table_.models_.back().cars;
        const auto body = place_of(bodies_, table_.bodies_, car.body, body_slug);
        auto [last, is_new] = last_parts_.try_emplace(std::string(last_part), table_.last_parts_.size());
        if (is_new) table_.last_parts_.push_back(kept(last_part));
        table_.cars_.push_back(
            {body, static_cast<std::uint32_t>(last->second), small_year(car.first_year), small_year(car.last_year)});
    }

    NameTable take() { return std::move(table_); }

  private:
    using Places = std::map<std::pair<std::string, std::string>, std::uint32_t>;

    std::string_view kept(std::string_view text) { return table_.texts_.emplace_back(text); }

    KnownName known(std::string_view shown_text, std::string_view slug) {
        const std::string words = folded(shown_text);
        std::string glued = words;
        std::erase(glued, ' ');
        return {kept(shown_text), kept(slug), kept(words), kept(glued)};
    }

    std::uint32_t place_of(Places& places, std::vector<KnownName>& names, const std::string& shown_text,
                           std::string_view slug) {
        const auto [found, is_new] =
            places.try_emplace({shown_text, std::string(slug)}, static_cast<std::uint32_t>(names.size()));
        if (is_new) names.push_back(known(shown_text, slug));
        return found->second;
    }

    NameTable table_;
    Places makes_, bodies_;
    std::map<std::string, std::size_t> last_parts_;
};

NameTable NameTable::of(std::vector<VehicleName> cars) {
    std::sort(cars.begin(), cars.end(), [](const VehicleName& a, const VehicleName& b) { return a.path < b.path; });
    NameTableMaking making;
    for (const auto& car : cars) making.add(car);
    return making.take();
}

VehicleName NameTable::vehicle(const NamedModel& model, std::size_t car) const {
    const NamedCar& one = cars_[car];
    const KnownName &make = makes_[model.make], &body = bodies_[one.body];
    return {fmt::format("{}/{}/{}/{}", make.slug, model.name.slug, body.slug, last_part(one)),
            std::string(make.shown),
            std::string(model.name.shown),
            std::string(body.shown),
            one.first_year,
            one.last_year};
}

VehicleName NameTable::vehicle(std::size_t car) const {
    const auto after = std::upper_bound(models_.begin(), models_.end(), car,
                                        [](std::size_t place, const NamedModel& one) { return place < one.first_car; });
    return vehicle(*std::prev(after), car);
}

std::vector<VehicleName> NameTable::vehicles() const {
    std::vector<VehicleName> all;
    all.reserve(cars_.size());
    for (const auto& model : models_)
        for (std::uint32_t i = 0; i < model.cars; ++i) all.push_back(vehicle(model, model.first_car + i));
    return all;
}

}  // namespace tapbook
