// What becomes of records that an earlier version kept unread? For the files of this folder only.
#pragma once

#include "sqlite/sqlite.h"

namespace tapbook {

// Puts those where they belong whose kind this version knows, as if they came now; how many. The others, and those that
// break a rule of their kind, stay as they are. REQUIRES an open transaction.
std::int64_t read_kept_records(sqlite::Database& database);

}  // namespace tapbook
