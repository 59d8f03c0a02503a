// Do the packed names always say what the entries say, and does a catalog work without them?
#include <algorithm>

#include "a_catalog.h"
#include "invented/cars.h"
#include "invented/catalog.h"

using namespace tapbook;

namespace {

Batch vehicle_batch(const std::string& path, Values more = {}) {
    Values values = vehicle_fields();
    for (auto& [key, value] : more) values[key] = std::move(value);
    Batch batch;
    batch.file = "car.toml";
    batch.entries = {entry(EntryKind::vehicle, path, std::move(values))};
    return batch;
}

std::vector<std::string> paths(const Catalog& catalog) {
    std::vector<std::string> all;
    for (const auto& name : catalog.vehicle_names()) all.push_back(name.path);
    return all;
}

// What is stored, bypassing the catalog.
void execute(const CatalogFolder& folder, const std::string& sql) {
    sqlite::Database(folder.file(), sqlite::Open::read_write).execute(sql);
}

bool current(const CatalogFolder& folder) {
    sqlite::Database database(folder.file(), sqlite::Open::read_only);
    auto rows = database.prepare("SELECT bytes FROM packed_names WHERE part = 1");
    REQUIRE(rows.step());
    const auto table = NameTable::unpack(std::string(rows.blob(0)));
    REQUIRE(table.has_value());
    return table->vehicles() == folder.open(Access::read).vehicle_names();
}

}  // namespace

TEST_CASE("a car is found by name as soon as it is saved, also after its entry changed or was retired") {
    CatalogFolder folder;
    auto catalog = folder.create();
    CHECK(catalog.vehicle_names().empty());
    catalog.add(one_car(), false, today);
    REQUIRE(paths(catalog) == std::vector<std::string>{car});
    catalog.add(vehicle_batch("pellor/nadrow/van/2001", {{"make", words("Pellor")}, {"model", words("Nadrow")}}), false,
                today);
    CHECK(paths(catalog) == std::vector<std::string>{car, "pellor/nadrow/van/2001"});
    catalog.add(vehicle_batch(car, {{"model", words("Vel Ostrel Plus")}, {"last_year", std::int64_t{2019}}}), false,
                today);
    CHECK(catalog.vehicle_names().front().model == "Vel Ostrel Plus");
    CHECK(catalog.vehicle_names().front().last_year == 2019);
    CHECK(current(folder));
    catalog.add(vehicle_batch(car, {{"retired", words("never existed")}}), false, today);
    CHECK(paths(catalog) == std::vector<std::string>{"pellor/nadrow/van/2001"});
    CHECK(current(folder));
}

TEST_CASE("a dry run and a refused file leave the names as they were") {
    CatalogFolder folder;
    auto catalog = folder.create();
    catalog.add(one_car(), false, today);
    catalog.add(vehicle_batch("pellor/nadrow/van/2001"), true, today);
    Batch twice = vehicle_batch("pellor/nadrow/van/2001");
    twice.entries.push_back(twice.entries.front());
    CHECK(complaints_of(catalog, twice).size() == 1);
    CHECK(paths(catalog) == std::vector<std::string>{car});
    CHECK(current(folder));
}

TEST_CASE("names that are gone, damaged or older are made from the entries, and written again with the next save") {
    for (const char* damage :
         {"DELETE FROM packed_names", "UPDATE packed_names SET bytes = x'54424e31'",
          "UPDATE packed_names SET bytes = x''", "UPDATE packed_names SET bytes = zeroblob(100)"}) {
        INFO(damage);
        CatalogFolder folder;
        folder.create().add(one_car(), false, today);
        execute(folder, damage);
        CHECK(paths(folder.open(Access::read)) == std::vector<std::string>{car});
        auto catalog = folder.open();
        catalog.add(vehicle_batch("pellor/nadrow/van/2001"), false, today);
        CHECK(current(folder));
        CHECK(paths(catalog).size() == 2);
    }
}

TEST_CASE("many cars put in together are the cars, notes and record ids that come one by one") {
    CatalogFolder one, many;
    const auto cars = invented::cars(11, 12);
    auto single = one.create(CatalogKind::practice), together = many.create(CatalogKind::practice);
    single.add(invented::shops(), false, today);
    together.add(invented::shops(), false, today);
    std::size_t next = 0;
    const auto report = together.add_many(
        [&]() -> std::optional<Batch> {
            if (next == cars.size()) return std::nullopt;
            const auto& named = cars[next++];
            return invented::car_batch(11, named, 40);
        },
        5, today);
    for (const auto& named : cars) single.add(invented::car_batch(11, named, 40), false, today);
    CHECK(report.written);
    CHECK(report.notes_new + report.notes_here == 12 * 40);
    CHECK(single.vehicle_names() == cars);
    CHECK(together.vehicle_names() == cars);
    for (const auto& named : cars) CHECK(single.note_lines(named.path) == together.note_lines(named.path));
    for (const auto* table : {"vehicle", "system", "circuit", "tap", "note", "subject"}) {
        INFO(table);
        CHECK(rows_of(one.file(), table) == rows_of(many.file(), table));
    }
    CHECK(current(many));
}

TEST_CASE("putting the same cars in together again adds nothing, and a refused car stops at the transaction before") {
    CatalogFolder folder;
    auto catalog = folder.create(CatalogKind::practice);
    catalog.add(invented::shops(), false, today);
    const auto cars = invented::cars(12, 6);
    const auto add_all = [&](std::size_t broken) {
        std::size_t next = 0;
        return catalog.add_many(
            [&]() -> std::optional<Batch> {
                if (next == cars.size()) return std::nullopt;
                Batch batch = invented::car_batch(12, cars[next], 20);
                if (next == broken) batch.entries.push_back(batch.entries.front());
                ++next;
                return batch;
            },
            2, today);
    };
    CHECK_THROWS_AS(add_all(3), InputRefused);
    CHECK(rows_of(folder.file(), "vehicle") == 2);  // the first transaction of two cars
    const auto first = add_all(cars.size());
    CHECK(first.entries_here > 0);
    CHECK(rows_of(folder.file(), "vehicle") == 6);
    const auto again = add_all(cars.size());
    CHECK(again.entries_new + again.entries_changed + again.notes_new == 0);
    CHECK(again.notes_here == 6 * 20);
}
