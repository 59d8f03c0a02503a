// How is a note taken back? By a record of its own that repeats the note's path; the note itself stays.
#include <fmt/format.h>

#include <algorithm>

#include "catalog/adding.h"
#include "catalog/tap_ledger.h"

namespace tapbook {
namespace {

// Path and author of a note; absent when it is not in the ledger.
struct Place {
    std::string path, shop;  // shop: 16 bytes
    std::int64_t shop_number;
};

std::optional<Place> place_of_note(sqlite::Database& database, const RecordId& id) {
    auto rows = database.prepare(
        "SELECT subject.path, shop.id, shop.number FROM note"
        " JOIN subject ON subject.tap = note.tap JOIN shop ON shop.number = note.shop"
        " WHERE note.id = ?1");
    rows.bind_all(sqlite::BlobView{as_bytes(id)});
    if (!rows.step()) return std::nullopt;
    return Place{std::string(rows.text(0)), std::string(rows.blob(1)), rows.integer(2)};
}

// 16 bytes that begin with the digits and are filled up with `filler` digits.
std::string bound_of(std::string digits, char filler) {
    digits.resize(32, filler);
    return bytes_of_hex(digits);
}

// The note of that id, or nullptr.
const LedgerNote* find_note(const TapLedger& ledger, const RecordId& id) {
    for (const auto& entry : ledger.notes)
        if (entry.note.id == id) return &entry;
    return nullptr;
}

[[noreturn]] void refuse_unknown(const RecordId& note) {
    throw CatalogError(CatalogTrouble::not_found, fmt::format("there is no note {}", to_hex(note)),
                       "`tapbook note why VEHICLE TAP` lists the notes of a tap with their ids");
}

}  // namespace

Values withdrawal_record(const WithdrawalFields& fields, bool practice) {
    Values record = {{"type", std::string("withdrawal")}, {"target", fields.target}, {"path", fields.path},
                     {"reason", fields.reason},           {"shop", fields.shop},     {"date", fields.date}};
    if (practice) record["practice"] = true;
    return record;
}

RecordId insert_withdrawal(Catalog::State& state, const RecordId& note, WithdrawalReason reason,
                           const std::string& today) {
    const auto place = place_of_note(state.database, note);
    if (!place) refuse_unknown(note);
    const Values record = withdrawal_record(
        {to_hex(note), place->path, std::string(word_of(reason)), hex_of(place->shop), today}, state.practice);
    const RecordId id = record_id(record_line(record));
    auto insert = state.database.prepare(
        "INSERT OR IGNORE INTO withdrawal (target, id, path, shop, vouched, date, "
        "reason) VALUES (?1, ?2, ?3, ?4, 1, ?5, ?6)");
    insert.bind_all(sqlite::BlobView{as_bytes(note)}, sqlite::BlobView{as_bytes(id)}, place->path, place->shop_number,
                    today, word_of(reason));
    insert.run();
    return id;
}

std::vector<std::string> Catalog::withdrawal_lines() const {
    std::vector<std::pair<RecordId, std::string>> lines;
    auto rows = state_->database.prepare(
        "SELECT withdrawal.target, withdrawal.path, withdrawal.reason, shop.id, "
        "withdrawal.date, withdrawal.rest FROM withdrawal JOIN shop ON shop.number = "
        "withdrawal.shop");
    while (rows.step()) {
        Values record = withdrawal_record({hex_of(rows.blob(0)), std::string(rows.text(1)), std::string(rows.text(2)),
                                           hex_of(rows.blob(3)), std::string(rows.text(4))},
                                          state_->practice);
        put_rest(rows.value(5), record);
        std::string line = record_line(record);
        const RecordId id = record_id(line);
        lines.emplace_back(id, std::move(line));
    }
    std::sort(lines.begin(), lines.end());
    std::vector<std::string> sorted;
    for (auto& [id, line] : lines) sorted.push_back(std::move(line));
    return sorted;
}

std::vector<FoundNote> Catalog::notes_by_id(std::string_view hex) const {
    constexpr std::size_t most = 10;
    std::string digits(hex);
    for (char& c : digits)
        if (c >= 'A' && c <= 'F') c = static_cast<char>(c - 'A' + 'a');
    const std::string first = bound_of(digits, '0'), last = bound_of(digits, 'f');
    std::vector<FoundNote> found;
    if (first.empty() || last.empty() || digits.size() > 32) return found;
    try {
        auto rows = state_->database.prepare(
            "SELECT note.id, subject.path, shop.id, coalesce(shop.name, '') FROM note JOIN subject ON subject.tap = "
            "note.tap JOIN shop ON shop.number = note.shop WHERE note.id >= ?1 AND note.id <= ?2 ORDER BY note.id");
        for (rows.bind_all(sqlite::BlobView{first}, sqlite::BlobView{last}); found.size() < most && rows.step();) {
            FoundNote note{{}, std::string(rows.text(1)), hex_of(rows.blob(2)), std::string(rows.text(3)), false};
            from_hex(hex_of(rows.blob(0)), note.id);
            note.is_own = note.shop == state_->own.id;
            found.push_back(std::move(note));
        }
        return found;
    } catch (const sqlite::Error& error) {
        throw_catalog_error(error, state_->file);
    }
}

WithdrawReport Catalog::withdraw(const RecordId& note, WithdrawalReason reason, const std::string& today,
                                 bool dry_run) {
    const auto work = [&] {
        const auto place = place_of_note(state_->database, note);
        if (!place || hex_of(place->shop) != state_->own.id) refuse_unknown(note);
        const TapLedger before = ledger_of(*state_, place->path);
        const LedgerNote* entry = find_note(before, note);
        if (entry == nullptr) refuse_unknown(note);
        const NoteKind kind = entry->note.kind;
        WithdrawReport report{note,
                              place->path,
                              kind,
                              reason,
                              entry->state == NoteState::withdrawn,
                              entry->reason,
                              entry->withdrawn_on,
                              standing_of_ledger(before, kind),
                              {},
                              false};
        report.after = report.before;
        if (report.was_withdrawn) return report;
        Added added;
        added.records.push_back(insert_withdrawal(*state_, note, reason, today));
        report.after = standing_of_ledger(ledger_of(*state_, place->path), kind);
        remember_action(state_->database, today,
                        fmt::format("withdraw note {} of {}", to_hex(note).substr(0, 8), place->path), added);
        return report;
    };
    return in_one_transaction(*state_, work,
                              [&](const WithdrawReport& report) { return !report.was_withdrawn && !dry_run; });
}

}  // namespace tapbook
