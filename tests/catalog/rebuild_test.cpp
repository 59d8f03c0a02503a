// Is what is derived the same, byte for byte, whether it grew or was worked out anew?
#include <algorithm>
#include <random>

#include "a_catalog.h"

using namespace tapbook;

namespace {

// Everything derived, in order: the numbers of paths, the order of the ledger, the packed names.
std::string derived_tables(const std::filesystem::path& file) {
    sqlite::Database database(file, sqlite::Open::read_only);
    std::string dump;
    for (const char* query : {"SELECT tap || ' ' || vehicle || ' ' || path FROM subject ORDER BY tap",
                              "SELECT vehicle || ' ' || tap || ' ' || hex(id) FROM note ORDER BY vehicle, tap, id",
                              "SELECT part || ' ' || hex(bytes) FROM packed_names ORDER BY part"}) {
        auto rows = database.prepare(query);
        while (rows.step()) dump += std::string(rows.text(0)) + "\n";
        dump += "\n";
    }
    return dump;
}

Batch car_number(int number) {
    const std::string path = "orrery/vel-" + std::to_string(number) + "/sedan/2012";
    Values fields = vehicle_fields();
    fields["model"] = words("Vel " + std::to_string(number));
    Batch batch;
    batch.entries = {entry(EntryKind::vehicle, path, fields),
                     entry(EntryKind::system, path + "/base", {{"name", words("plain")}}),
                     entry(EntryKind::circuit, path + "/base/left", {{"role", words("speaker")}}),
                     entry(EntryKind::tap, path + "/base/left/plug", {{"place", words("radio")}}),
                     entry(EntryKind::circuit, path + "/base/right", {{"role", words("speaker")}}),
                     entry(EntryKind::tap, path + "/base/right/plug", {{"place", words("radio")}})};
    batch.notes = {note_at(path + "/base/right/plug", {{"positive", words("WH")}}),
                   note_at(path + "/base/left/plug", {{"positive", words("BN")}})};
    return batch;
}

}  // namespace

TEST_CASE("after a rebuild the derived tables are the same bytes, in whatever order the cars came") {
    std::vector<int> order{0, 1, 2, 3, 4, 5, 6};
    std::mt19937 dice(11);
    std::string wanted;
    for (int round = 0; round < 6; ++round) {
        std::shuffle(order.begin(), order.end(), dice);
        const CatalogFolder folder;
        auto catalog = folder.create();
        for (const int number : order) catalog.add(car_number(number), false, today);
        const auto lines = catalog.note_lines("orrery/vel-3/sedan/2012");
        CHECK(catalog.rebuild(false).written);
        const std::string dump = derived_tables(folder.file());
        if (wanted.empty()) wanted = dump;
        REQUIRE(dump == wanted);
        CHECK(catalog.note_lines("orrery/vel-3/sedan/2012") == lines);
        CHECK(catalog.check(CheckDepth::full).sound());
        const auto again = catalog.rebuild(false);
        CHECK_FALSE(again.renumbered);
        CHECK_FALSE(again.names_renewed);
        CHECK(derived_tables(folder.file()) == wanted);
    }
}

TEST_CASE("a dry rebuild says the same and writes nothing") {
    const CatalogFolder folder;
    auto catalog = folder.create();
    catalog.add(car_number(2), false, today);
    catalog.add(car_number(1), false, today);
    const std::string before = derived_tables(folder.file());
    const auto report = catalog.rebuild(true);
    CHECK(report.renumbered);
    CHECK_FALSE(report.written);
    CHECK(derived_tables(folder.file()) == before);
}

TEST_CASE("names that say something else than the entries are written anew") {
    const CatalogFolder folder;
    auto catalog = folder.create();
    catalog.add(car_number(2), false, today);
    {
        sqlite::Database database(folder.file());
        database.execute("DELETE FROM packed_names");
    }
    CHECK(catalog.rebuild(false).names_renewed);
    CHECK(rows_of(folder.file(), "packed_names") > 0);
}
