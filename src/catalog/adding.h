// What do the ways of writing share (a file, one note, a job's closing, an undo)? Adding inside an open transaction,
// and remembering what was added as one action that undo can reverse. For the files of this folder only.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "catalog/state.h"

namespace tapbook {

// A part's terms as they were before an action changed them; absent: it had none.
struct TermsBefore {
    std::string part;
    std::optional<Terms> terms;
    std::optional<int> job = {};  // the change belonged to
    bool by_closing = false;      // closing that job made it
};

struct Added {
    AddReport report;
    std::vector<RecordId> records;  // new ones: entries and notes
    std::vector<RecordId> notes;    // of the batch's notes in their order, new or here already
    std::vector<RowFate> entry_fates, note_fates, terms_fates;  // in the batch's order
    std::vector<TermsBefore> terms_before;
    bool changes_cars = false;  // a vehicle entry was written
};

// Puts the batch in. Throws InputRefused (checks that need the store). REQUIRES an open transaction, which the caller
// commits or gives up.
enum class GradeMoves { told, untold };
Added add_in_transaction(Catalog::State& state, const Catalog& catalog, const Batch& batch, const std::string& today,
                         GradeMoves moves = GradeMoves::told);

// Which of the authors that the batch names may write here.
Authors known_authors(const Catalog::State& state, const Batch& batch);

// What every writing command does: `work` in one transaction, which is kept when `is_kept` says so of its report; the
// report then says that it was written. Throws what `work` throws, and CatalogError for trouble of the store.
template <class Work, class IsKept>
auto in_one_transaction(const Catalog::State& state, Work work, IsKept is_kept) {
    try {
        sqlite::Transaction transaction(state.database);
        auto report = work();
        if (!is_kept(report)) return report;
        transaction.commit();
        report.written = true;
        return report;
    } catch (const sqlite::Error& error) {
        throw_catalog_error(error, state.file);
    }
}

// One row of the action table for what was added; none when nothing was. `words` say what was done: "add car.toml".
void remember_action(sqlite::Database& database, const std::string& today, std::string_view words, const Added& added);

// The salted token of the words that tell a car apart, without blanks and case, so that "AB 123" and "ab123" are one
// car. The words themselves are kept nowhere.
std::string own_car_token(sqlite::Database& database, std::string_view words);

// The grade of the question that notes of this kind answer first: the pair, the switched class, the premium flag.
Grade grade_of(const std::vector<Note>& notes, NoteKind kind, const KnownShops& known,
               std::optional<ConnectorSide> side, int withdrawn);

// The connector side of a tap point, when it has one.
std::optional<ConnectorSide> side_of_tap(sqlite::Database& database, const std::string& path);

// What the checks say of a note that was added, refusals first: alone (`values` as it was written), against today, and
// against what the ledger held `before`.
std::vector<EntryComplaint> complaints_on(Catalog::State& state, const Values& values, const Note& note,
                                          const TapLedger& before, const std::string& today);

// Adds this shop's withdrawal of its note; the record's id. Nothing is checked here. REQUIRES an open transaction and a
// note of this shop (in a practice catalog: of any shop, in whose name it is withdrawn).
RecordId insert_withdrawal(Catalog::State& state, const RecordId& note, WithdrawalReason reason,
                           const std::string& today);

}  // namespace tapbook
