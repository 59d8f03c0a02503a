// How does a batch go in row by row? What the store refuses is taken out first; the rest goes in as add() puts it, in
// the same transaction. A draft that turns out too long for a record is taken out as well, and the rest starts again.
#include <fmt/format.h>

#include <algorithm>

#include "catalog/adding.h"

namespace tapbook {
namespace {

class RowsAdding {
  public:
    RowsAdding(Catalog::State& state, const Catalog& catalog, const Batch& batch, const std::string& today)
        : state_(state), catalog_(catalog), batch_(batch), today_(today) {
        fates_.entries.resize(batch.entries.size());
        fates_.notes.resize(batch.notes.size());
        fates_.terms.resize(batch.terms.size());
        for (auto& found : complaints_on_batch(batch, catalog, known_authors(state, batch)))
            refuse(fates_of(found.of)[found.index], std::move(found.complaint));
    }

    RowFates run(RefusedRows refused, bool dry_run) {
        while (!try_to_add(refused, dry_run)) {
        }
        return std::move(fates_);
    }

  private:
    std::vector<DraftFate>& fates_of(DraftOf of) {
        switch (of) {
            case DraftOf::entry:
                return fates_.entries;
            case DraftOf::note:
                return fates_.notes;
            case DraftOf::terms:
                break;
        }
        return fates_.terms;
    }

    static void refuse(DraftFate& fate, Complaint complaint) {
        fate.fate = RowFate::refused;
        if (!fate.complaint) fate.complaint = std::move(complaint);
    }

    template <class Draft>
    static std::vector<Draft> without_refused(const std::vector<Draft>& drafts, const std::vector<DraftFate>& fates) {
        std::vector<Draft> left;
        for (std::size_t i = 0; i < drafts.size(); ++i)
            if (fates[i].fate != RowFate::refused) left.push_back(drafts[i]);
        return left;
    }

    static void tell(std::vector<DraftFate>& fates, const std::vector<RowFate>& of_the_left) {
        auto next = of_the_left.begin();
        for (auto& fate : fates)
            if (fate.fate != RowFate::refused) fate.fate = *next++;
    }

    // Refuses the draft at that place; false when there is none.
    template <class Draft>
    static bool refuse_at(const Complaint& complaint, const std::vector<Draft>& drafts, std::vector<DraftFate>& fates) {
        for (std::size_t i = 0; i < drafts.size(); ++i) {
            const SourcePlace &place = drafts[i].place, &other = complaint.place;
            if (place.line != other.line || place.column != other.column || fates[i].fate == RowFate::refused) continue;
            refuse(fates[i], complaint);
            return true;
        }
        return false;
    }

    // False: another draft was refused on the way, and nothing is done yet.
    bool try_to_add(RefusedRows refused, bool dry_run) {
        Batch left{batch_.file, batch_.practice, batch_.practice_place, {}, {}, {}, batch_.shops};
        left.entries = without_refused(batch_.entries, fates_.entries);
        left.notes = without_refused(batch_.notes, fates_.notes);
        left.terms = without_refused(batch_.terms, fates_.terms);
        try {
            sqlite::Transaction transaction(state_.database);
            const Added added = add_in_transaction(state_, catalog_, left, today_);
            tell(fates_.entries, added.entry_fates);
            tell(fates_.notes, added.note_fates);
            tell(fates_.terms, added.terms_fates);
            fates_.report = added.report;
            if (dry_run || (refused == RefusedRows::hold_back && fates_.has_refused())) return true;
            remember_action(state_.database, today_, fmt::format("add {}", batch_.file), added);
            if (added.changes_cars || !has_kept_names(state_.database)) keep_names(state_.database);
            transaction.commit();
            fates_.report.written = true;
            return true;
        } catch (const InputRefused& too_long) {
            bool any = false;
            for (const auto& complaint : too_long.complaints())
                any = refuse_at(complaint, batch_.entries, fates_.entries) ||
                      refuse_at(complaint, batch_.notes, fates_.notes) ||
                      refuse_at(complaint, batch_.terms, fates_.terms) || any;
            if (!any) throw;
            return false;
        }
    }

    Catalog::State& state_;
    const Catalog& catalog_;
    const Batch& batch_;
    const std::string& today_;
    RowFates fates_;
};

}  // namespace

bool RowFates::has_refused() const {
    const auto is_refused = [](const DraftFate& fate) { return fate.fate == RowFate::refused; };
    return std::any_of(entries.begin(), entries.end(), is_refused) ||
           std::any_of(notes.begin(), notes.end(), is_refused) || std::any_of(terms.begin(), terms.end(), is_refused);
}

RowFates Catalog::add_rows(const Batch& batch, RefusedRows refused, bool dry_run, const std::string& today) {
    try {
        return RowsAdding(*state_, *this, batch, today).run(refused, dry_run);
    } catch (const sqlite::Error& error) {
        throw_catalog_error(error, state_->file);
    }
}

}  // namespace tapbook
