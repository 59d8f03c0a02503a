// Does adding what was exported change nothing? For every file of the practice shop and for random cars and parts: no
// record is new, no record line changes, and an empty catalog of the same shop gets the very same notes.
#include <rapidcheck.h>

#include <catch2/catch.hpp>

#include "a_folder.h"
#include "embedded.h"
#include "files/files.h"
#include "random_batch.h"

using namespace tapbook;

namespace {

const std::string today = "2024-05-02";

Catalog made(const AFolder& folder, const std::string& name, CatalogKind kind) {
    return Catalog::create(folder / name, "Tarrowby", kind, today, repeatable_random("export tests"));
}

Catalog practice_shop(const AFolder& folder) {
    Catalog catalog = made(folder, "practice.sqlite", CatalogKind::practice);
    for (const std::string wanted : {"data/shops.toml", "data/parts.toml", "data/stock.toml", "vehicles/"})
        for (const auto& text : embedded_texts())
            if (text.name.starts_with(wanted)) catalog.add(read_batch(text.text, std::string(text.name)), false, today);
    return catalog;
}

// The file's text; every table of it must be live.
std::string live_text(const Extract& extract) {
    const WrittenFile file = write_batch(extract);
    for (const auto& table : file.commented) FAIL(table.what << ": " << table.reason << "\n" << file.text);
    return file.text;
}

bool adds_nothing(Catalog& catalog, const std::string& text) {
    const AddReport report = catalog.add(read_batch(text, "export.toml"), false, "2031-01-01");
    for (const auto& line : report.lines) UNSCOPED_INFO(line);
    return report.entries_new == 0 && report.entries_changed == 0 && report.notes_new == 0 && report.terms_changed == 0;
}

}  // namespace

TEST_CASE("exporting the practice shop and adding it again adds nothing, and all record lines stay") {
    AFolder folder;
    Catalog catalog = practice_shop(folder);
    const auto cars = catalog.vehicle_names();
    REQUIRE(cars.size() == 10);
    for (const auto& car : cars) {
        INFO(car.path);
        const auto before = catalog.note_lines(car.path);
        CHECK(adds_nothing(catalog, live_text(catalog.extract_vehicle(car.path))));
        CHECK(catalog.note_lines(car.path) == before);
    }
    CHECK(adds_nothing(catalog, live_text(catalog.extract_parts())));
    CHECK(adds_nothing(catalog, live_text(catalog.extract_stock())));
}

TEST_CASE("an empty catalog of the same shop gets the same notes and the same export from an export") {
    AFolder folder;
    const Catalog catalog = practice_shop(folder);
    Catalog empty = made(folder, "empty.sqlite", CatalogKind::practice);
    std::vector<std::string> texts = {live_text(catalog.extract_parts()), live_text(catalog.extract_stock())};
    for (const auto& car : catalog.vehicle_names()) texts.push_back(live_text(catalog.extract_vehicle(car.path)));
    for (const auto& text : texts) empty.add(read_batch(text, "export.toml"), false, today);
    CHECK(live_text(empty.extract_parts()) == texts[0]);
    CHECK(live_text(empty.extract_stock()) == texts[1]);
    std::size_t next = 2;
    for (const auto& car : catalog.vehicle_names()) {
        INFO(car.path);
        CHECK(empty.note_lines(car.path) == catalog.note_lines(car.path));
        CHECK(live_text(empty.extract_vehicle(car.path)) == texts[next++]);
    }
}

TEST_CASE("a random car survives export and adding, in its own catalog and in an empty one of the same shop") {
    CHECK(rc::check([] {
        AFolder folder;
        const Batch batch = random_batch::car_batch();
        const std::string car = text_field(batch.entries.front().values, "path");
        Catalog catalog = made(folder, "shop.sqlite", CatalogKind::real),
                empty = made(folder, "empty.sqlite", CatalogKind::real);
        catalog.add(batch, false, today);
        const std::string text = live_text(catalog.extract_vehicle(car));
        const auto lines = catalog.note_lines(car);
        RC_ASSERT(adds_nothing(catalog, text));
        RC_ASSERT(catalog.note_lines(car) == lines);
        empty.add(read_batch(text, "export.toml"), false, today);
        RC_ASSERT(empty.note_lines(car) == lines);
        RC_ASSERT(live_text(empty.extract_vehicle(car)) == text);
    }));
}

TEST_CASE("random parts and their terms, of retired parts too, survive export and adding") {
    CHECK(rc::check([] {
        AFolder folder;
        Catalog catalog = made(folder, "shop.sqlite", CatalogKind::real),
                empty = made(folder, "empty.sqlite", CatalogKind::real);
        catalog.add(random_batch::parts_batch(), false, today);
        for (const auto& extract : {catalog.extract_parts(), catalog.extract_stock()}) {
            const std::string text = live_text(extract);
            RC_ASSERT(adds_nothing(catalog, text));
            empty.add(read_batch(text, "export.toml"), false, today);
        }
        RC_ASSERT(live_text(empty.extract_parts()) == live_text(catalog.extract_parts()));
        RC_ASSERT(live_text(empty.extract_stock()) == live_text(catalog.extract_stock()));
    }));
}

TEST_CASE("a real catalog refuses every file that was exported from a practice catalog") {
    AFolder folder;
    const Catalog catalog = practice_shop(folder);
    Catalog real = made(folder, "real.sqlite", CatalogKind::real);
    for (const auto& extract : {catalog.extract_parts(), catalog.extract_stock(),
                                catalog.extract_vehicle(catalog.vehicle_names().front().path)}) {
        try {
            real.add(read_batch(write_batch(extract).text, "export.toml"), false, today);
            FAIL("taken");
        } catch (const InputRefused& refused) {
            REQUIRE(refused.complaints().size() == 1);
            const Complaint& complaint = refused.complaints().front();
            CHECK(complaint.message == "this file comes from a practice catalog: what it says is invented");
            CHECK(complaint.hint == "a real catalog takes nothing of it; add it to a practice shop (tapbook demo)");
            CHECK(complaint.place.line_text == "practice = true");
        }
    }
    CHECK(real.counts().converters == 0);
}
