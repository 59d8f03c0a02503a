// What does adding a batch do to the entries? New, changed and known ones, hazards that only grow, terms, dry runs.
#include "a_catalog.h"

using namespace tapbook;

namespace {

Batch only(EntryDraft draft) {
    Batch batch;
    batch.file = "car.toml";
    batch.entries = {std::move(draft)};
    return batch;
}

Batch vehicle_with(const std::string& key, Value value) {
    Values fields = vehicle_fields();
    fields[key] = std::move(value);
    return only(entry(EntryKind::vehicle, car, fields));
}

std::vector<std::string> hazards(const Catalog& catalog) {
    std::vector<std::string> found;
    for (const auto hazard : catalog.car(car, {}).vehicle.hazards) found.emplace_back(word_of(hazard));
    return found;
}

}  // namespace

TEST_CASE("a first adding puts everything in and says so") {
    CatalogFolder folder;
    auto catalog = folder.create();
    const auto report = catalog.add(one_car(), false, today);
    CHECK(report.written);
    CHECK(report.entries_new == 4);
    CHECK(report.notes_new == 1);
    CHECK(report.entries_changed + report.entries_here + report.notes_here == 0);
    REQUIRE(report.lines.size() == 4);
    CHECK(report.lines[0] == "new      vehicle   " + car);
    CHECK(report.lines[3] == "new      tap       " + tap_path);
    const auto counts = catalog.counts();
    CHECK(std::tuple(counts.vehicles, counts.systems, counts.circuits, counts.taps, counts.notes) ==
          std::tuple(1, 1, 1, 1, 1));
    const auto facts = catalog.car(car, {});
    CHECK(facts.vehicle.model == "Vel Ostrel");
    CHECK(facts.vehicle.battery_sensor == true);
    REQUIRE(facts.taps.size() == 1);
    CHECK(facts.taps[0].code == tap_path);
    CHECK(facts.taps[0].system == "base");
    CHECK(facts.taps[0].tap.panels == TextList{"trim", "radio"});
}

TEST_CASE("adding the same batch again adds nothing, whatever the day") {
    CatalogFolder folder;
    auto catalog = folder.create();
    catalog.add(one_car(), false, today);
    const auto lines = catalog.note_lines(car);
    for (const std::string day : {today.c_str(), "2031-12-31"}) {
        const auto report = catalog.add(one_car(), false, day);
        CHECK(report.entries_here == 4);
        CHECK(report.notes_here == 1);
        CHECK(report.entries_new + report.entries_changed + report.notes_new == 0);
        CHECK(report.lines.empty());
        CHECK(report.moves.empty());
    }
    CHECK(catalog.note_lines(car) == lines);
    CHECK(rows_of(folder.file(), "vehicle") == 1);
    CHECK(rows_of(folder.file(), "note") == 1);
    CHECK(rows_of(folder.file(), "action") == 1);  // what added nothing is nothing to undo
}

TEST_CASE("a changed entry becomes the next revision and the old row stays") {
    CatalogFolder folder;
    auto catalog = folder.create();
    catalog.add(one_car(), false, today);
    const auto report = catalog.add(vehicle_with("last_year", std::int64_t{2017}), false, "2024-06-01");
    CHECK(report.entries_changed == 1);
    CHECK(report.lines == std::vector<std::string>{"changed  vehicle   " + car});
    CHECK(catalog.car(car, {}).vehicle.last_year == 2017);
    CHECK(catalog.counts().vehicles == 1);
    sqlite::Database database(folder.file(), sqlite::Open::read_only);
    auto rows = database.prepare("SELECT revision, last_year, date FROM vehicle ORDER BY revision");
    REQUIRE(rows.step());
    CHECK(std::tuple(rows.integer(0), rows.integer(1), std::string(rows.text(2))) == std::tuple(1, 2016, today));
    REQUIRE(rows.step());
    CHECK(std::tuple(rows.integer(0), rows.integer(1), std::string(rows.text(2))) ==
          std::tuple(2, 2017, std::string("2024-06-01")));
    CHECK_FALSE(rows.step());
}

TEST_CASE("a field left out of the file is taken out of the entry, by a new revision") {
    CatalogFolder folder;
    auto catalog = folder.create();
    catalog.add(one_car(), false, today);
    Values fields = vehicle_fields();
    fields.erase("battery_sensor");
    CHECK(catalog.add(only(entry(EntryKind::vehicle, car, fields)), false, today).entries_changed == 1);
    CHECK(catalog.car(car, {}).vehicle.battery_sensor == std::nullopt);
}

TEST_CASE("going back to an earlier state is a third revision, not the first again") {
    CatalogFolder folder;
    auto catalog = folder.create();
    catalog.add(one_car(), false, today);
    catalog.add(vehicle_with("last_year", std::int64_t{2017}), false, today);
    CHECK(catalog.add(vehicle_with("last_year", std::int64_t{2016}), false, today).entries_changed == 1);
    CHECK(catalog.car(car, {}).vehicle.last_year == 2016);
    CHECK(rows_of(folder.file(), "vehicle") == 3);
}

TEST_CASE("hazards only grow") {
    CatalogFolder folder;
    auto catalog = folder.create();
    catalog.add(one_car(), false, today);
    CHECK(catalog.add(vehicle_with("hazards", TextList{"battery_in_cabin", "exhaust"}), false, today).entries_changed ==
          1);
    CHECK(hazards(catalog) == std::vector<std::string>{"battery_in_cabin", "exhaust"});
    // fewer hazards and nothing else: nothing new is said
    CHECK(catalog.add(vehicle_with("hazards", TextList{"exhaust"}), false, today).entries_here == 1);
    CHECK(catalog.add(vehicle_with("hazards", TextList{}), false, today).entries_here == 1);
    CHECK(hazards(catalog).size() == 2);
}

