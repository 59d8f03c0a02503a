// How is the last own action reversed without erasing anything? Its notes are withdrawn, its entries get a new revision
// equal to the one before, or are retired when they were new, and its terms are put back.
#include <fmt/format.h>

#include <algorithm>
#include <set>

#include "catalog/stock_rows.h"
#include "catalog/tap_ledger.h"

namespace tapbook {
namespace {

struct Action {
    std::int64_t number = 0;
    std::string date, words;
    std::set<RecordId> records;
};

std::set<RecordId> ids_in(std::string_view lines) {
    std::set<RecordId> ids;
    while (!lines.empty()) {
        const auto end = std::min(lines.find('\n'), lines.size());
        RecordId id{};
        if (from_hex(lines.substr(0, end), id)) ids.insert(id);
        lines.remove_prefix(std::min(end + 1, lines.size()));
    }
    return ids;
}

// The newest action that is neither undone nor itself an undo.
std::optional<Action> last_action(sqlite::Database& database) {
    auto rows = database.prepare(
        "SELECT number, date, words, records FROM action WHERE undone_by IS NULL AND number NOT IN"
        " (SELECT undone_by FROM action WHERE undone_by IS NOT NULL) ORDER BY number DESC LIMIT 1");
    if (!rows.step()) return std::nullopt;
    return Action{rows.integer(0), std::string(rows.text(1)), std::string(rows.text(2)), ids_in(rows.text(3))};
}

RecordId id_of_blob(std::string_view bytes) {
    RecordId id{};
    from_hex(hex_of(bytes), id);
    return id;
}

// One revision that the action wrote.
struct WrittenEntry {
    EntryKind kind;
    std::string path;
    std::int64_t revision;
};

class Undoing {
  public:
    Undoing(Catalog::State& state, Action action, const std::string& today)
        : state_(state), database_(state.database), action_(std::move(action)), today_(today) {
        report_.words = action_.words;
        report_.date = action_.date;
    }

    UndoReport run() {
        find_notes();
        const auto entries = written_entries();
        find_withdrawals();
        if (notes_.empty() && entries.empty() && !has_terms() && !withdrawn_.empty()) refuse_withdrawal();
        std::set<std::string> paths;
        for (const auto& [id, path] : notes_) paths.insert(path);
        const auto before = grades_at(database_, paths);
        for (const auto& [id, path] : notes_) withdraw(id, path);
        report_.moves = moves_between(before, grades_at(database_, paths));
        for (auto entry = entries.rbegin(); entry != entries.rend(); ++entry) put_back(*entry);
        restore_terms();
        if (added_.changes_cars) keep_names(database_);
        for (const auto& path : withdrawn_) report_.lines.push_back(fmt::format("stays withdrawn  note on {}", path));
        remember();
        return std::move(report_);
    }

  private:
    [[noreturn]] void refuse_withdrawal() const {
        throw CatalogError(
            CatalogTrouble::not_found, fmt::format("the last action was \"{}\": a withdrawal is final", action_.words),
            fmt::format("note it again: `tapbook note VEHICLE TAP ...` (it was on {})", withdrawn_.front()));
    }

    void find_notes() {
        auto rows = database_.prepare(
            "SELECT note.id, subject.path FROM note JOIN subject ON subject.tap = note.tap"
            " ORDER BY subject.path, note.id");
        while (rows.step())
            if (const RecordId id = id_of_blob(rows.blob(0)); action_.records.contains(id))
                notes_.emplace_back(id, std::string(rows.text(1)));
    }

    void find_withdrawals() {
        auto rows = database_.prepare("SELECT id, path FROM withdrawal ORDER BY path, id");
        while (rows.step())
            if (action_.records.contains(id_of_blob(rows.blob(0)))) withdrawn_.emplace_back(rows.text(1));
    }

    // In the order of kinds, so that what hangs on another entry comes after it.
    std::vector<WrittenEntry> written_entries() {
        std::vector<WrittenEntry> entries;
        for (const auto& kind : words_of<EntryKind>()) {
            auto rows = database_.prepare(fmt::format("SELECT id, path, revision FROM {} ORDER BY path", kind.word));
            while (rows.step())
                if (action_.records.contains(id_of_blob(rows.blob(0))))
                    entries.push_back({kind.value, std::string(rows.text(1)), rows.integer(2)});
        }
        return entries;
    }

    bool has_terms() {
        auto rows = database_.prepare("SELECT 1 FROM terms_before WHERE action = ?1");
        rows.bind_all(action_.number);
        return rows.step();
    }

