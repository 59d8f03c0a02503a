// What lies in the ledger for one place, withdrawn and blocked notes included, and who wrote it?
#include <fmt/format.h>

#include <algorithm>
#include <tuple>

#include "catalog/adding.h"
#include "catalog/alias_classes.h"
#include "catalog/ledger_rows.h"
#include "catalog/tap_ledger.h"

namespace tapbook {
namespace {

struct Withdrawal {
    std::string date, reason;
};

// The first effective withdrawal of each note at a path, by target.
void find_withdrawals(sqlite::Database& database, std::string_view path, std::map<RecordId, Withdrawal>& found) {
    auto rows = database.prepare(
        "SELECT target, date, reason FROM withdrawal WHERE path = ?1 AND vouched = 1"
        " ORDER BY date DESC, id DESC");
    for (rows.bind_all(path); rows.step();) {
        RecordId target{};
        if (from_hex(hex_of(rows.blob(0)), target))
            found[target] = {std::string(rows.text(1)), std::string(rows.text(2))};
    }
}

std::map<std::string, std::string> shop_names(sqlite::Database& database) {
    std::map<std::string, std::string> names;
    auto rows = database.prepare("SELECT id, name FROM shop WHERE name IS NOT NULL");
    while (rows.step()) names[hex_of(rows.blob(0))] = rows.text(1);
    return names;
}

bool is_unrecorded(std::string_view path) {
    const auto parts = path_parts(path);
    return parts.size() > vehicle_depth && parts[vehicle_depth] == unrecorded_system;
}

NoteKind kind_of_place(sqlite::Database& database, const TapLedger& ledger, const AliasClasses& same) {
    if (path_parts(ledger.path).size() == system_depth) return NoteKind::system;
    if (!ledger.notes.empty()) return ledger.notes.front().note.kind;
    const auto circuit = entry_of_class(database, same, EntryKind::circuit, path_head(ledger.path, circuit_depth));
    if (!circuit) return NoteKind::pair;
    return carries_signal(circuit_of(circuit->values).role) ? NoteKind::pair : NoteKind::switched;
}

// The PROVEN values of the taps of the same name in the recorded systems of the car.
ProvenElsewhere proven_elsewhere(sqlite::Database& database, std::string_view path, NoteKind kind,
                                 const Counting& counting) {
    ProvenElsewhere proven;
    if (!is_unrecorded(path) || kind == NoteKind::system) return proven;
    for (const auto& [other, notes] : notes_of_car(database, counting.same, path_head(path, vehicle_depth)).live) {
        if (is_unrecorded(other) || path_tail(other, system_depth) != path_tail(path, system_depth)) continue;
        const auto side = side_of_class(database, counting.same, other);
        const NotedStanding standing = noted_standing(kind, notes, {side, counting.known, 0, {}});
        const Standing& first = standing_on(standing, questions_of(kind).front());
        if (first.grade == Grade::proven) proven.insert(*first.value);
    }
    return proven;
}

}  // namespace

std::vector<Note> TapLedger::live() const {
    std::vector<Note> list;
    for (const auto& entry : notes)
        if (entry.state == NoteState::live) list.push_back(entry.note);
    return list;
}

TapLedger ledger_of(Catalog::State& state, std::string_view path) {
    sqlite::Database& database = state.database;
    const Counting counting = counting_in(database);
    TapLedger ledger;
    ledger.path = counting.same.name_of(path);
    ledger.also = counting.same.members(path);
    std::erase(ledger.also, ledger.path);
    ledger.own_shop = state.own.id;
    ledger.practice = state.practice;
    ledger.shop_names = shop_names(database);
    std::map<RecordId, Withdrawal> withdrawn;
    std::vector<LedgerRow> rows;
    for (const auto& member : counting.same.members(path)) {
        find_withdrawals(database, member, withdrawn);
        for (auto& row : ledger_rows_at(database, member)) rows.push_back(std::move(row));
    }
    for (auto& row : rows) {
        LedgerNote entry{note_of(row.values, row.id), NoteState::live, {}, {}};
        entry.note.vouched = row.vouched;
        if (row.withdrawn) {
            entry.state = NoteState::withdrawn;
            if (const auto found = withdrawn.find(row.id); found != withdrawn.end()) {
                entry.withdrawn_on = found->second.date;
                entry.reason = found->second.reason;
            }
            if (!row.blocked) ++ledger.witnesses.withdrawn;
        }
        if (row.blocked) entry.state = NoteState::blocked;
        ledger.notes.push_back(std::move(entry));
    }
    std::sort(ledger.notes.begin(), ledger.notes.end(), [](const LedgerNote& a, const LedgerNote& b) {
        return std::tie(a.note.date, a.note.turn, a.note.id) < std::tie(b.note.date, b.note.turn, b.note.id);
    });
    ledger.kind = kind_of_place(database, ledger, counting.same);
    ledger.witnesses.side = side_of_class(database, counting.same, ledger.path);
    ledger.witnesses.proven_elsewhere = proven_elsewhere(database, ledger.path, ledger.kind, counting);
    ledger.witnesses.known = counting.known;
    return ledger;
}

NotedStanding standing_of_ledger(const TapLedger& ledger, NoteKind kind) {
    return noted_standing(kind, ledger.live(), ledger.witnesses);
}

std::map<std::string, Grade> grades_at(sqlite::Database& database, const std::set<std::string>& paths) {
    std::map<std::string, Grade> grades;
    const auto [known, same] = counting_in(database);
    const LedgerNotes notes = notes_of_classes(database, same, paths);
    for (const auto& path : paths) {
        const auto live = notes.live.find(path);
        const auto gone = notes.withdrawn.find(path);
        const std::vector<Note> list = live == notes.live.end() ? std::vector<Note>() : live->second;
        const NoteKind kind = list.empty() ? NoteKind::pair : list.front().kind;
        grades[path] = grade_of(list, kind, known, side_of_class(database, same, path),
                                gone == notes.withdrawn.end() ? 0 : gone->second);
    }
    return grades;
}

std::vector<AddReport::GradeMove> moves_between(const std::map<std::string, Grade>& before,
                                                const std::map<std::string, Grade>& after) {
    std::vector<AddReport::GradeMove> moves;
    for (const auto& [path, grade] : after)
        if (const auto found = before.find(path); found != before.end() && found->second != grade)
            moves.push_back({path, found->second, grade});
    return moves;
}

Grade grade_of(const std::vector<Note>& notes, NoteKind kind, const KnownShops& known,
               std::optional<ConnectorSide> side, int withdrawn) {
    const NotedStanding standing = noted_standing(kind, notes, {side, known, withdrawn, {}});
    return standing_on(standing, questions_of(kind).front()).grade;
}

namespace {

// As side_of_tap(), of one path only.
std::optional<ConnectorSide> side_at(sqlite::Database& database, const std::string& path) {
    auto rows = database.prepare(
        fmt::format("SELECT side, retired FROM tap WHERE path = ?1 AND {} ORDER BY revision DESC, shop DESC, id DESC"
                    " LIMIT 1",
                    not_by_blocked));
    rows.bind_all(path);
    if (!rows.step() || !rows.is_null(1)) return std::nullopt;
    return parse_word<ConnectorSide>(rows.optional_text(0).value_or(""));
}

}  // namespace

std::optional<ConnectorSide> side_of_class(sqlite::Database& database, const AliasClasses& same,
                                           const std::string& path) {
    for (const auto& member : same.members(path))
        if (const auto side = side_at(database, member)) return side;
    return std::nullopt;
}

std::optional<ConnectorSide> side_of_tap(sqlite::Database& database, const std::string& path) {
    return side_of_class(database, counting_in(database).same, path);
}

TapLedger Catalog::ledger_at(std::string_view path) const {
    try {
        return ledger_of(*state_, path);
    } catch (const sqlite::Error& error) {
        throw_catalog_error(error, state_->file);
    }
}

}  // namespace tapbook