TEST_CASE("an edit of something else takes no hazard away, and is known when it comes again") {
    CatalogFolder folder;
    auto catalog = folder.create();
    catalog.add(one_car(), false, today);
    for (const bool listed : {true, false}) {
        INFO(listed);
        auto fields = vehicle_fields();
        fields["hazards"] = TextList{};
        if (!listed) fields.erase("hazards");
        fields["last_year"] = std::int64_t{listed ? 2018 : 2019};
        const auto edit = only(entry(EntryKind::vehicle, car, fields));
        CHECK(catalog.add(edit, false, today).entries_changed == 1);
        CHECK(hazards(catalog) == std::vector<std::string>{"battery_in_cabin"});
        CHECK(catalog.add(edit, false, today).entries_here == 1);
    }
}

TEST_CASE("that somebody looked and found no hazard is itself a change") {
    CatalogFolder folder;
    auto catalog = folder.create();
    auto fields = vehicle_fields();
    fields.erase("hazards");
    catalog.add(only(entry(EntryKind::vehicle, car, fields)), false, today);
    CHECK_FALSE(catalog.car(car, {}).vehicle.hazards_listed);
    fields["hazards"] = TextList{};
    CHECK(catalog.add(only(entry(EntryKind::vehicle, car, fields)), false, today).entries_changed == 1);
    CHECK(catalog.car(car, {}).vehicle.hazards_listed);
    CHECK(catalog.add(only(entry(EntryKind::vehicle, car, fields)), false, today).entries_here == 1);
}

TEST_CASE("a retired entry is no longer shown, its rows stay, and retiring it again adds nothing") {
    CatalogFolder folder;
    auto catalog = folder.create();
    catalog.add(one_car(), false, today);
    const auto retired =
        only(entry(EntryKind::tap, tap_path, {{"place", words("radio")}, {"retired", words("recorded twice")}}));
    CHECK(catalog.add(retired, false, today).entries_changed == 1);
    CHECK_FALSE(catalog.has_entry(EntryKind::tap, tap_path));
    CHECK(catalog.car(car, {}).taps.empty());
    CHECK(catalog.add(retired, false, today).entries_here == 1);
    CHECK(rows_of(folder.file(), "tap") == 2);
    CHECK(catalog.note_lines(car).size() == 1);  // what was found stays found
    const auto back = only(entry(EntryKind::tap, tap_path, {{"place", words("radio")}}));
    CHECK(catalog.add(back, false, today).entries_changed == 1);
    CHECK(catalog.has_entry(EntryKind::tap, tap_path));
}

TEST_CASE("a dry run reports the same and writes nothing") {
    CatalogFolder folder;
    auto catalog = folder.create();
    const auto rehearsed = catalog.add(one_car(), true, today);
    CHECK_FALSE(rehearsed.written);
    CHECK(rehearsed.entries_new == 4);
    CHECK(rehearsed.notes_new == 1);
    for (const char* table : {"vehicle", "system", "circuit", "tap", "note", "subject", "action", "terms"})
        CHECK(rows_of(folder.file(), table) == 0);
    CHECK_THROWS_AS(catalog.car(car, {}), CatalogError);
    CHECK(catalog.add(one_car(), false, today).lines == rehearsed.lines);
    const auto lines = catalog.note_lines(car);
    Batch more = vehicle_with("last_year", std::int64_t{2020});
    more.notes = {note_at(tap_path, {{"positive", words("GY")}})};
    CHECK(catalog.add(more, true, today).notes_new == 1);
    CHECK(catalog.note_lines(car) == lines);
    CHECK(catalog.counts().notes == 1);
    CHECK(catalog.car(car, {}).vehicle.last_year == 2016);
    CHECK(rows_of(folder.file(), "action") == 1);
}

TEST_CASE("a refused batch writes nothing of itself") {
    CatalogFolder folder;
    auto catalog = folder.create();
    Batch batch = one_car();
    batch.notes.push_back(note_at(car + "/base/front-left/no-such-plug", {}));
    CHECK_THROWS_AS(catalog.add(batch, false, today), InputRefused);
    for (const char* table : {"vehicle", "system", "note", "subject", "action"})
        CHECK(rows_of(folder.file(), table) == 0);
}

TEST_CASE("terms are the shop's own: a later file replaces them, and they are no entry") {
    CatalogFolder folder;
    auto catalog = folder.create();
    Batch parts = only(
        entry(EntryKind::converter, "wendric-two", {{"name", words("Plain Two")}, {"topology", words("transformer")}}));
    catalog.add(parts, false, today);
    Batch stock;
    stock.file = "stock.toml";
    stock.terms = {{"wendric-two", {1995, 3, std::nullopt, 0, std::nullopt}, {"stock.toml", 1, 1, ""}}};
    CHECK(catalog.add(stock, false, today).terms_changed == 1);
    CHECK(catalog.add(stock, false, today).terms_here == 1);
    stock.terms[0].terms.on_hand = 4;
    CHECK(catalog.add(stock, false, today).terms_changed == 1);
    REQUIRE(catalog.converters().size() == 1);
    CHECK(catalog.converters()[0].terms == Terms{1995, 3, std::nullopt, 4, std::nullopt});
    CHECK(rows_of(folder.file(), "converter") == 1);
    stock.terms[0].part = "no-such-part";
    CHECK(complaints_of(catalog, stock) ==
          std::vector<std::string>{"1:1 there is no part \"no-such-part\" | add the parts file first; a lead, fuse, "
                                   "relay or cable says what it is: small = \"fuse\""});
}
