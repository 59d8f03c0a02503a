// How are entries stored and which revision counts? Highest (revision, shop, id) of a path wins; nothing is ever
// overwritten.
#include <fmt/format.h>

#include <algorithm>
#include <set>

#include "catalog/state.h"

namespace tapbook {
namespace {

std::string column_list(EntryKind kind) {
    std::string columns;
    for (const auto& field : fields_of(kind)) columns += fmt::format(", {}", field.stored);
    return columns;
}

constexpr std::string_view kept_by_entries[] = {"path", "revision", "shop", "date", "type", "practice"};

// Adds the hazards of `more` to those of `values`.
void add_hazards(Values& values, const Values& more) {
    const auto* extra = find_value<TextList>(more, "hazards");
    if (extra == nullptr) return;
    TextList all = list_field(values, "hazards");
    for (const auto& word : *extra)
        if (std::find(all.begin(), all.end(), word) == all.end()) all.push_back(word);
    values["hazards"] = std::move(all);
}

StoredEntry read_entry(sqlite::Statement& rows, EntryKind kind) {
    StoredEntry entry;
    entry.values["path"] = std::string(rows.text(0));
    entry.revision = rows.integer(1);
    entry.shop = std::string(rows.blob(2));
    int column = 3;
    for (const auto& field : fields_of(kind)) put_cell(field, rows.value(column++), entry.values, CellStyle::entry);
    put_rest(rows.value(column), entry.values);
    return entry;
}

}  // namespace

std::string readable_columns(sqlite::Database& database, EntryKind kind) {
    const auto version = database.user_version();
    std::string columns;
    for (const auto& field : fields_of(kind))
        columns += fmt::format(", {}", field.since <= version ? field.stored : std::string_view("NULL"));
    return columns;
}

std::string below_first(std::string_view path) {
    return fmt::format("{}/", path);
}
std::string below_end(std::string_view path) {
    return fmt::format("{}0", path);
}  // '0' follows '/'

std::vector<CurrentEntry> winning_entries(sqlite::Database& database, EntryKind kind, std::string_view first,
                                          std::string_view end) {
    auto rows =
        database.prepare(fmt::format("SELECT path, revision, shop{}, rest FROM {} WHERE path >= ?1 AND path < ?2 AND {}"
                                     " ORDER BY path, revision DESC, shop DESC, id DESC",
                                     readable_columns(database, kind), word_of(kind), not_by_blocked));
    std::vector<CurrentEntry> found;
    std::set<std::string> shops_of_path;
    for (rows.bind_all(first, end); rows.step();) {
        StoredEntry entry = read_entry(rows, kind);
        const bool same_path =
            !found.empty() && text_field(found.back().entry.values, "path") == text_field(entry.values, "path");
        if (!same_path) {
            shops_of_path = {entry.shop};
            found.push_back({std::move(entry), 0});
            continue;
        }
        auto& winner = found.back();
        if (entry.revision == winner.entry.revision) ++winner.concurrent;
        if (shops_of_path.insert(entry.shop).second) add_hazards(winner.entry.values, entry.values);
    }
    return found;
}

std::vector<CurrentEntry> current_entries(sqlite::Database& database, EntryKind kind, std::string_view first,
                                          std::string_view end) {
    auto found = winning_entries(database, kind, first, end);
    std::erase_if(found, [](const CurrentEntry& e) { return e.entry.values.contains("retired"); });
    return found;
}

std::optional<StoredEntry> entry_before(sqlite::Database& database, EntryKind kind, std::string_view path,
                                        std::int64_t revision) {
    auto rows =
        database.prepare(fmt::format("SELECT path, revision, shop{}, rest FROM {} WHERE path = ?1 AND revision < ?2 "
                                     "ORDER BY revision DESC, shop DESC, id DESC LIMIT 1",
                                     readable_columns(database, kind), word_of(kind)));
    rows.bind_all(path, revision);
    return rows.step() ? std::optional(read_entry(rows, kind)) : std::nullopt;
}

void insert_entry(sqlite::Database& database, EntryKind kind, const StoredEntry& entry, const RecordId& id,
                  const std::string& date) {
    const auto fields = fields_of(kind);
    std::string marks;
    for (std::size_t i = 0; i < fields.size(); ++i) marks += fmt::format(", ?{}", i + 6);
    auto insert = database.prepare(fmt::format(
        "INSERT OR IGNORE INTO {} (path, revision, shop, id, date{}, rest) VALUES (?1, ?2, ?3, ?4, ?5{}, ?{})",
        word_of(kind), column_list(kind), marks, fields.size() + 6));
    insert.bind(1, text_field(entry.values, "path"));
    insert.bind(2, entry.revision);
    insert.bind(3, sqlite::BlobView{entry.shop});
    insert.bind(4, sqlite::BlobView{std::string_view(reinterpret_cast<const char*>(id.data()), id.size())});
    insert.bind(5, date);
    int mark = 6;
    for (const auto& field : fields) insert.bind(mark++, cell_of(field, entry.values, CellStyle::entry));
    insert.bind(mark, rest_of(entry.values, fields, kept_by_entries, CellStyle::entry));
    insert.run();
}

Values entry_record(EntryKind kind, const StoredEntry& entry, const std::string& date, bool practice) {
    Values record = entry.values;
    record["type"] = std::string(word_of(kind));
    record["revision"] = entry.revision;
    record["shop"] = hex_of(entry.shop);
    record["date"] = date;
    if (practice) record["practice"] = true;
    return record;
}

}  // namespace tapbook
