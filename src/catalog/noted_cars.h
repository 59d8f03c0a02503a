// Which cars do notes speak of, and from which side is each tap point of a car looked at? For the files of this folder
// that go through the whole ledger.
#pragma once

#include "catalog/state.h"

namespace tapbook {

// Paths of the cars in order.
std::vector<std::string> noted_cars(sqlite::Database& database);

// The connector side of each tap point of a car that has one, by path.
std::map<std::string, ConnectorSide, std::less<>> sides_of_taps(sqlite::Database& database, std::string_view car);

}  // namespace tapbook
