// How are notes stored and read back? Clustered by (vehicle, tap, id): all notes of one car are one run of the table.
// Rows are only ever added here.
#include <fmt/format.h>

#include <algorithm>

#include "catalog/ledger_rows.h"

namespace tapbook {
namespace {

constexpr int corrupt_code = 11;  // SQLITE_CORRUPT

constexpr std::string_view kept_by_notes[] = {"type", "kind", "path", "shop", "car", "practice"};

const std::vector<Field>& ledger_fields() {
    static const std::vector<Field> fields = [] {
        std::vector<Field> list;
        for (const auto& note_field : note_fields()) list.push_back(note_field.field);
        return list;
    }();
    return fields;
}

std::string column_list() {
    std::string columns;
    for (const auto& field : ledger_fields()) columns += fmt::format(", note.{}", field.stored);
    return columns;
}

std::string_view as_bytes(const RecordId& id) {
    return {reinterpret_cast<const char*>(id.data()), id.size()};
}

RecordId as_id(std::string_view bytes) {
    RecordId id{};
    if (bytes.size() == id.size()) std::copy(bytes.begin(), bytes.end(), id.begin());
    return id;
}

std::optional<std::int64_t> vehicle_number(sqlite::Database& database, std::string_view vehicle_path) {
    if (path_parts(vehicle_path).size() != vehicle_depth) return std::nullopt;
    auto rows = database.prepare("SELECT vehicle FROM subject WHERE path >= ?1 AND path < ?2 LIMIT 1");
    rows.bind_all(below_first(vehicle_path), below_end(vehicle_path));
    return rows.step() ? std::optional(rows.integer(0)) : std::nullopt;
}

// Calls each(LedgerRow) for every note of a vehicle in (path, id) order.
template <class Each>
void for_each_note(sqlite::Database& database, std::string_view vehicle_path, Each each) {
    const auto vehicle = vehicle_number(database, vehicle_path);
    if (!vehicle) return;
    auto rows = database.prepare(fmt::format(
        "SELECT note.id, subject.path, shop.id, note.kind, note.vouched, shop.blocked,"
        " EXISTS (SELECT 1 FROM withdrawal WHERE target = note.id AND withdrawal.shop = note.shop AND "
        "withdrawal.vouched = 1),"
        " note.car{}, note.rest FROM note JOIN subject ON subject.tap = note.tap JOIN shop ON shop.number = note.shop"
        " WHERE note.vehicle = ?1 ORDER BY subject.path, note.id",
        column_list()));
    for (rows.bind_all(*vehicle); rows.step();) {
        LedgerRow row{as_id(rows.blob(0)), {}, rows.integer(4) != 0, rows.integer(6) != 0, rows.integer(5) != 0};
        row.values["path"] = std::string(rows.text(1));
        row.values["shop"] = hex_of(rows.blob(2));
        const auto kind = static_cast<std::uint64_t>(rows.integer(3));
        if (kind >= words_of<NoteKind>().size()) throw sqlite::Error(corrupt_code, "a note of unknown kind");
        row.values["kind"] = std::string(words_of<NoteKind>()[kind].word);
        if (const auto car = rows.optional_blob(7)) row.values["car"] = hex_of(*car);
        int column = 8;
        for (const auto& field : ledger_fields()) put_cell(field, rows.value(column++), row.values, CellStyle::ledger);
        put_rest(rows.value(column), row.values);
        each(std::move(row));
    }
}

}  // namespace

std::int64_t shop_number(sqlite::Database& database, std::string_view id_bytes) {
    auto known = database.prepare("SELECT number FROM shop WHERE id = ?1");
    known.bind_all(sqlite::BlobView{id_bytes});
    if (known.step()) return known.integer(0);
    auto insert = database.prepare("INSERT INTO shop (id) VALUES (?1)");
    insert.bind_all(sqlite::BlobView{id_bytes});
    insert.run();
    return database.last_insert_rowid();
}

namespace {

std::string insert_text() {
    std::string columns, marks;
    int mark = 8;
    for (const auto& field : ledger_fields()) {
        columns += fmt::format(", {}", field.stored);
        marks += fmt::format(", ?{}", mark++);
    }
    return fmt::format(
        "INSERT OR IGNORE INTO note (vehicle, tap, id, kind, shop, vouched, car{}, rest) "
        "VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7{}, ?{})",
        columns, marks, mark);
}

}  // namespace

LedgerWriting::LedgerWriting(sqlite::Database& database)
    : database_(database),
      known_(database.prepare("SELECT vehicle, tap FROM subject WHERE path = ?1")),
      insert_(database.prepare(insert_text())) {}

// Notes of one path mostly follow each other.
LedgerWriting::Subject LedgerWriting::subject_of(const std::string& path) {
    if (path == last_path_) return last_;
    known_.bind_all(path);
    if (known_.step()) {
        last_ = {known_.integer(0), known_.integer(1)};
        known_.reset();
    } else {
        last_ = new_subject(path);
    }
    last_path_ = path;
    return last_;
}

LedgerWriting::Subject LedgerWriting::new_subject(const std::string& path) {
    auto vehicle = vehicle_number(database_, path_head(path, vehicle_depth));
    if (!vehicle) {
        auto highest = database_.prepare("SELECT coalesce(max(vehicle), 0) + 1 FROM subject");
        highest.step();
        vehicle = highest.integer(0);
    }
    auto insert = database_.prepare("INSERT INTO subject (vehicle, path) VALUES (?1, ?2)");
    insert.bind_all(*vehicle, path);
    insert.run();
    return {*vehicle, database_.last_insert_rowid()};
}

std::int64_t LedgerWriting::number_of_shop(const std::string& hex) {
    const auto [found, is_new] = shops_.try_emplace(hex, 0);
    if (is_new) found->second = shop_number(database_, bytes_of_hex(hex));
    return found->second;
}

bool LedgerWriting::insert(const Values& record, const RecordId& id, bool vouched) {
    const auto subject = subject_of(text_field(record, "path"));
    const auto kind = word_field<NoteKind>(record, "kind").value_or(NoteKind::pair);
    const std::string car = bytes_of_hex(text_field(record, "car"));
    insert_.bind(1, subject.vehicle);
    insert_.bind(2, subject.tap);
    insert_.bind(3, sqlite::BlobView{as_bytes(id)});
    insert_.bind(4, static_cast<std::int64_t>(kind));
    insert_.bind(5, number_of_shop(text_field(record, "shop")));
    insert_.bind(6, vouched ? 1 : 0);
    car.empty() ? insert_.bind(7, std::nullopt) : insert_.bind(7, sqlite::BlobView{car});
    int mark = 8;
    for (const auto& field : ledger_fields()) insert_.bind(mark++, cell_of(field, record, CellStyle::ledger));
    insert_.bind(mark, rest_of(record, ledger_fields(), kept_by_notes, CellStyle::ledger));
    insert_.run();
    return database_.changes() == 1;
}

Values note_record(const Values& fields, const std::string& shop_hex, bool practice) {
    Values record = fields;
    record["type"] = std::string("note");
    record["shop"] = shop_hex;
    if (practice) record["practice"] = true;
    return record;
}

std::vector<LedgerRow> ledger_rows(sqlite::Database& database, std::string_view vehicle_path) {
    std::vector<LedgerRow> rows;
    for_each_note(database, vehicle_path, [&](LedgerRow row) { rows.push_back(std::move(row)); });
    return rows;
}

LedgerNotes notes_of_vehicle(sqlite::Database& database, std::string_view vehicle_path) {
    LedgerNotes notes;
    for_each_note(database, vehicle_path, [&](LedgerRow row) {
        const std::string path = text_field(row.values, "path");
        if (row.blocked) return;
        if (row.withdrawn) {
            ++notes.withdrawn[path];
            return;
        }
        auto& hazards = notes.hazards[path];
        for (const auto& word : list_field(row.values, "hazards"))
            if (std::find(hazards.begin(), hazards.end(), word) == hazards.end()) hazards.push_back(word);
        Note note = note_of(row.values, row.id);
        note.vouched = row.vouched;
        notes.live[path].push_back(std::move(note));
    });
    return notes;
}

std::vector<std::pair<RecordId, Values>> note_records(sqlite::Database& database, std::string_view vehicle_path,
                                                      bool practice) {
    std::vector<std::pair<RecordId, Values>> records;
    for_each_note(database, vehicle_path, [&](LedgerRow row) {
        records.emplace_back(row.id, note_record(row.values, text_field(row.values, "shop"), practice));
    });
    return records;
}

KnownShops known_shops(sqlite::Database& database) {
    KnownShops known;
    auto rows = database.prepare("SELECT id FROM shop WHERE known = 1");
    while (rows.step()) known.insert(hex_of(rows.blob(0)));
    return known;
}

std::string hex_of(std::string_view bytes) {
    return to_hex(as_id(bytes));
}

std::string bytes_of_hex(std::string_view hex) {
    RecordId id{};
    return from_hex(hex, id) ? std::string(as_bytes(id)) : std::string();
}

}  // namespace tapbook
