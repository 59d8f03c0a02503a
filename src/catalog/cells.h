// How does a field of a record become a cell of a table, and back? By the field tables, so that no column is named
// twice. Entries keep words as text; the ledger keeps words, colours and days as small whole numbers.
#pragma once

#include <string>

#include "sqlite/sqlite.h"
#include "trade/trade.h"

namespace tapbook {

enum class CellStyle { entry, ledger };

// The field's cell; NULL when the record does not have it (or, in the ledger, when its word or colour has no number
// here).
sqlite::Value cell_of(const Field& field, const Values& values, CellStyle style);

// Puts the cell back under the field's stored name; NULL adds nothing.
void put_cell(const Field& field, sqlite::Value cell, Values& values, CellStyle style);

// What of `values` no cell keeps: fields unknown to this version, as one record line; NULL when nothing is left. `kept`
// names the keys that have columns of their own.
sqlite::Value rest_of(const Values& values, std::span<const Field> fields, std::span<const std::string_view> kept,
                      CellStyle style);
void put_rest(const sqlite::Value& cell, Values& values);

}  // namespace tapbook
