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

// Every note of a vehicle in (path, id) order; what each column holds is named below.
enum Column { id, path, shop, kind, vouched, blocked, withdrawn, car, first_field };

sqlite::Statement notes_of_number(sqlite::Database& database, std::int64_t vehicle) {
    auto rows = database.prepare(fmt::format(
        "SELECT note.id, subject.path, shop.id, note.kind, note.vouched, shop.blocked,"
        " EXISTS (SELECT 1 FROM withdrawal WHERE target = note.id AND withdrawal.shop = note.shop AND "
        "withdrawal.vouched = 1),"
        " note.car{}, note.rest FROM note JOIN subject ON subject.tap = note.tap JOIN shop ON shop.number = note.shop"
        " WHERE note.vehicle = ?1 ORDER BY subject.path, note.id",
        column_list()));
    rows.bind_all(vehicle);
    return rows;
}

int rest_column() {
    return Column::first_field + static_cast<int>(ledger_fields().size());
}

NoteKind kind_in(const sqlite::Statement& rows) {
    const auto kind = static_cast<std::uint64_t>(rows.integer(Column::kind));
    if (kind >= words_of<NoteKind>().size()) throw sqlite::Error(corrupt_code, "a note of unknown kind");
    return words_of<NoteKind>()[kind].value;
}

LedgerRow row_in(const sqlite::Statement& rows) {
    LedgerRow row{as_id(rows.blob(Column::id)),
                  {},
                  rows.integer(Column::vouched) != 0,
                  rows.integer(Column::withdrawn) != 0,
                  rows.integer(Column::blocked) != 0};
    row.values["path"] = std::string(rows.text(Column::path));
    row.values["shop"] = hex_of(rows.blob(Column::shop));
    row.values["kind"] = std::string(word_of(kind_in(rows)));
    if (const auto token = rows.optional_blob(Column::car)) row.values["car"] = hex_of(*token);
    int column = Column::first_field;
    for (const auto& field : ledger_fields()) put_cell(field, rows.value(column++), row.values, CellStyle::ledger);
    put_rest(rows.value(column), row.values);
    return row;
}

// Calls each(LedgerRow) for every note of a vehicle in (path, id) order.
template <class Each>
void for_each_note(sqlite::Database& database, std::string_view vehicle_path, Each each) {
    const auto vehicle = vehicle_number(database, vehicle_path);
    if (!vehicle) return;
    for (auto rows = notes_of_number(database, *vehicle); rows.step();) each(row_in(rows));
}

// A row's fields as note_from() asks for them: straight from the cells, without a record between.
class RowFields {
  public:
    explicit RowFields(const sqlite::Statement& rows) : rows_(rows) {}

    template <FieldName name>
    std::string text() const {
        return std::string(rows_.optional_text(column<name>()).value_or(""));
    }
    template <FieldName name>
    std::optional<int> whole() const {
        const auto number = rows_.optional_integer(column<name>());
        return number ? std::optional(static_cast<int>(*number)) : std::nullopt;
    }
    template <FieldName name>
    std::optional<bool> flag() const {
        const auto number = rows_.optional_integer(column<name>());
        return number ? std::optional(*number != 0) : std::nullopt;
    }
    template <FieldName name, class Enum>
    std::optional<Enum> word() const {
        const auto number = rows_.optional_integer(column<name>());
        const auto words = words_of<Enum>();
        if (!number || *number < 0 || *number >= static_cast<std::int64_t>(words.size())) return std::nullopt;
        return words[static_cast<std::size_t>(*number)].value;
    }
    template <FieldName name>
    std::optional<WireColour> colour() const {
        const auto number = rows_.optional_integer(column<name>());
        return number ? wire_colour_from_integer(*number) : std::nullopt;
    }
    template <FieldName name, class Unit>
    auto quantity(Unit unit) const -> std::optional<decltype(unit(1))> {
        const auto number = rows_.optional_integer(column<name>());
        return number ? std::optional(unit(*number)) : std::nullopt;
    }
    template <FieldName name>
    std::string day() const {
        const auto number = rows_.optional_integer(column<name>());
        return number ? day_text(*number) : std::string();
    }

  private:
    template <FieldName name>
    static int column() {
        static const int found = [] {
            const auto& fields = ledger_fields();
            const auto field =
                std::find_if(fields.begin(), fields.end(), [](const Field& one) { return one.stored == name.view(); });
            return Column::first_field + static_cast<int>(field - fields.begin());
        }();
        return found;
    }

    const sqlite::Statement& rows_;
};

// The note in a row. One with fields that no column holds goes by its record, where they are read as written.
Note note_in(const sqlite::Statement& rows) {
    if (!rows.is_null(rest_column())) {
        const LedgerRow row = row_in(rows);
        return note_of(row.values, row.id);
    }
    Note note = note_from(RowFields(rows));
    note.id = as_id(rows.blob(Column::id));
    note.kind = kind_in(rows);
    note.path = std::string(rows.text(Column::path));
    note.shop = hex_of(rows.blob(Column::shop));
    if (const auto token = rows.optional_blob(Column::car)) note.car = hex_of(*token);
    return note;
}

// Words of hazards met on the way, each once.
void add_hazards(const sqlite::Statement& rows, TextList& hazards) {
    Values values;
    if (!rows.is_null(rest_column())) values = row_in(rows).values;
    static const std::size_t place = [] {
        const auto& fields = ledger_fields();
        const auto field =
            std::find_if(fields.begin(), fields.end(), [](const Field& one) { return one.stored == "hazards"; });
        return static_cast<std::size_t>(field - fields.begin());
    }();
    const int column = Column::first_field + static_cast<int>(place);
    if (!rows.is_null(column)) put_cell(ledger_fields()[place], rows.value(column), values, CellStyle::ledger);
    for (const auto& word : list_field(values, "hazards"))
        if (std::find(hazards.begin(), hazards.end(), word) == hazards.end()) hazards.push_back(word);
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
    const auto vehicle = vehicle_number(database, vehicle_path);
    if (!vehicle) return notes;
    std::string path;
    std::vector<Note>* live = nullptr;
    TextList* hazards = nullptr;
    for (auto rows = notes_of_number(database, *vehicle); rows.step();) {
        if (rows.integer(Column::blocked) != 0) continue;
        if (rows.integer(Column::withdrawn) != 0) {
            ++notes.withdrawn[std::string(rows.text(Column::path))];
            continue;
        }
        if (live == nullptr || rows.text(Column::path) != path) {
            path = std::string(rows.text(Column::path));
            live = &notes.live[path];
            hazards = &notes.hazards[path];
        }
        add_hazards(rows, *hazards);
        live->push_back(note_in(rows));
        live->back().vouched = rows.integer(Column::vouched) != 0;
    }
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
