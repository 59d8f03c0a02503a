// How are notes stored and read back? Clustered by (vehicle, tap, id): all notes of one car are one run of the table.
// Rows are only ever added here.
#include <fmt/format.h>

#include <algorithm>

#include "catalog/ledger_rows.h"

namespace tapbook {
namespace {

constexpr int corrupt_code = 11;  // SQLITE_CORRUPT

const std::string& column_list() {
    static const std::string columns = [] {
        std::string all;
        for (const auto& field : ledger_fields()) all += fmt::format(", note.{}", field.stored);
        return all;
    }();
    return columns;
}

RecordId as_id(std::string_view bytes) {
    RecordId id{};
    if (bytes.size() == id.size()) std::copy(bytes.begin(), bytes.end(), id.begin());
    return id;
}

// Every note of a vehicle in (path, id) order; what each column holds is named below.
enum Column { id, path, shop, kind, vouched, blocked, withdrawn, car, first_field };

// Was the note written here, or signed by its own shop at first or later? A file of an earlier schema has no notes that
// others brought.
std::string_view vouched_text(sqlite::Database& database) {
    if (database.user_version() < first_version_with_packs) return "note.vouched";
    return "note.vouched = 1 OR EXISTS (SELECT 1 FROM relayed WHERE relayed.id = note.id AND vouched_by IS NOT NULL)";
}

constexpr std::string_view by_path = "subject.path, note.id";
// As the notes lie in the table: nothing is sorted, and all of one path still come together, in the order of their ids.
constexpr std::string_view as_they_lie = "note.vehicle, note.tap, note.id";

// `which` is a condition on note, ?1 to ?3 its values.
sqlite::Statement notes_where(sqlite::Database& database, std::string_view which, std::string_view order) {
    return database.prepare(fmt::format(
        "SELECT note.id, subject.path, shop.id, note.kind, {}, shop.blocked,"
        " EXISTS (SELECT 1 FROM withdrawal WHERE target = note.id AND withdrawal.shop = note.shop AND "
        "withdrawal.vouched = 1),"
        " note.car{}, note.rest FROM note JOIN subject ON subject.tap = note.tap JOIN shop ON shop.number = note.shop"
        " WHERE {} ORDER BY {}",
        vouched_text(database), column_list(), which, order));
}

sqlite::Statement notes_of_number(sqlite::Database& database, std::int64_t vehicle, std::string_view order) {
    auto rows = notes_where(database, "note.vehicle = ?1", order);
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
    for (auto rows = notes_of_number(database, *vehicle, by_path); rows.step();) each(row_in(rows));
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
    static const std::size_t place = [] {
        const auto& fields = ledger_fields();
        const auto field =
            std::find_if(fields.begin(), fields.end(), [](const Field& one) { return one.stored == "hazards"; });
        return static_cast<std::size_t>(field - fields.begin());
    }();
    const int column = Column::first_field + static_cast<int>(place);
    if (rows.is_null(column) && rows.is_null(rest_column())) return;
    Values values;
    if (!rows.is_null(rest_column())) values = row_in(rows).values;
    if (!rows.is_null(column)) put_cell(ledger_fields()[place], rows.value(column), values, CellStyle::ledger);
    for (const auto& word : list_field(values, "hazards"))
        if (std::find(hazards.begin(), hazards.end(), word) == hazards.end()) hazards.push_back(word);
}

}  // namespace

std::optional<std::int64_t> vehicle_number(sqlite::Database& database, std::string_view vehicle_path) {
    if (path_parts(vehicle_path).size() != vehicle_depth) return std::nullopt;
    auto rows = database.prepare("SELECT vehicle FROM subject WHERE path >= ?1 AND path < ?2 LIMIT 1");
    rows.bind_all(below_first(vehicle_path), below_end(vehicle_path));
    return rows.step() ? std::optional(rows.integer(0)) : std::nullopt;
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

namespace {

// REQUIRES all notes of one path to come together.
void collect_notes(sqlite::Statement& rows, LedgerNotes& notes) {
    std::string path;
    std::vector<Note>* live = nullptr;
    TextList* hazards = nullptr;
    while (rows.step()) {
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
}

constexpr std::string_view at_path =
    "(note.vehicle, note.tap) IN (SELECT vehicle, tap FROM subject WHERE subject.path = ?1)";

}  // namespace

std::vector<LedgerRow> ledger_rows_at(sqlite::Database& database, std::string_view path) {
    std::vector<LedgerRow> found;
    auto rows = notes_where(database, at_path, by_path);
    for (rows.bind_all(path); rows.step();) found.push_back(row_in(rows));
    return found;
}

void each_ledger_row(sqlite::Database& database, std::string_view first, std::string_view end,
                     const std::function<void(LedgerRow&&)>& each) {
    auto rows =
        notes_where(database, "subject.path >= ?1 AND subject.path < ?2 AND note.vehicle = subject.vehicle", by_path);
    for (rows.bind_all(first, end); rows.step();) each(row_in(rows));
}

std::vector<LedgerRow> ledger_rows_of(sqlite::Database& database, std::string_view vehicle_path, std::string_view shop,
                                      std::string_view day) {
    std::vector<LedgerRow> found;
    const auto vehicle = vehicle_number(database, vehicle_path);
    const auto date = day_number(day);
    if (!vehicle || !date) return found;
    auto rows = notes_where(database, "note.vehicle = ?1 AND note.date = ?2 AND shop.id = ?3", by_path);
    const std::string shop_bytes = bytes_of_hex(shop);
    for (rows.bind_all(*vehicle, *date, sqlite::BlobView{shop_bytes}); rows.step();) found.push_back(row_in(rows));
    return found;
}

LedgerNotes notes_of_vehicle(sqlite::Database& database, std::string_view vehicle_path) {
    LedgerNotes notes;
    const auto vehicle = vehicle_number(database, vehicle_path);
    if (!vehicle) return notes;
    auto rows = notes_of_number(database, *vehicle, as_they_lie);
    collect_notes(rows, notes);
    return notes;
}

LedgerNotes notes_at(sqlite::Database& database, const std::set<std::string>& paths) {
    LedgerNotes notes;
    for (const auto& path : paths) {
        auto rows = notes_where(database, at_path, as_they_lie);
        rows.bind_all(path);
        collect_notes(rows, notes);
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
