// Does a catalog that an earlier release wrote still open, read-only as it is and for writing brought up to date, with
// every record as it was? One text dump per released schema version lies in released/.
#include <sys/stat.h>

#include <algorithm>
#include <fstream>

#include "a_catalog.h"

using namespace tapbook;

namespace {

struct Released {
    std::int32_t version;
    const char* dump;
    std::string vehicle;
    std::vector<std::string> note_ids;  // as they stand in the dump
};

const std::vector<Released> all_released = {
    {1,
     "0001.sql",
     "orvane/tarn/sedan/2015",
     {"0a818a1b611ec2053844b10a94b03c3b", "9395539c028618823693f7e94107cc43", "983c1ddab5c8cf323133081bb6dcdf32"}},
    {5,
     "0005.sql",
     "orvane/tarn/sedan/2015",
     {"7e7a92e63c442ec368cc9b5e976d8cbe", "9b2fce79cbeb4b296104bba394df478a", "f4d56e7303c68c4e9151e9dbddccb19f"}},
    {6,
     "0006.sql",
     "orvane/tarn/sedan/2015",
     {"7e7a92e63c442ec368cc9b5e976d8cbe", "9b2fce79cbeb4b296104bba394df478a", "f4d56e7303c68c4e9151e9dbddccb19f"}},
    {7,
     "0007.sql",
     "orvane/tarn/sedan/2015",
     {"7e7a92e63c442ec368cc9b5e976d8cbe", "9b2fce79cbeb4b296104bba394df478a", "a27fd56304c6482ba5df2c64ddc38ceb",
      "f4d56e7303c68c4e9151e9dbddccb19f"}},
    {8,
     "0008.sql",
     "orvane/tarn/sedan/2015",
     {"7e7a92e63c442ec368cc9b5e976d8cbe", "9b2fce79cbeb4b296104bba394df478a", "a27fd56304c6482ba5df2c64ddc38ceb",
      "f4d56e7303c68c4e9151e9dbddccb19f"}}};

void load(const CatalogFolder& folder, const char* dump) {
    std::ifstream stream(std::string(TAPBOOK_SOURCE) + "/tests/catalog/released/" + dump);
    const std::string script{std::istreambuf_iterator<char>(stream), {}};
    REQUIRE_FALSE(script.empty());
    sqlite::Database(folder.file(), sqlite::Open::create).execute(script);
}

std::int32_t version_of(const std::filesystem::path& file) {
    return sqlite::Database(file, sqlite::Open::read_only).user_version();
}

std::vector<std::string> ids(const Catalog& catalog, const std::string& vehicle) {
    std::vector<std::string> found;
    for (const auto& line : catalog.note_lines(vehicle)) found.push_back(to_hex(record_id(line)));
    return found;
}

}  // namespace

TEST_CASE("a released catalog that is only read answers as it is and stays as it is") {
    for (const auto& released : all_released) {
        INFO(released.dump);
        CatalogFolder folder;
        load(folder, released.dump);
        const auto catalog = folder.open(Access::read);
        CHECK(ids(catalog, released.vehicle) == released.note_ids);
        REQUIRE(catalog.vehicle_names().size() == 1);
        CHECK(catalog.vehicle_names().front().path == released.vehicle);
        CHECK(find_vehicles(catalog.names(), "tran").front().vehicle.path == released.vehicle);
        CHECK(catalog.converters().size() == 1);
        CHECK(version_of(folder.file()) == released.version);
    }
}

TEST_CASE("a released catalog opened for writing is brought up to date after a backup, and every record id stays") {
    for (const auto& released : all_released) {
        INFO(released.dump);
        CatalogFolder folder;
        load(folder, released.dump);
        std::string newest_version;
        {
            auto catalog = folder.open(Access::write);
            CHECK(ids(catalog, released.vehicle) == released.note_ids);
            CHECK(catalog.own_shop().name == "Bench Three");
            newest_version = std::to_string(version_of(folder.file()));
            CHECK(version_of(folder.file()) > released.version);
            Batch batch;
            batch.entries = {entry(EntryKind::vehicle, "orrery/vel-ostrel/sedan/2012", vehicle_fields())};
            catalog.add(batch, false, today);
            CHECK(catalog.vehicle_names().size() == 2);
        }
        CHECK(rows_of(folder.file(), "packed_names") == 2);
        const std::filesystem::path backup = folder.file().string() + ".before-" + newest_version;
        REQUIRE(std::filesystem::exists(backup));
        CHECK(version_of(backup) == released.version);
        CHECK(ids(Catalog::open(backup, Access::read), released.vehicle) == released.note_ids);
        CHECK(folder.open(Access::read).vehicle_names().size() == 2);
    }
}

