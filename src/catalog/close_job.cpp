// How do the readings of a job become notes? One note for each place, added as a file's would be, in one transaction
// with the closing. A place whose note stands in the ledger as it is keeps it; a changed one is withdrawn and noted
// anew.
#include <fmt/format.h>

#include <algorithm>

#include "catalog/job_rows.h"
#include "catalog/ledger_rows.h"
#include "catalog/stock_rows.h"
#include "catalog/tap_ledger.h"

namespace tapbook {
namespace {

constexpr std::string_view every_rest = "rest";

// Does the note answer anything, or only say under which conditions?
bool says_something(const Values& values) {
    for (const auto& row : note_fields())
        if (row.voted && values.contains(row.field.stored)) return true;
    for (const std::string_view name :
         {"ac_mv", "ac_positive_mv", "ac_negative_mv", "dc_positive_mv", "dc_negative_mv", "key_off_mv", "accessory_mv",
          "run_mv", "crank_mv", "retained_s", "tell", "hazards", "photo", "remarks"})
        if (values.contains(name)) return true;
    return false;
}

bool has_earlier_work(const ShopJob& job) {
    return std::any_of(job.came.begin(), job.came.end(), [](const CheckEntry& entry) {
        return entry.item == CheckItem::earlier_work && entry.answer == CheckAnswer::bad;
    });
}

Method method_of(const Values& readings) {
    for (const std::string_view name : {"ac_mv", "ac_positive_mv", "ac_negative_mv", "dc_positive_mv", "dc_negative_mv",
                                        "key_off_mv", "accessory_mv", "run_mv", "crank_mv"})
        if (readings.contains(name)) return Method::metered;
    return Method::seen;
}

class JobCloser {
  public:
    JobCloser(Catalog::State& state, const Catalog& catalog, ShopJob job, const JobClosing& closing,
              const std::string& today)
        : state_(state), catalog_(catalog), job_(std::move(job)), closing_(closing), today_(today) {}

    // Throws InputRefused with everything that holds the closing back.
    JobCloseReport run() {
        need_open(job_);
        fill_checks(job_, CheckList::left, closing_.left);
        check_actions();
        check_left_list();
        std::vector<TapLedger> before;
        for (const auto& visit : job_.visits) before.push_back(ledger_of(state_, visit.path));
        for (auto& visit : job_.visits) report_.visits.push_back(end_visit(visit));
        for (std::size_t i = 0; i < job_.visits.size(); ++i) finish_visit(report_.visits[i], before[i]);
        check_sure_words();
        if (!complaints_.empty()) throw InputRefused(std::move(complaints_));
        std::erase_if(job_.visits, [](const JobVisit& visit) { return visit.readings.empty() && !visit.note; });
        close();
        remember_action(state_.database, today_, fmt::format("close job {}", job_.number), added_);
        return std::move(report_);
    }

  private:
    void complain(std::string message, std::string hint) {
        complaints_.push_back({place_of_job(job_), std::move(message), std::move(hint)});
    }

    bool is_sure(std::string_view word) {
        known_words_.emplace(word);
        return closing_.sure.contains(word);
    }

    void check_actions() {
        for (const auto& action : job_.actions)
            if (action.closed.empty())
                complain(
                    fmt::format("temporary action {} is open: {}", action.number, action.words),
                    fmt::format("put it back, then `tapbook job action {} --done {}`", job_.number, action.number));
    }

    void check_left_list() {
        const bool all = is_sure(every_rest);
        std::string missing;
        for (const CheckItem item : missing_items(job_.left))
            if (!is_sure(word_of(item)) && !all)
                missing += fmt::format("{}{}", missing.empty() ? "" : ",", word_of(item));
        for (const auto& named : words_of<CheckItem>()) known_words_.emplace(named.word);
        if (!missing.empty())
            complain(fmt::format("nobody has looked at: {}", missing),
                     fmt::format(
                         "look and write `tapbook job left {} ITEM=ok ...`, or leave them out knowingly: --sure rest",
                         job_.number));
    }

    void check_sure_words() {
        std::vector<std::string_view> known(known_words_.begin(), known_words_.end());
        for (const auto& word : closing_.sure) {
            if (known_words_.contains(word)) continue;
            const auto near = nearest(word, known);
            complain(fmt::format("--sure: \"{}\" is neither an item of the list nor a place of this job", word),
                     near ? fmt::format("did you mean {}?", *near) : "leave it out");
        }
    }

    // This shop's notes of the place on this car and day.
    std::vector<LedgerRow> own_notes_at(const JobVisit& visit) {
        std::vector<LedgerRow> own;
        for (auto& row : ledger_rows_at(state_.database, visit.path))
            if (text_field(row.values, "shop") == state_.own.id && text_field(row.values, "car") == job_.car)
                own.push_back(std::move(row));
        return own;
    }

    // Adds, keeps or withdraws the note of a place.
    ClosedVisit end_visit(JobVisit& visit) {
        ClosedVisit ended;
        ended.note.path = visit.path;
        ended.note.kind = visit.kind;
        const auto own = own_notes_at(visit);
        const auto is_live = [&](const RecordId& id) {
            return std::any_of(own.begin(), own.end(),
                               [&](const LedgerRow& row) { return row.id == id && !row.withdrawn; });
        };
        const bool had_note = visit.note && is_live(*visit.note);
        if (!says_something(visit.readings)) {
            ended.end = had_note ? VisitEnd::withdrawn : VisitEnd::nothing_to_note;
            if (had_note) withdraw(*visit.note, WithdrawalReason::typo, ended);
            visit.note.reset();
            return ended;
        }
        Values wanted = note_values(job_, visit, side_of_tap(state_.database, visit.path));
        if (const auto same = same_note(own, wanted, visit.readings.contains("side"))) {
            ended.end = had_note && *same != *visit.note ? VisitEnd::replaced : VisitEnd::unchanged;
            if (ended.end == VisitEnd::replaced) withdraw(*visit.note, WithdrawalReason::metered_again, ended);
            visit.note = ended.note.id = *same;
            return ended;
        }
        ended.end = had_note ? VisitEnd::replaced : VisitEnd::noted;
        if (had_note) withdraw(*visit.note, WithdrawalReason::metered_again, ended);
        give_turn(own, wanted);
        visit.note = ended.note.id = add(wanted);
        ended.note.written = true;
        return ended;
    }

