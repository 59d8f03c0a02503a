// Does adding what was exported as a spreadsheet change nothing? For the whole practice shop and for random notes and
// converters, through the mappings that travel with the program.
#include <rapidcheck.h>

#include <catch2/catch.hpp>

#include "a_folder.h"
#include "a_vehicle_file.h"
#include "embedded.h"
#include "files/files.h"
#include "files/local_fields.h"
#include "random_batch.h"

using namespace tapbook;

namespace {

const std::string today = "2024-05-02";

Catalog made(const AFolder& folder, const std::string& name, CatalogKind kind) {
    return Catalog::create(folder / name, "Tarrowby", kind, today, repeatable_random("export tests"));
}

Mapping shipped(const std::string& name) {
    for (const auto& text : embedded_texts())
        if (text.name == "mappings/" + name + ".toml") return read_mapping(text.text, name);
    throw std::logic_error("no mapping " + name);
}

RowCar no_car(const std::string& words) {
    throw std::logic_error("not a path: " + words);
}

RowsReport added(Catalog& catalog, const std::string& text, const std::string& mapping) {
    const ReadRows rows = read_rows(text, "export.csv", shipped(mapping), no_car);
    const RowFates fates = catalog.add_rows(rows.batch, RefusedRows::hold_back, false, "2031-01-01");
    RowsReport report = rows_report(rows, mapping, fates, RefusedRows::hold_back);
    for (const auto& row : report.rows)
        for (const auto& one : row.complaints)
            UNSCOPED_INFO(row.number << " " << one.column << ": " << one.complaint.message);
    return report;
}

bool adds_nothing(Catalog& catalog, const std::string& text, const std::string& mapping, int rows) {
    const RowsReport report = added(catalog, text, mapping);
    return report.here == rows && report.added == 0 && report.changed == 0 && report.refused == 0;
}

}  // namespace

TEST_CASE("the practice shop's notes, converters and stock come back from spreadsheets as already here") {
    AFolder folder;
    Catalog catalog = made(folder, "practice.sqlite", CatalogKind::practice);
    for (const std::string wanted : {"data/shops.toml", "data/parts.toml", "data/stock.toml", "vehicles/"})
        for (const auto& text : embedded_texts())
            if (text.name.starts_with(wanted)) catalog.add(read_batch(text.text, std::string(text.name)), false, today);
    for (const auto& car : catalog.vehicle_names()) {
        INFO(car.path);
        const WrittenFile file = notes_csv(catalog.extract_vehicle(car.path));
        CHECK(file.commented.empty());
        const auto before = catalog.note_lines(car.path);
        CHECK(adds_nothing(catalog, file.text, "notes", file.notes));
        CHECK(catalog.note_lines(car.path) == before);
    }
    const WrittenFile converters = converters_csv(catalog.extract_parts(), catalog.extract_stock());
    CHECK(converters.entries == 12);
    CHECK(adds_nothing(catalog, converters.text, "converters", 12));
    CHECK(adds_nothing(catalog, converters.text, "stock", converters.terms));
    const WrittenFile amplifiers = amplifiers_csv(catalog.extract_parts(), catalog.extract_stock());
    CHECK(amplifiers.entries == catalog.counts().amplifiers);
    CHECK(adds_nothing(catalog, amplifiers.text, "amplifiers", amplifiers.entries));
    CHECK(adds_nothing(catalog, amplifiers.text, "stock", amplifiers.terms));
}

TEST_CASE("random notes survive a spreadsheet, in their own catalog and in one that has only the car") {
    CHECK(rc::check([] {
        AFolder folder;
        Batch batch = random_batch::car_batch();
        for (auto& entry : batch.entries) entry.values.erase("retired");
        const std::string car = text_field(batch.entries.front().values, "path");
        Catalog catalog = made(folder, "shop.sqlite", CatalogKind::real),
                bare = made(folder, "bare.sqlite", CatalogKind::real);
        catalog.add(batch, false, today);
        const WrittenFile file = notes_csv(catalog.extract_vehicle(car));
        RC_ASSERT(file.commented.empty());
        const auto lines = catalog.note_lines(car);
        RC_ASSERT(adds_nothing(catalog, file.text, "notes", file.notes));
        RC_ASSERT(catalog.note_lines(car) == lines);
        batch.notes.clear();
        bare.add(batch, false, today);
        RC_ASSERT(added(bare, file.text, "notes").added == static_cast<int>(lines.size()));
        RC_ASSERT(bare.note_lines(car) == lines);
        RC_ASSERT(notes_csv(bare.extract_vehicle(car)).text == file.text);
    }));
}