TEST_CASE(
    "a job of a released catalog reads the same before and after the migration, and its plan takes the install's "
    "fields") {
    CatalogFolder folder;
    load(folder, "0005.sql");
    const auto plan_of_job = [&](Access access) {
        const auto jobs = folder.open(access).jobs();
        REQUIRE(jobs.size() == 1);
        CHECK(jobs[0].visits.size() == 1);
        CHECK(jobs[0].actions.size() == 1);
        CHECK(jobs[0].came.size() == words_of<CheckItem>().size());
        CHECK_FALSE(jobs[0].plan.feed_mm.has_value());
        return jobs[0].plan;
    };
    const JobPlan before = plan_of_job(Access::read);
    CHECK(before.tap == "orvane/tarn/sedan/2015/base/front-left/radio-plug");
    CHECK(before.amplifier == "bass-one");
    const JobPlan after = plan_of_job(Access::write);
    CHECK(after.tap == before.tap);
    CHECK(after.converter == before.converter);
    JobPlan wanted = after;
    wanted.turn_on = "converter";
    wanted.feed_mm = 5500;
    wanted.feed_size = "4";
    wanted.feed_metal = Metal::copper_clad;
    wanted.feed_insulation = Insulation::rated_105;
    wanted.feed_in_engine_space = true;
    wanted.load = "4//4";
    wanted.bridged = true;
    wanted.speaker_mw = 300000;
    folder.open(Access::write).plan_job(1, wanted, "base");
    const JobPlan kept = folder.open(Access::read).jobs().at(0).plan;
    CHECK(kept.turn_on == wanted.turn_on);
    CHECK(kept.feed_mm == wanted.feed_mm);
    CHECK(kept.feed_size == wanted.feed_size);
    CHECK(kept.feed_metal == wanted.feed_metal);
    CHECK(kept.feed_insulation == wanted.feed_insulation);
    CHECK(kept.feed_in_engine_space);
    CHECK(kept.load == wanted.load);
    CHECK(kept.bridged);
    CHECK(kept.speaker_mw == wanted.speaker_mw);
}

TEST_CASE("what a job says of its install stays from the version that first knew it") {
    for (const char* dump : {"0006.sql", "0007.sql", "0008.sql"}) {
        INFO(dump);
        CatalogFolder folder;
        load(folder, dump);
        for (const Access access : {Access::read, Access::write}) {
            const JobPlan plan = folder.open(access).jobs().at(0).plan;
            CHECK(plan.feed_mm == 5500);
            CHECK(plan.feed_size == "4");
            CHECK(plan.feed_metal == Metal::copper);
            CHECK(plan.load == "4//4");
        }
    }
}

TEST_CASE("what other shops brought stays: a note passed on, a change of key, an alias, a record kept unread") {
    for (const char* dump : {"0001.sql", "0005.sql", "0006.sql", "0007.sql", "0008.sql"}) {
        INFO(dump);
        CatalogFolder folder;
        load(folder, dump);
        const bool has_packs = version_of(folder.file()) >= 7;
        const auto lines = [&](Access access) {
            std::vector<std::string> list;
            folder.open(access).outgoing({}, [&](OutgoingRecord&& record) { list.push_back(std::move(record.line)); });
            return list;
        };
        const auto before = lines(Access::read);
        // 3 notes and 8 entries; then a 4th note, an alias, a change of key, and one record of a later kind
        CHECK(before.size() == (has_packs ? 15 : 11));
        CHECK(lines(Access::write) == before);
        if (!has_packs) continue;
        const auto catalog = folder.open(Access::read);
        CHECK(rows_of(folder.file(), "other_record") == 1);
        CHECK(catalog.own_key().changes == 1);
        CHECK(catalog.check(CheckDepth::full).sound());
        CHECK(catalog.car("orvane/tarn/sedan/2015", {}).vehicle.path == "orvane/tarn-estate/sedan/2015");
        int unvouched = 0;
        for (const auto& entry : catalog.ledger_at("orvane/tarn/sedan/2015/base/front-left/radio-plug").notes)
            unvouched += entry.note.vouched ? 0 : 1;
        CHECK(unvouched == 1);
    }
}

TEST_CASE("what lay on the shelf before movements were booked becomes the first of them, and later ones stay") {
    const std::pair<const char*, std::int64_t> all[] = {{"0007.sql", 1}, {"0008.sql", 2}};
    for (const auto& [dump, movements] : all) {
        INFO(dump);
        CatalogFolder folder;
        load(folder, dump);
        const auto stock = folder.open(Access::write).stock();
        REQUIRE(stock.size() == 1);
        CHECK(stock.front().part == "plain-two");
        CHECK(rows_of(folder.file(), "stock_movement") == movements);
        CHECK(folder.open(Access::read).check(CheckDepth::full).sound());
    }
}
