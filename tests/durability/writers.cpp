// The writers, over one invented car.
#include "durability/writers.h"

#include <algorithm>

#include "catalog/a_catalog.h"

namespace tapbook::disk {
namespace {

namespace fs = std::filesystem;

std::string tap_number(int number) {
    return car + "/base/pair-" + std::to_string(number) + "/plug";
}

constexpr int taps = 20;

void make_empty(const fs::path& file) {
    Catalog::create(file, "Tarrow Car Sound", CatalogKind::real, today, repeatable_random("durability"));
}

void make_usual(const fs::path& file) {
    make_car_with_taps(file, taps);
    add_notes(file, taps, 1);
}

}  // namespace

void make_car_with_taps(const fs::path& file, int count) {
    make_empty(file);
    Batch batch;
    batch.file = "car.toml";
    batch.entries = {entry(EntryKind::vehicle, car, vehicle_fields()),
                     entry(EntryKind::system, car + "/base", {{"name", ::words("plain")}})};
    for (int i = 0; i < count; ++i) {
        const std::string path = tap_number(i);
        batch.entries.push_back(
            entry(EntryKind::circuit, std::string(path_head(path, circuit_depth)), {{"role", ::words("speaker")}}));
        batch.entries.push_back(entry(EntryKind::tap, path, {{"place", ::words("radio")}}));
    }
    Catalog::open(file, Access::write).add(batch, false, today);
}

void add_notes(const fs::path& file, int count, int number) {
    Batch batch;
    batch.file = "notes.toml";
    for (int i = 0; i < count; ++i)
        batch.notes.push_back(note_at(tap_number(i), {{"positive", ::words("WH")},
                                                      {"negative", ::words("BK")},
                                                      {"initials", ::words("B" + std::to_string(number))}}));
    Catalog::open(file, Access::write).add(batch, false, today);
}

namespace {

// Both find the notes that a run before them may have left, so that each can be said again.
RecordId first_note(const Catalog& catalog, const std::string& path) {
    return catalog.ledger_at(path).notes.front().note.id;
}

std::string last_initials(const Catalog& catalog, const std::string& path) {
    std::string initials;
    for (const auto& one : catalog.ledger_at(path).live()) initials = one.initials;
    return initials;
}

void take_one_note(const fs::path& file) {
    NoteDraft draft = note_at(tap_number(3), {{"positive", ::words("WH")}, {"negative", ::words("BK")}});
    draft.values["date"] = ::words(today);
    Catalog::open(file, Access::write).take_note(draft, {"note", true, false}, today);
}

void withdraw_one(const fs::path& file) {
    Catalog catalog = Catalog::open(file, Access::write);
    catalog.withdraw(first_note(catalog, tap_number(5)), WithdrawalReason::typo, today);
}

// Only the second batch of notes is undone, however often this is said.
void undo_notes(const fs::path& file) {
    Catalog catalog = Catalog::open(file, Access::write);
    if (last_initials(catalog, tap_number(0)) == "B2") catalog.undo(today);
}

// Later cars and tap points were noted first, so that their numbers are out of order.
void make_disordered(const fs::path& file) {
    make_car_with_taps(file, taps);
    Batch batch;
    batch.file = "notes.toml";
    for (int i = taps; i-- > 0;)
        batch.notes.push_back(note_at(tap_number(i), {{"positive", ::words("WH")}, {"negative", ::words("BK")}}));
    Catalog::open(file, Access::write).add(batch, false, today);
}

void make_job(const fs::path& file) {
    make_usual(file);
    Catalog catalog = Catalog::open(file, Access::write);
    catalog.start_job({car, "base", 2014, "bill 77", "AB 123", "mk"}, today, repeatable_random("jobs"));
}

JobPlan direct_plan() {
    JobPlan plan;
    plan.tap = tap_number(0);
    plan.converter = "direct";
    plan.lowest_mhz = 30'000;
    plan.minutes = 25;
    plan.feed_mm = 4'500;
    return plan;
}

JobReading reading_at(int tap) {
    JobReading reading;
    reading.path = tap_number(tap);
    reading.values = {{"positive", ::words("WH")}, {"negative", ::words("BK")}, {"method", ::words("metered")}};
    return reading;
}

void make_read_job(const fs::path& file) {
    make_job(file);
    Catalog catalog = Catalog::open(file, Access::write);
    for (int tap = 0; tap < 6; ++tap) catalog.read_at_job(1, reading_at(tap), today);
}

void close_the_job(const fs::path& file) {
    Catalog catalog = Catalog::open(file, Access::write);
    if (catalog.jobs().front().state == JobState::closed) return;
    JobClosing closing;
    closing.left.rest = CheckAnswer::ok;
    catalog.close_job(1, closing, today);
}

void make_closed_job(const fs::path& file) {
    make_read_job(file);
    close_the_job(file);
}

void reopen_the_job(const fs::path& file) {
    Catalog catalog = Catalog::open(file, Access::write);
    if (catalog.jobs().front().state == JobState::closed) catalog.reopen_job(1);
}

void start_a_job(const fs::path& file) {
    Catalog catalog = Catalog::open(file, Access::write);
    if (catalog.jobs().empty())
        catalog.start_job({car, "base", 2014, "bill 77", "AB 123", "mk"}, today, repeatable_random("jobs"));
}

void pull_a_fuse(const fs::path& file) {
    Catalog catalog = Catalog::open(file, Access::write);
    if (catalog.jobs().front().actions.empty()) catalog.start_action(1, "pulled fuse 31", today);
}

void put_it_back(const fs::path& file) {
    Catalog catalog = Catalog::open(file, Access::write);
    if (catalog.jobs().front().actions.front().closed.empty()) catalog.end_action(1, 1, today);
}

const std::string other_shop = "00112233445566778899aabbccddeeff";

}  // namespace

const std::vector<Writer>& writers() {
    static const std::vector<Writer> all = {
        {"make a catalog", [](const fs::path&) {}, make_empty},
        {"add entries", make_usual,
         [](const fs::path& file) { Catalog::open(file, Access::write).add(one_car(), false, today); }},
        {"add notes", make_usual, [](const fs::path& file) { add_notes(file, taps, 2); }},
        {"note", make_usual, take_one_note},
        {"note withdraw", make_usual, withdraw_one},
        {"undo",
         [](const fs::path& file) {
             make_usual(file);
             add_notes(file, taps, 2);
         },
         undo_notes},
        {"shops know", make_usual,
         [](const fs::path& file) {
             Catalog::open(file, Access::write).change_shop(other_shop, ShopChange::know, "Larkfield");
         }},
        {"rebuild", make_disordered, [](const fs::path& file) { Catalog::open(file, Access::write).rebuild(false); }},
        {"job start", make_usual, start_a_job},
        {"job came", make_job,
         [](const fs::path& file) {
             JobChecks checks;
             checks.rest = CheckAnswer::ok;
             Catalog::open(file, Access::write).check_job(1, CheckList::came, checks);
         }},
        {"job plan", make_job,
         [](const fs::path& file) { Catalog::open(file, Access::write).plan_job(1, direct_plan(), "base"); }},
        {"job reading", make_job,
         [](const fs::path& file) { Catalog::open(file, Access::write).read_at_job(1, reading_at(0), today); }},
        {"job action", make_job, pull_a_fuse},
        {"job action --done",
         [](const fs::path& file) {
             make_job(file);
             pull_a_fuse(file);
         },
         put_it_back},
        {"job close", make_read_job, close_the_job},
        {"job open", make_closed_job, reopen_the_job},
    };
    return all;
}

std::vector<std::int64_t> spread(std::int64_t count, std::int64_t most) {
    std::vector<std::int64_t> points;
    const std::int64_t wanted = std::min(count, most);
    for (std::int64_t i = 0; i < wanted; ++i) points.push_back(wanted == 1 ? 0 : i * (count - 1) / (wanted - 1));
    return points;
}

std::string contents_of(const fs::path& file) {
    sqlite::Database database(file, sqlite::Open::read_only);
    std::vector<std::pair<std::string, std::int64_t>> tables;
    auto names = database.prepare(
        "SELECT name, (SELECT count(*) FROM pragma_table_info(name)) FROM sqlite_schema WHERE type = 'table' ORDER BY "
        "name");
    while (names.step()) tables.emplace_back(std::string(names.text(0)), names.integer(1));
    std::string contents;
    for (const auto& [table, columns] : tables) {
        std::string order, cells;
        auto fields = database.prepare("SELECT name FROM pragma_table_info('" + table + "')");
        while (fields.step()) {
            cells += (cells.empty() ? "quote(" : " || ',' || quote(") + std::string(fields.text(0)) + ")";
            order += (order.empty() ? "" : ", ") + std::string(fields.text(0));
        }
        auto rows = database.prepare("SELECT " + cells + " FROM " + table + " ORDER BY " + order);
        contents += table + "\n";
        while (rows.step()) contents += "  " + std::string(rows.text(0)) + "\n";
    }
    return contents;
}

std::string soundness_of(const fs::path& file) {
    sqlite::Database database(file, sqlite::Open::read_only);
    auto integrity = database.prepare("PRAGMA integrity_check");
    integrity.step();
    const std::string said(integrity.text(0));
    auto foreign = database.prepare("PRAGMA foreign_key_check");
    return said == "ok" && foreign.step() ? "foreign keys broken" : said;
}

}  // namespace tapbook::disk