    void withdraw(const RecordId& note, const std::string& path) {
        auto gone = database_.prepare("SELECT 1 FROM withdrawal WHERE target = ?1 AND vouched = 1");
        const std::string bytes = bytes_of_hex(to_hex(note));
        gone.bind_all(sqlite::BlobView{bytes});
        if (gone.step()) return;
        added_.records.push_back(insert_withdrawal(state_, note, WithdrawalReason::typo, today_));
        report_.lines.push_back(fmt::format("withdrawn  note      {} on {}", to_hex(note).substr(0, 8), path));
        ++report_.notes_withdrawn;
    }

    // A new revision with the values the path had before the action.
    void put_back(const WrittenEntry& written) {
        const auto now = winning_entries(database_, written.kind, written.path, written.path + '\x01');
        if (now.empty() || now.front().entry.revision != written.revision) {
            report_.lines.push_back(
                fmt::format("stays      {:<9} {}, changed again since", word_of(written.kind), written.path));
            return;
        }
        const auto before = entry_before(database_, written.kind, written.path, written.revision);
        StoredEntry entry{before ? before->values : now.front().entry.values, now.front().entry.revision + 1,
                          bytes_of_hex(state_.own.id)};
        entry.values["path"] = written.path;
        if (!before) entry.values["retired"] = std::string("undone");
        const RecordId id = record_id(record_line(entry_record(written.kind, entry, today_, state_.practice)));
        insert_entry(database_, written.kind, entry, id, today_);
        added_.records.push_back(id);
        added_.changes_cars = added_.changes_cars || written.kind == EntryKind::vehicle;
        before ? ++report_.entries_put_back : ++report_.entries_retired;
        report_.lines.push_back(
            fmt::format("{:<10} {:<9} {}", before ? "put back" : "retired", word_of(written.kind), written.path));
    }

    void forget_terms(const std::string& part) {
        auto forget = database_.prepare("DELETE FROM terms WHERE part = ?1");
        forget.bind_all(part);
        forget.run();
    }

    // The movement that undoes belongs to the same job.
    void restore_terms() {
        auto rows = database_.prepare(
            fmt::format("SELECT part, had_terms, job, by_closing, {} FROM terms_before WHERE action = ?1 ORDER BY part",
                        terms_columns(database_)));
        for (rows.bind_all(action_.number); rows.step();) {
            const std::string part(rows.text(0));
            const auto job = rows.optional_integer(2);
            const auto now = terms_of_part(database_, part);
            std::optional<Terms> before;
            if (rows.integer(1) == 1) before = terms_in(rows, 4);
            before ? write_terms(database_, part, *before) : forget_terms(part);
            book_difference(database_, now, before,
                            {0,
                             part,
                             MovementKind::undone,
                             0,
                             0,
                             today_,
                             job ? std::optional(static_cast<int>(*job)) : std::nullopt,
                             rows.optional_integer(3) == 1,
                             {}});
            ++report_.terms_restored;
            report_.lines.push_back(fmt::format("restored   terms     {}", part));
        }
    }

    // The undo is an action of its own, and the undone one points to it.
    void remember() {
        std::string records;
        for (const auto& id : added_.records) records += to_hex(id) + '\n';
        auto action = database_.prepare("INSERT INTO action (date, words, records) VALUES (?1, ?2, ?3)");
        action.bind_all(today_, fmt::format("undo {}", action_.words), records);
        action.run();
        auto mark = database_.prepare("UPDATE action SET undone_by = ?1 WHERE number = ?2");
        mark.bind_all(database_.last_insert_rowid(), action_.number);
        mark.run();
    }

    Catalog::State& state_;
    sqlite::Database& database_;
    Action action_;
    const std::string& today_;
    std::vector<std::pair<RecordId, std::string>> notes_;
    std::vector<std::string> withdrawn_;  // paths
    Added added_;
    UndoReport report_;
};

}  // namespace

UndoReport Catalog::undo(const std::string& today, bool dry_run) {
    return in_one_transaction(
        *state_,
        [&] {
            auto action = last_action(state_->database);
            if (!action)
                throw CatalogError(CatalogTrouble::not_found, "there is nothing to undo",
                                   "undo reverses what this shop added: notes, files, terms");
            return Undoing(*state_, std::move(*action), today).run();
        },
        [&](const auto&) { return !dry_run; });
}

}  // namespace tapbook