    // A side that was only filled in may be left out of the note that stands.
    static std::optional<RecordId> same_note(const std::vector<LedgerRow>& own, const Values& wanted,
                                             bool is_side_said) {
        for (const auto& row : own) {
            Values stored = row.values;
            for (const std::string_view name : {"shop", "car", "turn"})
                if (const auto found = stored.find(name); found != stored.end()) stored.erase(found);
            if (const auto side = wanted.find("side"); !is_side_said && side != wanted.end()) stored.insert(*side);
            if (!row.withdrawn && stored == wanted) return row.id;
        }
        return std::nullopt;
    }

    // A later note of one car and day counts as the newer, and is never the same record as a withdrawn one.
    static void give_turn(const std::vector<LedgerRow>& own, Values& wanted) {
        int last = -1;
        for (const auto& row : own)
            if (text_field(row.values, "date") == text_field(wanted, "date"))
                last = std::max(last, whole_field(row.values, "turn").value_or(0));
        if (last >= 0) wanted["turn"] = std::int64_t{last + 1};
    }

    RecordId add(Values values) {
        if (!job_.car.empty()) values["car"] = job_.car;
        Batch batch;
        batch.file = place_of_job(job_).file;
        batch.notes.push_back({std::move(values), {}, {}, place_of_job(job_)});
        const Added added = add_in_transaction(state_, catalog_, batch, today_);
        added_.records.insert(added_.records.end(), added.records.begin(), added.records.end());
        return added.notes.front();
    }

    void withdraw(const RecordId& note, WithdrawalReason reason, ClosedVisit& ended) {
        added_.records.push_back(insert_withdrawal(state_, note, reason, today_));
        ended.note.id = note;
    }

    // What the notes say now, and what the checks ask of the new one.
    void finish_visit(ClosedVisit& ended, const TapLedger& before) {
        NoteReport& note = ended.note;
        note.before = standing_of_ledger(before, note.kind);
        const TapLedger after = ledger_of(state_, note.path);
        note.after = standing_of_ledger(after, note.kind);
        note.next = next_step(note.kind, after.live(), after.witnesses, state_.own.id);
        const auto place = place_in_job(note.path);
        known_words_.emplace(place);
        if (!note.written) return;
        for (const auto& row : after.notes)
            if (row.note.id == note.id)
                note.complaints = complaints_on(state_, values_of_note(note.path, note.id), row.note, before, today_);
        for (const auto& complaint : note.complaints) {
            if (complaint.severity == EntrySeverity::refused)
                complain(fmt::format("{}: {}", place, complaint.text), "read it again with `tapbook job reading`");
            if (complaint.severity == EntrySeverity::sure && !is_sure(place))
                complain(fmt::format("are you sure? {}: {}", place, complaint.text),
                         fmt::format("read it again, or say that it is so: --sure {}", place));
        }
    }

    Values values_of_note(const std::string& path, const RecordId& id) {
        for (const auto& row : ledger_rows_at(state_.database, path))
            if (row.id == id) return row.values;
        return {};
    }

    void close() {
        report_.stock = take_for_job(state_.database, job_, today_, added_);
        job_.state = JobState::closed;
        job_.closed = today_;
        job_.outcome = closing_.outcome;
        if (closing_.remarks) job_.remarks = *closing_.remarks;
        if (closing_.minutes) job_.taken_minutes = *closing_.minutes;
        put_job(state_.database, job_);
        report_.job = read_job_row(state_.database, job_.number);
    }

    Catalog::State& state_;
    const Catalog& catalog_;
    ShopJob job_;
    const JobClosing& closing_;
    const std::string& today_;
    std::vector<Complaint> complaints_;
    std::set<std::string, std::less<>> known_words_;
    Added added_;
    JobCloseReport report_;
};

}  // namespace

std::string_view place_in_job(std::string_view path) {
    const auto place = path_tail(path, system_depth);
    return place.empty() ? path_tail(path, vehicle_depth) : place;
}

Values note_values(const ShopJob& job, const JobVisit& visit, std::optional<ConnectorSide> side) {
    Values values = visit.readings;
    values["kind"] = std::string(word_of(visit.kind));
    values["path"] = visit.path;
    values["date"] = visit.date;
    values.try_emplace("method", std::string(word_of(method_of(visit.readings))));
    if (job.year) values["year"] = std::int64_t{*job.year};
    if (!job.initials.empty()) values.try_emplace("initials", job.initials);
    if (visit.kind == NoteKind::system) return values;
    if (side) values.try_emplace("side", std::string(word_of(*side)));
    if (has_earlier_work(job)) values.try_emplace("altered", true);
    return values;
}

JobCloseReport Catalog::close_job(int number, const JobClosing& closing, const std::string& today, bool dry_run) {
    return in_one_transaction(
        *state_,
        [&] { return JobCloser(*state_, *this, read_job_row(state_->database, number), closing, today).run(); },
        [&](const auto&) { return !dry_run; });
}

}  // namespace tapbook
