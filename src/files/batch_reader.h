// What do a vehicle, a parts, a stock and a shops file say? Their tables become drafts; every key, word, number, colour
// and path is checked here with its place. What only the store can tell (does the parent exist?) is checked when the
// batch is added.
#pragma once

#include <string>
#include <string_view>

#include "catalog/catalog.h"

namespace tapbook {

// The drafts in `text`. A file may hold: one [vehicle] with its [[system]], [[circuit]], [[tap]] and [[note]] tables;
// or
// [[converter]] and [[amplifier]] tables; or [[stock]] tables; or [[shop]] tables (practice catalogs).
// Throws InputRefused with all complaints, in the file's order, at most 20.
Batch read_batch(std::string_view text, const std::string& file);

struct TomlValue;

// One table, "note" or "tap", as if it stood in the file of the car `vehicle_path` ("" where the table needs no car): a
// row of a spreadsheet. Its draft is added to `batch`. Throws InputRefused with all complaints; then nothing was added.
void read_one_table(std::string_view name, const TomlValue& table, const std::string& vehicle_path, Batch& batch);

}  // namespace tapbook
