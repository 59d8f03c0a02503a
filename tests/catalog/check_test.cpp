// Is every kind of damage to a catalog found, and is a sound one called sound? Cells, whole bytes and the file's length
// are changed a thousand times; what is not reported must be proved to be the same.
#include <fstream>
#include <random>

#include "a_catalog.h"

using namespace tapbook;

namespace {

namespace fs = std::filesystem;

// A car with notes of every kind, parts, terms and an action, in one file without a log beside it.
void make_catalog(const CatalogFolder& folder) {
    {
        auto catalog = folder.create();
        Batch batch = one_car();
        const std::string power = car + "/base/accessory";
        batch.entries.push_back(entry(EntryKind::circuit, power, {{"role", words("switched_power")}}));
        batch.entries.push_back(entry(EntryKind::tap, power + "/radio-plug", {{"place", words("radio")}}));
        batch.entries.push_back(entry(EntryKind::converter, "plain-two", {{"name", words("Plain Two")}}));
        batch.entries.push_back(entry(EntryKind::amplifier, "loud", {{"watts_at", TextList{"4000:75000"}}}));
        batch.notes.push_back(note_at(tap_path, {{"positive", words("LBU/RD")},
                                                 {"dc_negative_mv", std::int64_t{-15}},
                                                 {"full_volume", true},
                                                 {"hazards", TextList{"exhaust", "sharp_edges"}},
                                                 {"remarks", words("one\ntwo \"three\" größer")},
                                                 {"later", words("a field of a later version")}}));
        batch.notes.push_back(note_at(power + "/radio-plug", {{"kind", words("switched")}, {"wire", words("YE")}}));
        batch.notes.push_back(note_at(car + "/base", {{"kind", words("system")}, {"premium", false}}));
        batch.notes[1].car_words = "AB 123 C";
        batch.terms.push_back({"plain-two", {2450, 3, 1, 6, 0}, {}});
        catalog.add(batch, false, today);
    }
    sqlite::Database database(folder.file());
    database.execute("PRAGMA journal_mode = DELETE");
}

std::string bytes_of(const fs::path& file) {
    std::ifstream in(file, std::ios::binary);
    return {std::istreambuf_iterator<char>(in), {}};
}

void write_bytes(const fs::path& file, const std::string& bytes) {
    std::ofstream(file, std::ios::binary | std::ios::trunc) << bytes;
}

// Everything in the tables that hold records, as text; "unreadable" when it cannot be read.
std::string contents(const fs::path& file) {
    try {
        sqlite::Database database(file, sqlite::Open::immutable);
        std::string all;
        for (const std::string table :
             {"vehicle", "system", "circuit", "tap", "converter", "amplifier", "note", "subject", "withdrawal"}) {
            auto rows = database.prepare("SELECT * FROM " + table);
            while (rows.step()) {
                for (int i = 0; i < rows.column_count(); ++i) {
                    const auto value = rows.value(i);
                    if (const auto* number = std::get_if<std::int64_t>(&value)) all += std::to_string(*number);
                    if (const auto* text = std::get_if<std::string>(&value)) all += "'" + *text;
                    if (const auto* blob = std::get_if<sqlite::Blob>(&value)) all += "x" + blob->bytes;
                    all += '|';
                }
                all += '\n';
            }
        }
        return all;
    } catch (const sqlite::Error&) {
        return "unreadable";
    }
}

enum class Told { damaged, refused, sound };

// What check says; any other exception fails the test.
Told told_of(const fs::path& file) {
    try {
        return check_catalog(file, CheckDepth::full).sound() ? Told::sound : Told::damaged;
    } catch (const CatalogError&) {
        return Told::refused;
    }
}

std::vector<std::string> damages_of(const fs::path& file) {
    std::vector<std::string> lines;
    for (const auto& damage : check_catalog(file, CheckDepth::full).damages)
        lines.push_back(std::to_string(damage.facts) + " " + damage.what);
    return lines;
}

// Changes the file by SQL and tells what is found.
std::vector<std::string> damages_after(const std::string& sql) {
    CatalogFolder folder;
    make_catalog(folder);
    {
        sqlite::Database database(folder.file());
        database.execute(sql);
    }
    return damages_of(folder.file());
}

using Lines = std::vector<std::string>;

// One cell of a table with records: flips one bit of it. False when that cell holds nothing.
bool flip_cell(const fs::path& file, std::mt19937& random) {
    static const std::vector<std::string> tables = {"note",    "note", "note",      "vehicle",  "system",
                                                    "circuit", "tap",  "converter", "amplifier"};
    sqlite::Database database(file);
    database.execute("PRAGMA synchronous = OFF");
    const std::string table = tables[random() % tables.size()];
    auto rows = database.prepare("SELECT * FROM " + table);
    std::vector<std::vector<sqlite::Value>> all;
    while (rows.step()) {
        auto& row = all.emplace_back();
        for (int i = 0; i < rows.column_count(); ++i) row.push_back(rows.value(i));
    }
    const auto& row = all[random() % all.size()];
    const auto column = random() % row.size();
    sqlite::Value changed = row[column];
    const auto flip = [&](std::string& bytes) {
        if (bytes.empty()) return false;
        bytes[random() % bytes.size()] ^= static_cast<char>(1U << (random() % 8));
        return true;
    };
    if (auto* number = std::get_if<std::int64_t>(&changed))
        *number ^= std::int64_t{1} << (random() % 63);
    else if (auto* text = std::get_if<std::string>(&changed)) {
        if (!flip(*text)) return false;
    } else if (auto* blob = std::get_if<sqlite::Blob>(&changed)) {
        if (!flip(blob->bytes)) return false;
    } else {
        return false;
    }
    const std::string id_column = "id";
    std::size_t id_at = 0;
    while (rows.column_name(static_cast<int>(id_at)) != id_column) ++id_at;
    auto update = database.prepare("UPDATE " + table + " SET " + rows.column_name(static_cast<int>(column)) +
                                   " = ?1 WHERE id = ?2");
    update.bind_all(changed, row[id_at]);
    update.run();
    return database.changes() == 1;
}

}  // namespace

