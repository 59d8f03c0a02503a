// What did adding a batch do with each of its drafts? For inputs that people follow row by row: a spreadsheet.
#pragma once

#include <optional>
#include <vector>

#include "catalog/batch.h"

namespace tapbook {

enum class RowFate { added, changed, here, refused };
template <>
struct NamedValues<RowFate> {
    static constexpr Named<RowFate> all[] = {{RowFate::added, "new"},
                                             {RowFate::changed, "changed"},
                                             {RowFate::here, "already here"},
                                             {RowFate::refused, "refused"}};
};
static_assert(table_is_sound<RowFate>());

// Refused rows: hold back all others too, or are left out.
enum class RefusedRows { hold_back, leave_out };

struct DraftFate {
    RowFate fate = RowFate::added;
    std::optional<Complaint> complaint;  // of a refused one
};

struct RowFates {
    AddReport report;                              // of the drafts that were not refused
    std::vector<DraftFate> entries, notes, terms;  // in the batch's order

    bool has_refused() const;
};

}  // namespace tapbook
