// What does the ledger hold for one vehicle, withdrawn and blocked notes included? For the files of this folder only.
#pragma once

#include <vector>

#include "catalog/state.h"

namespace tapbook {

struct LedgerRow {
    RecordId id;
    Values values;
    bool vouched, withdrawn, blocked;
};

// Every note of a vehicle in (path, id) order.
std::vector<LedgerRow> ledger_rows(sqlite::Database& database, std::string_view vehicle_path);

}  // namespace tapbook