TEST_CASE("a catalog with every kind of row is sound, quickly and in full, and everything was looked at") {
    CatalogFolder folder;
    make_catalog(folder);
    CHECK(check_catalog(folder.file(), CheckDepth::quick).sound());
    const CheckReport report = check_catalog(folder.file(), CheckDepth::full);
    CHECK(damages_of(folder.file()) == Lines{});
    CHECK(report.notes == 4);
    CHECK(report.entries == 8);
    CHECK(report.other_rows == 1 + 3 + 1 + 1 + 1);  // a shop, three subjects, an action, terms, their first movement
    CHECK(report.remarks.empty());
}

TEST_CASE("each broken promise is named with the number of facts it touches") {
    CHECK(damages_after("UPDATE note SET positive = 2 WHERE positive IS NOT NULL") ==
          Lines{"2 notes that are not what was written"});
    CHECK(damages_after("UPDATE note SET kind = 77 WHERE wire IS NOT NULL") ==
          Lines{"1 notes that are not what was written"});
    CHECK(damages_after("UPDATE note SET full_volume = 3 WHERE full_volume = 1") ==
          Lines{"1 notes that are not what was written"});  // true as well, yet not what was stored
    CHECK(damages_after("UPDATE note SET date = 9000000000000000000 WHERE wire IS NOT NULL") ==
          Lines{"1 notes that are not what was written"});
    CHECK(damages_after("UPDATE note SET vouched = 0 WHERE wire IS NOT NULL") ==
          Lines{"1 notes that are not what was written"});
    CHECK(damages_after("UPDATE note SET shop = 9 WHERE wire IS NOT NULL") ==
          Lines{"1 notes whose shop is not in the list of shops"});
    CHECK(damages_after("UPDATE tap SET minutes = 1") == Lines{"2 entries that are not what was written"});
    CHECK(damages_after("UPDATE subject SET vehicle = 5 WHERE path LIKE '%accessory%'") ==
          Lines{"1 notes that lie under another car than their path says",
                "1 tap points that lie under another car's number", "1 tap points whose notes are gone"});
    CHECK(damages_after("DELETE FROM subject WHERE path LIKE '%accessory%'") ==
          Lines{"1 notes whose tap point has lost its path"});
    CHECK(damages_after("DELETE FROM note WHERE wire IS NOT NULL") ==
          Lines{"1 tap points whose notes are gone", "1 records that were written and are gone"});
    CHECK(damages_after("DELETE FROM converter") ==
          Lines{"1 records that were written and are gone", "1 terms of a part that is gone"});
    CHECK(damages_after("UPDATE setting SET value = '1' WHERE name = 'practice'") ==
          Lines{"4 notes of a real catalog", "8 entries of a real catalog"});
    CHECK(damages_after("UPDATE secret SET public_key = zeroblob(32)") ==
          Lines{"0 the shop's signing key does not fit itself", "0 the shop's name is not the one its key gives"});
    CHECK(damages_after("UPDATE shop SET known = 2") == Lines{"1 shops that are not what was written"});
    CHECK(damages_after("UPDATE terms SET on_hand = -4") ==
          Lines{"1 terms below zero", "1 parts whose count is not the sum of their movements"});
    CHECK(damages_after("UPDATE action SET undone_by = 44") == Lines{"1 actions undone by an action that is gone"});
    CHECK(damages_after("UPDATE action SET records = 'what'") ==
          Lines{"1 actions whose list of records cannot be read"});
    // The names of cars are read together with whether any car has two.
    CHECK(damages_after("DROP TABLE alias") == Lines{"0 tables that are gone", "0 kept names cannot be read on"});
    CHECK(damages_after("ALTER TABLE alias ADD COLUMN more TEXT") ==
          Lines{"0 tables that are not as this version makes them"});
}

