// What does the ledger hold for one vehicle, withdrawn and blocked notes included? For the files of this folder only.
#pragma once

#include <functional>
#include <vector>

#include "catalog/state.h"

namespace tapbook {

// The fields that have a column of their own, in the order of the columns.
const std::vector<Field>& ledger_fields();

// The number of a car that notes speak of; absent when none does, or it is no path of a car.
std::optional<std::int64_t> vehicle_number(sqlite::Database& database, std::string_view vehicle_path);

// The number of the next new car. Every numbered car has a note and the ledger begins with the car, so the highest is
// found by a search: looking through all subjects for each new car made large imports quadratic.
inline constexpr std::string_view next_vehicle_number = "SELECT coalesce(max(vehicle), 0) + 1 FROM note";

struct LedgerRow {
    RecordId id;
    Values values;
    bool vouched, withdrawn, blocked;
};

// Every note of a vehicle in (path, id) order.
std::vector<LedgerRow> ledger_rows(sqlite::Database& database, std::string_view vehicle_path);

// Every note whose path lies in ["first", "end"), in (path, id) order.
void each_ledger_row(sqlite::Database& database, std::string_view first, std::string_view end,
                     const std::function<void(LedgerRow&&)>& each);

// Of these, those at one path; those of one shop (32 hexadecimal digits) on one day.
std::vector<LedgerRow> ledger_rows_at(sqlite::Database& database, std::string_view path);
std::vector<LedgerRow> ledger_rows_of(sqlite::Database& database, std::string_view vehicle_path, std::string_view shop,
                                      std::string_view day);

}  // namespace tapbook
