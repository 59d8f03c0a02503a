// How does one visit become a note? Inside one transaction: what the program can know is filled in, the note is added
// as a file's would be, then held against what was there before. A refusal or a dry run gives everything up.
#include <fmt/format.h>

#include <algorithm>

#include "catalog/adding.h"
#include "catalog/alias_classes.h"
#include "catalog/ledger_rows.h"
#include "catalog/tap_ledger.h"

namespace tapbook {
namespace {

constexpr std::string_view last_initials = "last_initials";  // setting

std::string setting_of(sqlite::Database& database, std::string_view name) {
    auto rows = database.prepare("SELECT value FROM setting WHERE name = ?1");
    rows.bind_all(name);
    return rows.step() ? std::string(rows.text(0)) : std::string();
}

void put_setting(sqlite::Database& database, std::string_view name, std::string_view value) {
    auto put = database.prepare("INSERT OR REPLACE INTO setting (name, value) VALUES (?1, ?2)");
    put.bind_all(name, value);
    put.run();
}

// Taps of the same name in the other sound systems and bodies of the model, with a settled pair.
std::vector<SisterTap> sisters_of(sqlite::Database& database, const std::string& path, const KnownShops& known) {
    constexpr std::size_t model_depth = 2;
    std::vector<SisterTap> sisters;
    const auto model = path_head(path, model_depth);
    LedgerNotes notes;
    std::string car;
    for (const auto& tap : current_entries(database, EntryKind::tap, below_first(model), below_end(model))) {
        const std::string other = text_field(tap.entry.values, "path");
        if (other == path || path_tail(other, system_depth) != path_tail(path, system_depth)) continue;
        if (const auto head = path_head(other, vehicle_depth); head != car) {
            car = head;
            notes = notes_of_vehicle(database, car);
        }
        const auto live = notes.live.find(other);
        if (live == notes.live.end()) continue;
        const auto side = word_field<ConnectorSide>(tap.entry.values, "side");
        if (const auto pair = pair_standing(live->second, side, known).pair.value) sisters.push_back({other, *pair});
    }
    return sisters;
}

std::optional<OutputStage> expected_stage(sqlite::Database& database, const std::string& path) {
    const auto entry =
        entry_of_class(database, counting_in(database).same, EntryKind::circuit, path_head(path, circuit_depth));
    return entry ? std::optional(circuit_of(entry->values).output) : std::nullopt;
}

}  // namespace

std::vector<EntryComplaint> complaints_on(Catalog::State& state, const Values& values, const Note& note,
                                          const TapLedger& before, const std::string& today) {
    const auto stage = expected_stage(state.database, note.path);
    auto list = check_note(values, stage ? &*stage : nullptr);
    if (note.date > today)
        list.push_back({EntrySeverity::refused, "date", fmt::format("{} is after today ({})", note.date, today), {}});
    const auto sisters = note.kind == NoteKind::pair ? sisters_of(state.database, note.path, before.witnesses.known)
                                                     : std::vector<SisterTap>();
    const auto more = check_against_ledger(note, before.live(), before.witnesses, sisters);
    list.insert(list.end(), more.begin(), more.end());
    std::stable_sort(list.begin(), list.end(),
                     [](const EntryComplaint& a, const EntryComplaint& b) { return a.severity < b.severity; });
    return list;
}

namespace {

class NoteTaker {
  public:
    NoteTaker(Catalog::State& state, const Catalog& catalog, const NoteDraft& draft, const std::string& today)
        : state_(state), catalog_(catalog), draft_(draft), today_(today) {
        report_.path = text_field(draft.values, "path");
        report_.kind = word_field<NoteKind>(draft.values, "kind").value_or(NoteKind::pair);
    }

