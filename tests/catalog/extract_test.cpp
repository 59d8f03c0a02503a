// Which notes may a file add again, and which may it only show?
#include "a_catalog.h"
#include "catalog/state.h"

using namespace tapbook;

namespace {

// A note of another shop, as a pack would bring it.
void put_foreign_note(const CatalogFolder& folder, const std::string& shop) {
    sqlite::Database database(folder.file());
    NoteDraft draft = note_at(tap_path, {{"positive", words("BN")}});
    const Values record = note_record(draft.values, shop, false);
    LedgerWriting(database).insert(record, record_id(record_line(record)), true);
}

}  // namespace

TEST_CASE("an extract holds the entries and this shop's notes as the file said them") {
    CatalogFolder folder;
    auto catalog = folder.create();
    Batch batch = one_car();
    batch.notes[0].car_words = "AB 123 C";
    catalog.add(batch, false, today);
    const Extract extract = catalog.extract_vehicle(car);
    CHECK_FALSE(extract.batch.practice);
    REQUIRE(extract.batch.entries.size() == batch.entries.size());
    for (std::size_t i = 0; i < batch.entries.size(); ++i)
        CHECK(extract.batch.entries[i].values == batch.entries[i].values);
    REQUIRE(extract.batch.notes.size() == 1);
    Values note = extract.batch.notes[0].values;
    CHECK(text_field(note, "car").size() == 32);  // the token; the words are nowhere
    note.erase("car");
    CHECK(note == batch.notes[0].values);
    CHECK(extract.notes.empty());
}

TEST_CASE("a note of another shop stands beside the extract of a real catalog, never in it") {
    CatalogFolder folder;
    auto catalog = folder.create();
    catalog.add(one_car(), false, today);
    put_foreign_note(folder, "00112233445566778899aabbccddeeff");
    const Extract extract = catalog.extract_vehicle(car);
    CHECK(extract.batch.notes.size() == 1);
    REQUIRE(extract.notes.size() == 1);
    CHECK(extract.notes[0].reason == "of another shop, 00112233: only a pack signed by it can carry its notes");
    CHECK(text_field(extract.notes[0].note.values, "positive") == "BN");
}

TEST_CASE("a withdrawn note stands beside the extract, so that adding the file cannot bring it back") {
    CatalogFolder folder;
    auto catalog = folder.create();
    catalog.add(one_car(), false, today);
    {
        sqlite::Database database(folder.file());
        database.execute(
            "INSERT INTO withdrawal (target, id, path, shop, vouched, date, reason) SELECT id, x'00', 'p', "
            "shop, 1, '2024-05-02', 'typo' FROM note");
    }
    const Extract extract = catalog.extract_vehicle(car);
    CHECK(extract.batch.notes.empty());
    REQUIRE(extract.notes.size() == 1);
    CHECK(extract.notes[0].reason == "withdrawn (typo)");
}

TEST_CASE("in a practice catalog each note carries the code of its shop, also when the shop's name does not give it") {
    CatalogFolder folder;
    auto catalog = folder.create(CatalogKind::practice);
    Batch batch = one_car();
    batch.shops = {{"north", "Vennel & Sons", {}}};
    batch.notes[0].shop_code = "north";
    catalog.add(batch, false, today);
    const Extract extract = catalog.extract_vehicle(car);
    CHECK(extract.batch.practice);
    REQUIRE(extract.batch.notes.size() == 1);
    CHECK(extract.batch.notes[0].shop_code == "north");
    REQUIRE(extract.batch.shops.size() == 1);
    CHECK(extract.batch.shops[0].name == "Vennel & Sons");
}

TEST_CASE("an extract of an unknown vehicle is refused") {
    CatalogFolder folder;
    const auto catalog = folder.create();
    CHECK(trouble_of([&] { catalog.extract_vehicle("no/such/car/2000"); }) == CatalogTrouble::not_found);
}
