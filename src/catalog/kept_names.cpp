// Where do the names of all cars come from? From two packed values that are written again whenever a car changed; from
// the entries themselves when a value is missing, not understood, or the catalog is older than they are.
#include <fmt/format.h>

#include <algorithm>

#include "catalog/state.h"

namespace tapbook {
namespace {

enum class NamePart { names = 1, vin_patterns = 2 };
constexpr std::int32_t first_version_with_names = 2;

struct EntryNames {
    std::vector<VehicleName> cars;                   // in path order
    std::vector<std::vector<std::string>> patterns;  // VIN patterns of each
};

std::vector<std::string> canonical_patterns(std::string_view lines) {
    std::vector<std::string> patterns;
    while (!lines.empty()) {
        const auto end = std::min(lines.find('\n'), lines.size());
        const auto read = parse_vin_pattern(lines.substr(0, end));
        if (const auto* pattern = std::get_if<VinPattern>(&read)) patterns.push_back(pattern->text());
        lines.remove_prefix(std::min(end + 1, lines.size()));
    }
    return patterns;
}

EntryNames names_of_entries(sqlite::Database& database) {
    EntryNames names;
    auto rows = database.prepare(
        fmt::format("SELECT path, make, model, body, first_year, last_year, vin_patterns, retired FROM vehicle WHERE {}"
                    " ORDER BY path, revision DESC, shop DESC, id DESC",
                    not_by_blocked));
    std::string path_before;
    while (rows.step()) {
        const std::string path(rows.text(0));
        const bool overruled = path == path_before;
        path_before = path;
        if (overruled || !rows.is_null(7) || !names_a_vehicle(path)) continue;
        const auto text = [&](int column) { return std::string(rows.optional_text(column).value_or("")); };
        const auto year = [&](int column) { return static_cast<int>(rows.optional_integer(column).value_or(0)); };
        names.cars.push_back({path, text(1), text(2), text(3), year(4), year(5)});
        names.patterns.push_back(canonical_patterns(text(6)));
    }
    return names;
}

std::optional<std::string> stored(sqlite::Database& database, NamePart part, bool* has_aliases = nullptr) {
    if (database.user_version() < first_version_with_names) return std::nullopt;
    auto rows = database.prepare("SELECT bytes, EXISTS (SELECT 1 FROM alias) FROM packed_names WHERE part = ?1");
    rows.bind_all(static_cast<int>(part));
    if (!rows.step()) return std::nullopt;
    if (has_aliases != nullptr) *has_aliases = rows.integer(1) != 0;
    return std::string(rows.blob(0));
}

void store(sqlite::Database& database, NamePart part, const std::string& bytes) {
    if (stored(database, part) == bytes) return;
    auto put = database.prepare("INSERT OR REPLACE INTO packed_names (part, bytes) VALUES (?1, ?2)");
    put.bind_all(static_cast<int>(part), sqlite::BlobView{bytes});
    put.run();
}

}  // namespace

void keep_names(sqlite::Database& database) {
    EntryNames names = names_of_entries(database);
    store(database, NamePart::vin_patterns, pack_vin_patterns(names.patterns));
    store(database, NamePart::names, NameTable::of(std::move(names.cars)).pack());
}

KeptNames kept_names(sqlite::Database& database) {
    KeptNames kept;
    if (auto bytes = stored(database, NamePart::names, &kept.has_aliases))
        if (auto table = NameTable::unpack(std::move(*bytes))) {
            kept.table = std::move(*table);
            return kept;
        }
    kept.table = NameTable::of(names_of_entries(database).cars);
    kept.has_aliases = true;
    return kept;
}

bool has_kept_names(sqlite::Database& database) {
    auto rows = database.prepare("SELECT count(*) FROM packed_names");
    rows.step();
    return rows.integer(0) == 2;
}

bool names_are_current(sqlite::Database& database) {
    EntryNames names = names_of_entries(database);
    const auto patterns = stored(database, NamePart::vin_patterns), packed = stored(database, NamePart::names);
    return (!patterns || *patterns == pack_vin_patterns(names.patterns)) &&
           (!packed || *packed == NameTable::of(std::move(names.cars)).pack());
}

NameTable Catalog::names() const {
    try {
        return kept_names(state_->database).table;
    } catch (const sqlite::Error& error) {
        throw_catalog_error(error, state_->file);
    }
}

std::vector<VehicleName> Catalog::vehicle_names() const {
    return names().vehicles();
}

std::vector<VehicleHit> Catalog::vehicles_of_vin(const Vin& vin) const {
    try {
        const NameTable table = names();
        auto bytes = stored(state_->database, NamePart::vin_patterns);
        auto places = bytes ? cars_of_vin(*bytes, vin, table.cars().size()) : std::nullopt;
        if (!places)
            places =
                cars_of_vin(pack_vin_patterns(names_of_entries(state_->database).patterns), vin, table.cars().size());
        std::vector<VehicleHit> hits;
        const auto year = model_year(vin);
        for (const auto place : places.value_or(std::vector<std::size_t>())) {
            VehicleName car = table.vehicle(place);
            const bool fits = !year || (*year >= car.first_year && *year <= car.last_year);
            hits.push_back({std::move(car), 0, fits});
        }
        std::stable_partition(hits.begin(), hits.end(), [](const VehicleHit& hit) { return hit.year_fits; });
        return hits;
    } catch (const sqlite::Error& error) {
        throw_catalog_error(error, state_->file);
    }
}

}  // namespace tapbook
