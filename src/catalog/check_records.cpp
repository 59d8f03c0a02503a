// Is every note and every revision of an entry what was once written? The record is written again from its cells; its
// id must be the one it lies under, and its cells must be exactly the ones that writing it gives.
#include <fmt/format.h>

#include <algorithm>

#include "catalog/check_rows.h"

namespace tapbook {
namespace {

constexpr std::string_view kept_by_notes[] = {"type", "kind", "path", "shop", "car", "practice"};
constexpr std::string_view kept_by_entries[] = {"path", "revision", "shop", "date", "type", "practice"};
constexpr std::int64_t most_days = 3'000'000;  // about the year 10000: beyond it no text of ten characters is left

std::vector<Field> fields_of_notes() {
    std::vector<Field> fields;
    for (const auto& note_field : note_fields()) fields.push_back(note_field.field);
    return fields;
}

std::string columns_of(std::span<const Field> fields, std::string_view table) {
    std::string columns;
    for (const auto& field : fields) columns += fmt::format(", {}.{}", table, field.stored);
    return columns;
}

RecordId as_id(std::string_view bytes) {
    RecordId id{};
    if (bytes.size() == id.size()) std::copy(bytes.begin(), bytes.end(), id.begin());
    return id;
}

bool has_wild_day(const sqlite::Statement& rows, int column, std::span<const Field> fields) {
    for (const auto& field : fields) {
        const auto number = number_of_cell(rows.value(column++));
        if (field.kind == FieldKind::day && number && (*number > most_days || *number < -most_days)) return true;
    }
    return false;
}

// One row of the ledger against itself; the columns are those of check_notes().
void check_note_row(RowCheck& check, const sqlite::Statement& rows, std::span<const Field> fields) {
    constexpr int first_field = 9;
    const std::string id = bytes_of_cell(rows.value(2)), path = text_of_cell(rows.value(7)),
                      shop = bytes_of_cell(rows.value(8)), car = bytes_of_cell(rows.value(6));
    const std::string name = fmt::format("{} (note {})", path.empty() ? "no path" : path, hex_of(id).substr(0, 8));
    const auto broken = [&](const std::string& what) {
        check.findings.fact(what, name);
        check.broken.push_back(as_id(id));
    };
    const auto kind = number_of_cell(rows.value(3)), vouched = number_of_cell(rows.value(5));
    if (path.empty()) return broken("notes whose tap point has lost its path");
    if (shop.size() != RecordId().size()) return broken("notes whose shop is not in the list of shops");
    const bool kind_known = kind && *kind >= 0 && *kind < static_cast<std::int64_t>(words_of<NoteKind>().size());
    const bool car_good = car.size() == RecordId().size() || std::holds_alternative<std::monostate>(rows.value(6));
    // Vouched from the first, or listed among those that another shop brought.
    const bool was_relayed = number_of_cell(rows.value(11 + static_cast<int>(fields.size()))) == 1;
    const bool vouched_good = vouched == (was_relayed ? 0 : 1);
    if (!kind_known || !car_good || !vouched_good || has_wild_day(rows, first_field, fields))
        return broken("notes that are not what was written");
    if (rows.value(0) != rows.value(9 + static_cast<int>(fields.size()) + 1))
        return broken("notes that lie under another car than their path says");
    Values values = values_in_cells(rows, first_field, fields, CellStyle::ledger);
    values["path"] = path;
    values["kind"] = std::string(words_of<NoteKind>()[static_cast<std::size_t>(*kind)].word);
    if (!car.empty()) values["car"] = hex_of(car);
    if (!cells_are_exact(rows, first_field, fields, kept_by_notes, CellStyle::ledger, values))
        return broken("notes that are not what was written");
    check_record(check, note_record(values, hex_of(shop), check.practice), id, "notes", name);
}

void check_entry_row(RowCheck& check, const sqlite::Statement& rows, EntryKind kind, std::span<const Field> fields) {
    constexpr int first_field = 5;
    const std::string path = text_of_cell(rows.value(0)), id = bytes_of_cell(rows.value(3));
    const std::string name = fmt::format("{} {}", word_of(kind), path);
    StoredEntry entry;
    entry.values = values_in_cells(rows, first_field, fields, CellStyle::entry);
    entry.values["path"] = path;
    entry.revision = number_of_cell(rows.value(1)).value_or(0);
    entry.shop = bytes_of_cell(rows.value(2));
    if (entry.shop.size() != RecordId().size() ||
        !cells_are_exact(rows, first_field, fields, kept_by_entries, CellStyle::entry, entry.values)) {
        check.findings.fact("entries that are not what was written", name);
        check.broken.push_back(as_id(id));
        return;
    }
    const std::string date = text_of_cell(rows.value(4));
    check_record(check, entry_record(kind, entry, date, check.practice), id, "entries", name);
}

}  // namespace

void check_record(RowCheck& check, const Values& record, std::string_view id_bytes, const std::string& what,
                  const std::string& example) {
    const RecordId id = as_id(id_bytes);
    const auto id_of = [](const Values& values) -> std::optional<RecordId> {
        try {
            return record_id(record_line(values));
        } catch (const RecordRefused&) {
            return std::nullopt;
        }
    };
    if (id_bytes.size() == id.size() && id_of(record) == id) {
        check.present.push_back(id);
        return;
    }
    Values other = record;
    if (other.erase("practice") == 0) other["practice"] = true;
    const bool other_kind = id_bytes.size() == id.size() && id_of(other) == id;
    check.broken.push_back(id);
    check.findings.fact(other_kind ? fmt::format("{} of {} catalog", what, check.practice ? "a real" : "a practice")
                                   : fmt::format("{} that are not what was written", what),
                        example);
}

void check_notes(RowCheck& check) {
    const auto fields = fields_of_notes();
    const bool has_relays = check.database.user_version() >= first_version_with_packs;
    auto rows = check.database.prepare(fmt::format(
        "SELECT note.vehicle, note.tap, note.id, note.kind, note.shop, note.vouched, note.car, subject.path, shop.id{},"
        " note.rest, subject.vehicle, {} FROM note LEFT JOIN subject ON subject.tap = note.tap"
        " LEFT JOIN shop ON shop.number = note.shop",
        columns_of(fields, "note"), has_relays ? "EXISTS (SELECT 1 FROM relayed WHERE relayed.id = note.id)" : "0"));
    auto count = check.database.prepare("SELECT count(*) FROM note");
    count.step();
    for (Steps steps(check.progress, count.integer(0)); rows.step(); steps.one()) {
        ++check.findings.report().notes;
        try {
            check_note_row(check, rows, fields);
        } catch (const RecordRefused&) {
            const std::string id = bytes_of_cell(rows.value(2));
            check.broken.push_back(as_id(id));
            check.findings.fact("notes that are not what was written",
                                fmt::format("{} (note {})", text_of_cell(rows.value(7)), hex_of(id).substr(0, 8)));
        }
    }
}

void check_entries(RowCheck& check) {
    for (const auto& [kind, word] : words_of<EntryKind>()) {
        const auto fields = fields_of(kind);
        auto rows = check.database.prepare(fmt::format("SELECT path, revision, shop, id, date{}, rest FROM {}",
                                                       readable_columns(check.database, kind), word));
        while (rows.step()) {
            ++check.findings.report().entries;
            try {
                check_entry_row(check, rows, kind, fields);
            } catch (const RecordRefused&) {
                check.broken.push_back(as_id(bytes_of_cell(rows.value(3))));
                check.findings.fact("entries that are not what was written",
                                    fmt::format("{} {}", word, text_of_cell(rows.value(0))));
            }
        }
    }
}

bool cells_are_exact(const sqlite::Statement& rows, int column, std::span<const Field> fields,
                     std::span<const std::string_view> kept, CellStyle style, const Values& values) {
    for (const auto& field : fields)
        if (rows.value(column++) != cell_of(field, values, style)) return false;
    return rows.value(column) == rest_of(values, fields, kept, style);
}

Values values_in_cells(const sqlite::Statement& rows, int column, std::span<const Field> fields, CellStyle style) {
    Values values;
    for (const auto& field : fields) put_cell(field, rows.value(column++), values, style);
    put_rest(rows.value(column), values);
    return values;
}

std::string bytes_of_cell(const sqlite::Value& cell) {
    const auto* blob = std::get_if<sqlite::Blob>(&cell);
    return blob == nullptr ? std::string() : blob->bytes;
}
std::string text_of_cell(const sqlite::Value& cell) {
    const auto* text = std::get_if<std::string>(&cell);
    return text == nullptr ? std::string() : *text;
}
std::optional<std::int64_t> number_of_cell(const sqlite::Value& cell) {
    const auto* number = std::get_if<std::int64_t>(&cell);
    return number == nullptr ? std::nullopt : std::optional(*number);
}

}  // namespace tapbook
