// What does the catalog take and hand out about single notes, withdrawals, undone actions and the list of shops? Plain
// values: no store behind them.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "catalog/batch.h"
#include "evidence/evidence.h"

namespace tapbook {

// How a note is taken.
struct NoteTaking {
    std::string words;     // what the shop's list of actions calls it
    bool is_sure = false;  // save it although a check asks "are you sure"
    bool dry_run = false;
};

// What taking a note did, or would do.
struct NoteReport {
    RecordId id{};
    std::string path;
    NoteKind kind = NoteKind::pair;
    std::vector<EntryComplaint> complaints;  // refusals first; is_refused says whether any of them held it back
    bool is_refused = false;
    bool already_here = false;  // this shop has noted the very same today
    bool written = false;
    NotedStanding before, after;
    std::string next;  // what would prove it
};

enum class NoteState { live, withdrawn, blocked };
template <>
struct NamedValues<NoteState> {
    static constexpr Named<NoteState> all[] = {
        {NoteState::live, "live"}, {NoteState::withdrawn, "withdrawn"}, {NoteState::blocked, "blocked"}};
};
static_assert(table_is_sound<NoteState>());

struct LedgerNote {
    Note note;
    NoteState state = NoteState::live;
    std::string withdrawn_on, reason;  // of a withdrawn one
};

// Everything noted at one place, with what is needed to count it.
struct TapLedger {
    std::string path;               // the smallest that the place is known by
    std::vector<std::string> also;  // its others: notes lie at any of them
    NoteKind kind = NoteKind::pair;
    std::vector<LedgerNote> notes;  // by date, turn and id
    Witnesses witnesses;
    std::string own_shop;
    std::map<std::string, std::string> shop_names;  // by id, of those that have one
    bool practice = false;

    // The notes that count.
    std::vector<Note> live() const;
};

struct FoundNote {
    RecordId id{};
    std::string path;
    std::string shop, shop_name;
    bool is_own = false;
};

struct WithdrawReport {
    RecordId note{};
    std::string path;
    NoteKind kind = NoteKind::pair;
    WithdrawalReason reason = WithdrawalReason::typo;
    bool was_withdrawn = false;  // before: nothing was added
    std::string earlier_reason, earlier_date;
    NotedStanding before, after;
    bool written = false;
};

struct UndoReport {
    std::string words, date;         // of the action that is undone
    std::vector<std::string> lines;  // one for each note, entry and part
    std::vector<AddReport::GradeMove> moves;
    int notes_withdrawn = 0, entries_put_back = 0, entries_retired = 0, terms_restored = 0;
    bool written = false;
};

struct ShopRow {
    std::string id, name;
    bool is_own = false, is_known = false, is_blocked = false;
    std::int64_t notes = 0;
};

enum class ShopChange { know, forget, block, unblock };
template <>
struct NamedValues<ShopChange> {
    static constexpr Named<ShopChange> all[] = {{ShopChange::know, "know"},
                                                {ShopChange::forget, "forget"},
                                                {ShopChange::block, "block"},
                                                {ShopChange::unblock, "unblock"}};
};
static_assert(table_is_sound<ShopChange>());

struct ShopReport {
    ShopRow shop;  // as it is afterwards
    ShopChange change = ShopChange::know;
    bool is_changed = false;
    std::vector<AddReport::GradeMove> moves;
    bool written = false;
};

}  // namespace tapbook