TEST_CASE("a withdrawal is held against its id, its note's shop and the list of shops") {
    const std::string target = "(SELECT id FROM note WHERE wire IS NOT NULL)";
    const std::string insert =
        "INSERT INTO withdrawal (target, id, path, shop, vouched, date, reason) VALUES (" + target;
    CHECK(damages_after(insert + ", zeroblob(16), 'a/b/c/2000/base', 1, 1, '2024-05-02', 'typo')") ==
          Lines{"1 withdrawals that are not what was written"});
    CHECK(damages_after(insert + ", zeroblob(16), 'a/b/c/2000/base', 8, 1, '2024-05-02', 'typo')") ==
          Lines{"1 withdrawals whose shop is not in the list of shops"});
}

TEST_CASE("a view or index that another program put in is remarked on, and is no damage") {
    CatalogFolder folder;
    make_catalog(folder);
    {
        sqlite::Database database(folder.file());
        database.execute("CREATE VIEW mine AS SELECT path FROM vehicle");
    }
    const CheckReport report = check_catalog(folder.file(), CheckDepth::full);
    CHECK(report.sound());
    CHECK(report.remarks == Lines{"\"mine\" was put in by another program"});
}

TEST_CASE("sound copies beside a damaged file are named, newest first, and unsound ones never") {
    CatalogFolder folder;
    make_catalog(folder);
    const std::string whole = bytes_of(folder.file());
    const auto older = folder / "shop.2024-01-01.backup", newer = folder / "shop.sqlite.before-2";
    write_bytes(older, whole);
    write_bytes(newer, whole);
    write_bytes(folder / "other.2024-01-01.backup", whole);
    write_bytes(folder / "shop.2024-05-01.backup", whole.substr(0, whole.size() / 2));
    fs::last_write_time(older, fs::last_write_time(newer) - std::chrono::hours(1));
    CHECK(check_catalog(folder.file(), CheckDepth::full).backups.empty());  // nothing to restore
    sqlite::Database(folder.file()).execute("DELETE FROM converter");
    const CheckReport report = check_catalog(folder.file(), CheckDepth::full);
    CHECK(report.backups == std::vector<fs::path>{newer, older});
    CHECK(report.remarks == Lines{"the copy " + (folder / "shop.2024-05-01.backup").string() + " is not sound either"});
}

