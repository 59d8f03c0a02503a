// How is one record of a pack put where it belongs? Rows are added, never changed, but for one thing: that a shop has
// vouched for its record, which only grows. For the files of this folder only.
#pragma once

#include <map>
#include <memory>
#include <string>
#include <vector>

#include "catalog/state.h"

namespace tapbook {

// What became of one record.
enum class Arrival {
    fresh,          // it was not here
    here,           // nothing changed
    fresh_vouched,  // it was here; only now its own shop vouches for it
};

class Arrivals {
  public:
    // REQUIRES an open transaction for as long as this lives. `pack` is the one the records came in.
    Arrivals(sqlite::Database& database, const RecordId& pack);

    // `vouched`: the record's own shop signed the pack. REQUIRES that fault_of() found nothing.
    Arrival take(const RecordTokens& record, const RecordHead& head, const PackedRecord& packed, bool vouched);

    // Keeps who brought the notes that were new. REQUIRES that nothing is taken afterwards.
    void finish();

  private:
    struct EntryWriting {
        sqlite::Statement insert;
        CellBinding cells;
    };

    Arrival take_note(const RecordTokens& record, const RecordId& id, bool vouched);
    Arrival take_entry(const RecordTokens& record, const RecordId& id, EntryKind kind);
    Arrival take_withdrawal(const RecordTokens& record, const RecordId& id, bool vouched);
    Arrival take_alias(const RecordTokens& record, const RecordId& id, bool vouched);
    Arrival take_key(const RecordTokens& record, const RecordId& id);
    Arrival take_other(const RecordTokens& record, const RecordHead& head, const PackedRecord& packed, bool vouched);
    EntryWriting& writing_of(EntryKind kind);
    Arrival arrival_of(sqlite::Statement& insert);
    Arrival vouch(std::string_view table, const RecordId& id);

    sqlite::Database& database_;
    RecordId pack_;
    LedgerWriting ledger_;
    sqlite::Statement relay_, vouch_;
    bool has_relayed_ = false;       // some note here was brought by another shop
    std::vector<RecordId> relayed_;  // by this pack
    std::map<EntryKind, EntryWriting> entries_;
};

}  // namespace tapbook
