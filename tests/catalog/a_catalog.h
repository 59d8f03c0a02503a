// What do the tests of the catalog start from? A temporary folder, a catalog with a repeatable key, and one car as a
// file would draft it.
#pragma once

#include <stdlib.h>

#include <catch2/catch.hpp>
#include <filesystem>
#include <stdexcept>
#include <string>
#include <vector>

#include "catalog/catalog.h"
#include "sqlite/sqlite.h"

inline const std::string today = "2024-05-02";
inline const std::string car = "orrery/vel-ostrel/sedan/2012";
inline const std::string tap_path = car + "/base/front-left/radio-plug";

class CatalogFolder {
  public:
    CatalogFolder() {
        std::string name = (std::filesystem::temp_directory_path() / "tapbook-catalog-XXXXXX").string();
        if (mkdtemp(name.data()) == nullptr) throw std::runtime_error("no temporary folder");
        path_ = name;
    }
    ~CatalogFolder() {
        std::error_code ignored;
        std::filesystem::permissions(path_, std::filesystem::perms::owner_all, ignored);
        std::filesystem::remove_all(path_, ignored);
    }
    CatalogFolder(const CatalogFolder&) = delete;
    CatalogFolder& operator=(const CatalogFolder&) = delete;

    const std::filesystem::path& path() const { return path_; }
    std::filesystem::path operator/(const std::string& name) const { return path_ / name; }
    std::filesystem::path file() const { return path_ / "shop.sqlite"; }

    tapbook::Catalog create(tapbook::CatalogKind kind = tapbook::CatalogKind::real) const {
        return tapbook::Catalog::create(file(), "Tarrow Car Sound", kind, today,
                                        tapbook::repeatable_random("catalog tests"));
    }
    tapbook::Catalog open(tapbook::Access access = tapbook::Access::write) const {
        return tapbook::Catalog::open(file(), access);
    }

  private:
    std::filesystem::path path_;
};

inline tapbook::Value words(const std::string& text) {
    return text;
}

inline tapbook::EntryDraft entry(tapbook::EntryKind kind, const std::string& path, tapbook::Values values,
                                 int line = 1) {
    values["path"] = path;
    return {kind, std::move(values), {"car.toml", line, 1, "at = ..."}};
}

inline tapbook::NoteDraft note_at(const std::string& path, tapbook::Values values, int line = 1) {
    values["path"] = path;
    values.try_emplace("kind", words("pair"));
    values.try_emplace("date", words("2021-06-03"));
    values.try_emplace("method", words("metered"));
    return {std::move(values), "", "", {"car.toml", line, 6, "at = ..."}};
}

inline tapbook::Values vehicle_fields() {
    return {{"make", words("Orrery")},
            {"model", words("Vel Ostrel")},
            {"body", words("sedan")},
            {"first_year", std::int64_t{2012}},
            {"last_year", std::int64_t{2016}},
            {"battery_sensor", true},
            {"hazards", tapbook::TextList{"battery_in_cabin"}}};
}

// A car with one system, circuit and tap point, and one note.
inline tapbook::Batch one_car() {
    using tapbook::EntryKind;
    tapbook::Batch batch;
    batch.file = "car.toml";
    batch.entries = {entry(EntryKind::vehicle, car, vehicle_fields(), 1),
                     entry(EntryKind::system, car + "/base", {{"name", words("radio, four speakers")}}, 10),
                     entry(EntryKind::circuit, car + "/base/front-left",
                           {{"role", words("speaker")}, {"watts_mw", std::int64_t{18000}}}, 20),
                     entry(EntryKind::tap, tap_path,
                           {{"place", words("radio")}, {"panels", tapbook::TextList{"trim", "radio"}}}, 30)};
    batch.notes = {note_at(
        tap_path, {{"positive", words("WH")}, {"negative", words("WH/BK")}, {"ac_mv", std::int64_t{7500}}}, 40)};
    return batch;
}

// The trouble of the CatalogError that `action` throws; fails when it throws none.
template <class Action>
tapbook::CatalogTrouble trouble_of(Action action) {
    try {
        action();
    } catch (const tapbook::CatalogError& error) {
        CHECK_FALSE(std::string(error.what()).empty());
        CHECK_FALSE(error.hint().empty());
        return error.trouble();
    }
    FAIL("no trouble");
    return {};
}

// Each complaint as "line:column message | hint"; none when the batch is taken.
inline std::vector<std::string> complaints_of(tapbook::Catalog& catalog, const tapbook::Batch& batch) {
    try {
        catalog.add(batch, false, today);
        return {};
    } catch (const tapbook::InputRefused& refused) {
        std::vector<std::string> lines;
        for (const auto& complaint : refused.complaints())
            lines.push_back(std::to_string(complaint.place.line) + ":" + std::to_string(complaint.place.column) + " " +
                            complaint.message + (complaint.hint.empty() ? "" : " | " + complaint.hint));
        return lines;
    }
}

// Number of rows of a table.
inline std::int64_t rows_of(const std::filesystem::path& file, const std::string& table) {
    tapbook::sqlite::Database database(file, tapbook::sqlite::Open::read_only);
    auto rows = database.prepare("SELECT count(*) FROM " + table);
    rows.step();
    return rows.integer(0);
}