TEST_CASE("random converters and their terms survive a spreadsheet, retired ones too") {
    CHECK(rc::check([] {
        AFolder folder;
        Catalog catalog = made(folder, "shop.sqlite", CatalogKind::real),
                empty = made(folder, "empty.sqlite", CatalogKind::real);
        catalog.add(random_batch::parts_batch(), false, today);
        const auto text_of = [](const Catalog& of) {
            return converters_csv(of.extract_parts(), of.extract_stock()).text;
        };
        const std::string text = text_of(catalog);
        RC_ASSERT(adds_nothing(catalog, text, "converters", 2));
        RC_ASSERT(adds_nothing(catalog, text, "stock", 2));
        RC_ASSERT(added(empty, text, "converters").added == 2);
        RC_ASSERT(added(empty, text, "stock").added == 2);
        RC_ASSERT(text_of(empty) == text);
    }));
}

TEST_CASE("notes that must not be added again stand in the spreadsheet with their reason, and are passed over") {
    AFolder folder;
    Catalog catalog = made(folder, "shop.sqlite", CatalogKind::real);
    const std::string second = with(vehicle_file.substr(vehicle_file.find("[[note]]")), "2021-06-03", "2021-06-04");
    catalog.add(read_batch(vehicle_file + second, "car.toml"), false, today);
    const std::string car = catalog.vehicle_names().front().path;
    catalog.withdraw(record_id(catalog.note_lines(car).front()), WithdrawalReason::typo, today);
    WrittenFile file = notes_csv(catalog.extract_vehicle(car));
    CHECK(file.notes == 1);
    REQUIRE(file.commented.size() == 1);
    CHECK(file.commented.front().reason == "withdrawn (typo)");
    RowsReport report = added(catalog, file.text, "notes");
    CHECK(report.here == 1);
    CHECK(report.passed_over == 1);
    catalog.add(
        read_batch(with(vehicle_file, "place = \"radio\"\n", "place = \"radio\"\nretired = \"moved\"\n"), "car.toml"),
        false, today);
    file = notes_csv(catalog.extract_vehicle(car));
    CHECK(file.notes == 0);
    REQUIRE(file.commented.size() == 2);
    CHECK(file.commented.front().reason == "its place is retired: notes on it stay, none are added");
    report = added(catalog, file.text, "notes");
    CHECK(report.refused == 0);
    CHECK(report.passed_over == 2);
}

TEST_CASE("a real catalog refuses the spreadsheets of a practice catalog as a whole") {
    AFolder folder;
    Catalog practice = made(folder, "practice.sqlite", CatalogKind::practice),
            real = made(folder, "real.sqlite", CatalogKind::real);
    practice.add(
        read_batch("[[converter]]\ncode = \"low-one\"\nname = \"Low One\"\ntopology = \"transformer\"\n", "parts.toml"),
        false, today);
    const std::string text = converters_csv(practice.extract_parts(), practice.extract_stock()).text;
    CHECK_THROWS_WITH(added(real, text, "converters"),
                      "this file comes from a practice catalog: what it says is invented");
    CHECK(real.counts().converters == 0);
}

TEST_CASE("each shipped mapping names every field of its rows") {
    for (const std::string name : {"notes", "converters", "amplifiers", "stock"}) {
        const Mapping mapping = shipped(name);
        for (const auto& key : mapped_keys(mapping.rows)) {
            const bool is_given_otherwise = key.name == "system" || key.name == "circuit" || key.name == "tap" ||
                                            key.name == "car" || key.name == "pair";
            // The table of the converters holds no small parts.
            const auto terms = terms_fields();
            const bool is_of_small_part =
                name == "stock" && key.name != "part" &&
                std::none_of(terms.begin(), terms.end(), [&](const Field& field) { return field.name == key.name; });
            INFO(name << ": " << key.name);
            CHECK((is_given_otherwise || is_of_small_part ||
                   std::any_of(mapping.columns.begin(), mapping.columns.end(),
                               [&](const auto& column) { return column.first.name == key.name; })));
        }
    }
}
