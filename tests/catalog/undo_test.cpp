// Undo reverses the last own action by adding: nothing that was written is ever lost.
#include "a_catalog.h"

using namespace tapbook;

namespace {

std::string undo_refusal(Catalog& catalog) {
    try {
        catalog.undo(today);
    } catch (const CatalogError& error) {
        return std::string(error.what()) + " | " + error.hint();
    }
    return "undone";
}

Batch parts(std::int64_t cents, std::int64_t on_hand) {
    Batch batch;
    batch.file = "stock.toml";
    batch.entries = {entry(EntryKind::converter, "orlin-two", {{"name", words("Two")}, {"channels", std::int64_t{2}}})};
    Terms terms;
    terms.cost_cents = cents;
    terms.on_hand = static_cast<int>(on_hand);
    batch.terms = {{"orlin-two", terms, {"stock.toml", 9, 1, ""}}};
    return batch;
}

using Lines = std::vector<std::string>;

}  // namespace

TEST_CASE("an empty catalog has nothing to undo") {
    CatalogFolder folder;
    auto catalog = folder.create();
    CHECK(undo_refusal(catalog) ==
          "there is nothing to undo | undo reverses what this shop added: notes, files, terms");
}

TEST_CASE("undoing a file retires its new entries and withdraws its notes, and a second undo finds nothing") {
    CatalogFolder folder;
    auto catalog = folder.create();
    catalog.add(one_car(), false, today);
    const auto lines = catalog.note_lines(car);
    const auto report = catalog.undo("2024-05-03");
    CHECK(report.words == "add car.toml");
    CHECK(report.notes_withdrawn == 1);
    CHECK(report.entries_retired == 4);
    CHECK(report.lines.back() == "retired    vehicle   " + car);
    REQUIRE(report.moves.size() == 1);
    CHECK(report.moves[0].after == Grade::pulled);
    CHECK(catalog.vehicle_names().empty());
    CHECK(catalog.note_lines(car) == lines);
    CHECK(undo_refusal(catalog).starts_with("there is nothing to undo"));
    CHECK(rows_of(folder.file(), "vehicle") == 2);  // the old revision and the retired one
}

TEST_CASE("a changed entry gets back the values it had, hazards of the change too") {
    CatalogFolder folder;
    auto catalog = folder.create();
    catalog.add(one_car(), false, today);
    const CarFacts before = catalog.car(car, {});
    Batch change = one_car();
    change.entries[3].values["place"] = words("trunk");
    change.entries[3].values["hazards"] = TextList{"exhaust"};
    catalog.add(change, false, "2024-05-03");
    CHECK(catalog.car(car, {}).taps.at(0).tap.place == "trunk");
    const auto report = catalog.undo("2024-05-04");
    CHECK(report.entries_put_back == 1);
    CHECK(report.entries_retired == 0);
    const CarFacts after = catalog.car(car, {});
    CHECK(after.taps.at(0).tap.place == before.taps.at(0).tap.place);
    CHECK(after.taps.at(0).tap.hazards.empty());
    CHECK(rows_of(folder.file(), "tap") == 3);
}

TEST_CASE("terms come back as they were, and go where there were none") {
    CatalogFolder folder;
    auto catalog = folder.create();
    catalog.add(parts(2495, 4), false, today);
    catalog.add(parts(2995, 1), false, today);
    CHECK(catalog.converters().at(0).terms.cost_cents == 2995);
    CHECK(catalog.undo(today).terms_restored == 1);
    CHECK(catalog.converters().at(0).terms.cost_cents == 2495);
    CHECK(catalog.converters().at(0).terms.on_hand == 4);
    catalog.undo(today);
    CHECK(catalog.converters().empty());
    CHECK(rows_of(folder.file(), "terms") == 0);
}

TEST_CASE("actions are undone one by one from the last, and an undo is not undone") {
    CatalogFolder folder;
    auto catalog = folder.create();
    catalog.add(one_car(), false, today);
    Batch second;
    second.file = "more.toml";
    second.notes = {note_at(tap_path, {{"positive", words("WH")}, {"negative", words("WH/BK")}})};
    second.notes[0].car_words = "CD 2";
    catalog.add(second, false, today);
    CHECK(catalog.undo(today).words == "add more.toml");
    CHECK(catalog.undo(today).words == "add car.toml");
    CHECK(undo_refusal(catalog).starts_with("there is nothing to undo"));
}

TEST_CASE("a withdrawal is final: undo says to note it again") {
    CatalogFolder folder;
    auto catalog = folder.create();
    catalog.add(one_car(), false, today);
    const RecordId note = record_id(catalog.note_lines(car).at(0));
    catalog.withdraw(note, WithdrawalReason::typo, today);
    CHECK(undo_refusal(catalog) == "the last action was \"withdraw note " + to_hex(note).substr(0, 8) + " of " +
                                       tap_path +
                                       "\": a withdrawal is final | note it again: `tapbook note VEHICLE TAP ...` (it "
                                       "was on " +
                                       tap_path + ")");
}

TEST_CASE("a dry run of undo prints the same lines and changes nothing") {
    CatalogFolder folder;
    auto catalog = folder.create();
    catalog.add(one_car(), false, today);
    const auto promised = catalog.undo(today, true);
    CHECK_FALSE(promised.written);
    CHECK(catalog.vehicle_names().size() == 1);
    const auto done = catalog.undo(today);
    CHECK(done.written);
    CHECK(promised.lines == done.lines);
    CHECK(promised.moves.size() == done.moves.size());
}

TEST_CASE("what was undone can be added again from the same file: entries come back, withdrawn notes do not") {
    CatalogFolder folder;
    auto catalog = folder.create();
    catalog.add(one_car(), false, today);
    catalog.undo(today);
    const auto report = catalog.add(one_car(), false, today);
    CHECK(report.entries_changed == 4);
    CHECK(report.notes_here == 1);
    CHECK(catalog.car(car, {}).taps.at(0).pair.pair.grade == Grade::pulled);
}
