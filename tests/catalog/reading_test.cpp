// Does a reader see one moment of the file for each question, and the newest for the next one?
#include "a_catalog.h"

using namespace tapbook;

namespace {

Batch another_note(const std::string& date) {
    Batch batch;
    batch.file = "more.toml";
    batch.notes = {note_at(tap_path, {{"positive", words("WH")}, {"negative", words("WH/BK")}, {"date", words(date)}})};
    return batch;
}

}  // namespace

TEST_CASE("a reader that stays open sees what others have added since its last question") {
    const CatalogFolder folder;
    Catalog writer = folder.create();
    writer.add(one_car(), false, today);
    const Catalog reader = folder.open(Access::read);
    CHECK(reader.car(car, {}).taps.front().pair.notes == 1);
    writer.add(another_note("2022-01-05"), false, today);
    CHECK(reader.car(car, {}).taps.front().pair.notes == 2);
}

TEST_CASE("a question leaves no lock behind: the next writer writes, and the log is emptied") {
    const CatalogFolder folder;
    folder.create().add(one_car(), false, today);
    const Catalog reader = folder.open(Access::read);
    REQUIRE(reader.car(car, {}).taps.size() == 1);
    sqlite::Database other(folder.file());
    CHECK_NOTHROW(other.execute("BEGIN IMMEDIATE; UPDATE setting SET value = 'x' WHERE name = 'created'; COMMIT"));
    auto checkpoint = other.prepare("PRAGMA wal_checkpoint(TRUNCATE)");
    REQUIRE(checkpoint.step());
    CHECK(checkpoint.integer(0) == 0);  // 1: a reader stood in the way (https://www.sqlite.org/pragma.html)
}

TEST_CASE("a car that is not there leaves no lock behind either") {
    const CatalogFolder folder;
    Catalog writer = folder.create();
    const Catalog reader = folder.open(Access::read);
    CHECK_THROWS_AS(reader.car(car, {}), CatalogError);
    writer.add(one_car(), false, today);
    CHECK(reader.car(car, {}).vehicle.make == "Orrery");
}
