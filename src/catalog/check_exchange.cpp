// Is what other shops brought still what they brought? Aliases, changes of key and records kept unread have their ids;
// what is said of packs and of who brought a note first fits together.
#include <fmt/format.h>

#include "catalog/check_rows.h"
#include "catalog/key_chain.h"

namespace tapbook {
namespace {

std::string short_name(const std::string& id_bytes) {
    return hex_of(id_bytes).substr(0, 8);
}

bool is_yes_or_no(const sqlite::Value& cell) {
    const auto number = number_of_cell(cell);
    return number == 0 || number == 1;
}

// Adds what the row keeps in its rest; a rest that cannot be read gives a record that no id fits.
void put_rest_or_break(const sqlite::Value& cell, Values& record) {
    try {
        put_rest(cell, record);
    } catch (const RecordRefused&) {
        record["type"] = std::string();
    }
}

void check_aliases(RowCheck& check) {
    auto rows = check.database.prepare(
        "SELECT alias.id, first, second, shop.id, vouched, date, rest FROM alias LEFT JOIN shop ON shop.number = "
        "alias.shop");
    while (rows.step()) {
        ++check.findings.report().other_rows;
        const std::string first = text_of_cell(rows.value(1));
        Values record = alias_record(
            {first, text_of_cell(rows.value(2)), hex_of(bytes_of_cell(rows.value(3))), text_of_cell(rows.value(5))},
            check.practice);
        put_rest_or_break(rows.value(6), record);
        check_record(check, record, bytes_of_cell(rows.value(0)), "aliases", first);
        if (!is_yes_or_no(rows.value(4))) check.findings.fact("aliases that are not what was written", first);
    }
}

void check_key_changes(RowCheck& check) {
    auto rows = check.database.prepare("SELECT id, shop, old_key, new_key, date, signature, rest FROM key_change");
    while (rows.step()) {
        ++check.findings.report().other_rows;
        const KeyChange change{bytes_of_cell(rows.value(1)), bytes_of_cell(rows.value(2)), bytes_of_cell(rows.value(3)),
                               text_of_cell(rows.value(4)), bytes_of_cell(rows.value(5))};
        Values record = key_record(change, check.practice);
        put_rest_or_break(rows.value(6), record);
        check_record(check, record, bytes_of_cell(rows.value(0)), "changes of key",
                     fmt::format("of shop {}", short_name(change.shop)));
    }
}

void check_other_records(RowCheck& check) {
    constexpr std::string_view broken = "records kept unread that are not what was written";
    auto rows = check.database.prepare("SELECT id, type, shop, path, vouched, line FROM other_record");
    RecordTokens tokens;
    while (rows.step()) {
        ++check.findings.report().other_rows;
        const std::string id = bytes_of_cell(rows.value(0)), line = text_of_cell(rows.value(5));
        const RecordHead head = tokens.read(line) ? head_of(tokens) : RecordHead();
        const bool is_same = bytes_of_hex(to_hex(record_id(line))) == id && head.type == text_of_cell(rows.value(1)) &&
                             bytes_of_hex(head.shop) == bytes_of_cell(rows.value(2)) &&
                             head.path == text_of_cell(rows.value(3)) && is_yes_or_no(rows.value(4));
        if (!is_same) check.findings.fact(std::string(broken), short_name(id));
    }
}

void check_packs(RowCheck& check) {
    auto rows = check.database.prepare(
        "SELECT relayed.id, EXISTS (SELECT 1 FROM pack WHERE pack.id = brought_by), vouched_by IS NULL OR EXISTS "
        "(SELECT"
        " 1 FROM pack WHERE pack.id = vouched_by), EXISTS (SELECT 1 FROM note WHERE note.id = relayed.id) FROM "
        "relayed");
    while (rows.step()) {
        ++check.findings.report().other_rows;
        const std::string name = fmt::format("note {}", short_name(bytes_of_cell(rows.value(0))));
        if (number_of_cell(rows.value(1)) != 1 || number_of_cell(rows.value(2)) != 1)
            check.findings.fact("notes of other shops whose pack is not in the list of packs", name);
        if (number_of_cell(rows.value(3)) != 1) check.findings.fact("notes that were brought and are gone", name);
    }
}

bool has_table(sqlite::Database& database, std::string_view name) {
    auto rows = database.prepare("SELECT 1 FROM sqlite_schema WHERE type = 'table' AND name = ?1");
    rows.bind_all(name);
    return rows.step();
}

}  // namespace

void check_exchange(RowCheck& check) {
    // a file of an earlier schema has fewer tables; a lost one was told of already
    if (has_table(check.database, "alias")) check_aliases(check);
    if (has_table(check.database, "key_change")) check_key_changes(check);
    if (has_table(check.database, "other_record")) check_other_records(check);
    if (has_table(check.database, "relayed") && has_table(check.database, "pack")) check_packs(check);
}

}  // namespace tapbook
