// The writers, over one invented car.
#include "durability/writers.h"

#include "catalog/a_catalog.h"

namespace tapbook::disk {
namespace {

namespace fs = std::filesystem;

std::string tap_number(int number) {
    return car + "/base/pair-" + std::to_string(number) + "/plug";
}

constexpr int taps = 20;

void make_empty(const fs::path& file) {
    Catalog::create(file, "Tarrow Car Sound", CatalogKind::real, today, repeatable_random("durability"));
}

void make_usual(const fs::path& file) {
    make_car_with_taps(file, taps);
    add_notes(file, taps, 1);
}

}  // namespace

void make_car_with_taps(const fs::path& file, int count) {
    make_empty(file);
    Batch batch;
    batch.file = "car.toml";
    batch.entries = {entry(EntryKind::vehicle, car, vehicle_fields()),
                     entry(EntryKind::system, car + "/base", {{"name", ::words("plain")}})};
    for (int i = 0; i < count; ++i) {
        const std::string path = tap_number(i);
        batch.entries.push_back(
            entry(EntryKind::circuit, std::string(path_head(path, circuit_depth)), {{"role", ::words("speaker")}}));
        batch.entries.push_back(entry(EntryKind::tap, path, {{"place", ::words("radio")}}));
    }
    Catalog::open(file, Access::write).add(batch, false, today);
}

void add_notes(const fs::path& file, int count, int number) {
    Batch batch;
    batch.file = "notes.toml";
    for (int i = 0; i < count; ++i)
        batch.notes.push_back(note_at(tap_number(i), {{"positive", ::words("WH")},
                                                      {"negative", ::words("BK")},
                                                      {"initials", ::words("B" + std::to_string(number))}}));
    Catalog::open(file, Access::write).add(batch, false, today);
}

const std::vector<Writer>& writers() {
    static const std::vector<Writer> all = {
        {"make a catalog", [](const fs::path&) {}, make_empty},
        {"add entries", make_usual,
         [](const fs::path& file) { Catalog::open(file, Access::write).add(one_car(), false, today); }},
        {"add notes", make_usual, [](const fs::path& file) { add_notes(file, taps, 2); }},
    };
    return all;
}

std::string contents_of(const fs::path& file) {
    sqlite::Database database(file, sqlite::Open::read_only);
    std::vector<std::pair<std::string, std::int64_t>> tables;
    auto names = database.prepare(
        "SELECT name, (SELECT count(*) FROM pragma_table_info(name)) FROM sqlite_schema WHERE type = 'table' ORDER BY "
        "name");
    while (names.step()) tables.emplace_back(std::string(names.text(0)), names.integer(1));
    std::string contents;
    for (const auto& [table, columns] : tables) {
        std::string order, cells;
        auto fields = database.prepare("SELECT name FROM pragma_table_info('" + table + "')");
        while (fields.step()) {
            cells += (cells.empty() ? "quote(" : " || ',' || quote(") + std::string(fields.text(0)) + ")";
            order += (order.empty() ? "" : ", ") + std::string(fields.text(0));
        }
        auto rows = database.prepare("SELECT " + cells + " FROM " + table + " ORDER BY " + order);
        contents += table + "\n";
        while (rows.step()) contents += "  " + std::string(rows.text(0)) + "\n";
    }
    return contents;
}

std::string soundness_of(const fs::path& file) {
    sqlite::Database database(file, sqlite::Open::read_only);
    auto integrity = database.prepare("PRAGMA integrity_check");
    integrity.step();
    const std::string said(integrity.text(0));
    auto foreign = database.prepare("PRAGMA foreign_key_check");
    return said == "ok" && foreign.step() ? "foreign keys broken" : said;
}

}  // namespace tapbook::disk