    NoteReport take(const NoteTaking& taking) {
        fill_in();
        TapLedger before = ledger_of(state_, report_.path);
        before.kind = report_.kind;
        report_.before = report_.after = standing_of_ledger(before, report_.kind);
        if (const auto same = same_note_today()) {
            report_.id = *same;
            report_.already_here = true;
            report_.next = next_step(report_.kind, before.live(), before.witnesses, state_.own.id);
            return std::move(report_);
        }
        Batch batch;
        batch.notes = {draft_};
        const Added added = add_in_transaction(state_, catalog_, batch, today_, GradeMoves::untold);
        report_.id = added.notes.front();
        const TapLedger after = ledger_of(state_, report_.path);
        report_.after = standing_of_ledger(after, report_.kind);
        report_.next = next_step(report_.kind, after.live(), after.witnesses, state_.own.id);
        check(before, after);
        report_.is_refused = holds_back(taking.is_sure);
        if (const auto initials = text_field(draft_.values, "initials"); !initials.empty())
            put_setting(state_.database, last_initials, initials);
        remember_action(state_.database, today_, taking.words, added);
        return std::move(report_);
    }

  private:
    // Today, the initials used last, the tap's side, the next turn of this car's day.
    void fill_in() {
        Values& values = draft_.values;
        values.try_emplace("date", today_);
        if (const auto initials = setting_of(state_.database, last_initials); !initials.empty())
            values.try_emplace("initials", initials);
        if (const auto side = side_of_tap(state_.database, report_.path); side && report_.kind != NoteKind::system)
            values.try_emplace("side", std::string(word_of(*side)));
        if (!draft_.car_words.empty()) car_ = own_car_token(state_.database, draft_.car_words);
        read_own_notes();
        const bool is_turn_said = values.contains("turn");
        has_own_turn_ = is_turn_said;
        if (is_turn_said || own_today_.empty()) return;
        int last = 0;
        for (const auto& row : own_today_) last = std::max(last, whole_field(row.values, "turn").value_or(0));
        values["turn"] = std::int64_t{last + 1};
    }

    // This shop's notes of the same car and day, withdrawn ones included: a withdrawn note said again is a new note.
    void read_own_notes() {
        for (auto& row : ledger_rows_of(state_.database, path_head(report_.path, vehicle_depth), state_.own.id,
                                        text_field(draft_.values, "date")))
            if (text_field(row.values, "car") == car_) own_today_.push_back(std::move(row));
    }

    std::optional<RecordId> same_note_today() const {
        Values wanted = draft_.values;
        if (!car_.empty()) wanted["car"] = car_;
        if (!has_own_turn_) wanted.erase("turn");
        for (const auto& row : own_today_) {
            Values stored = row.values;
            stored.erase("shop");
            if (!has_own_turn_) stored.erase("turn");
            if (!row.withdrawn && stored == wanted) return row.id;
        }
        return std::nullopt;
    }

    void check(const TapLedger& before, const TapLedger& after) {
        for (const auto& entry : after.notes)
            if (entry.note.id == report_.id)
                report_.complaints = complaints_on(state_, draft_.values, entry.note, before, today_);
    }

    bool holds_back(bool is_sure) const {
        return std::any_of(report_.complaints.begin(), report_.complaints.end(), [&](const EntryComplaint& complaint) {
            return complaint.severity == EntrySeverity::refused ||
                   (complaint.severity == EntrySeverity::sure && !is_sure);
        });
    }

    Catalog::State& state_;
    const Catalog& catalog_;
    NoteDraft draft_;
    const std::string& today_;
    std::string car_;
    bool has_own_turn_ = false;
    std::vector<LedgerRow> own_today_;
    NoteReport report_;
};

}  // namespace

NoteReport Catalog::take_note(const NoteDraft& draft, const NoteTaking& taking, const std::string& today) {
    return in_one_transaction(
        *state_, [&] { return NoteTaker(*state_, *this, draft, today).take(taking); },
        [&](const NoteReport& report) { return !report.is_refused && !report.already_here && !taking.dry_run; });
}

}  // namespace tapbook