TEST_CASE("of 1,000 bits flipped in stored values of the ledger and the entries, every one is reported") {
    CatalogFolder folder;
    make_catalog(folder);
    const std::string whole = bytes_of(folder.file());
    const fs::path victim = folder / "victim.sqlite";
    std::mt19937 random(20240502);
    int flipped = 0;
    while (flipped < 1000) {
        write_bytes(victim, whole);
        if (!flip_cell(victim, random)) continue;
        ++flipped;
        if (told_of(victim) == Told::sound) FAIL("not reported: flip " << flipped << "\n" << contents(victim));
    }
    CHECK(flipped == 1000);
}

TEST_CASE("every byte changed in the names kept for the search is reported") {
    CatalogFolder folder;
    make_catalog(folder);
    const std::string whole = bytes_of(folder.file());
    const fs::path victim = folder / "victim.sqlite";
    int changed = 0;
    for (const int part : {1, 2})
        for (int at = 1; at < 2000; ++at) {
            write_bytes(victim, whole);
            sqlite::Database database(victim);
            database.execute("PRAGMA synchronous = OFF");
            auto update = database.prepare(
                "UPDATE packed_names SET bytes = CAST(substr(bytes, 1, ?1 - 1) || x'fe' || "
                "substr(bytes, ?1 + 1) AS BLOB) WHERE part = ?2 AND length(bytes) >= ?1");
            update.bind_all(at, part);
            update.run();
            if (database.changes() == 0) break;
            ++changed;
            INFO("byte " << at << " of part " << part);
            CHECK(told_of(victim) != Told::sound);
        }
    CHECK(changed > 20);
}

TEST_CASE("of 1,000 bytes changed anywhere in the file, each is reported or leaves every record as it was") {
    CatalogFolder folder;
    make_catalog(folder);
    const std::string whole = bytes_of(folder.file()), records = contents(folder.file());
    REQUIRE(records != "unreadable");
    const fs::path victim = folder / "victim.sqlite";
    std::mt19937 random(7);
    int reported = 0;
    for (int i = 0; i < 1000; ++i) {
        std::string bytes = whole;
        const auto at = random() % bytes.size();
        bytes[at] ^= static_cast<char>(1U << (random() % 8));
        write_bytes(victim, bytes);
        if (told_of(victim) != Told::sound)
            ++reported;
        else if (contents(victim) != records)
            FAIL("byte " << at << " changed a record and nobody noticed");
    }
    CHECK(reported > 100);  // most of a small file is empty space
}

TEST_CASE("a file cut off at any length is never called sound") {
    CatalogFolder folder;
    make_catalog(folder);
    const std::string whole = bytes_of(folder.file());
    const fs::path victim = folder / "victim.sqlite";
    for (std::size_t length = 0; length < whole.size(); length += 509) {
        INFO("cut at " << length << " of " << whole.size());
        write_bytes(victim, whole.substr(0, length));
        CHECK(told_of(victim) != Told::sound);
    }
}

TEST_CASE("a catalog whose first bytes are gone is told as damaged, a foreign file as foreign") {
    CatalogFolder folder;
    make_catalog(folder);
    std::string bytes = bytes_of(folder.file());
    bytes[0] = 'X';
    write_bytes(folder / "victim.sqlite", bytes);
    CHECK(damages_of(folder / "victim.sqlite") == Lines{"0 the file cannot be opened"});
    write_bytes(folder / "text.sqlite", std::string(5000, 'x'));
    CHECK(trouble_of([&] { check_catalog(folder / "text.sqlite", CheckDepth::full); }) == CatalogTrouble::not_ours);
}
