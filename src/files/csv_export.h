// How are notes and parts written as a spreadsheet that comes back in? One column for each field, named as in the
// TOML files; the mappings notes, converters, amplifiers and stock that travel with the program read them again, and
// adding what was written adds nothing.
#pragma once

#include "files/batch_writer.h"
#include "files/csv_writer.h"

namespace tapbook {

// The notes of one vehicle, as they stand in the file of the car. Notes that must not be added again (withdrawn ones,
// other shops', those on retired places) have the reason in the column not_added.
WrittenFile notes_csv(const Extract& vehicle);

// The amplifiers, as the next.
WrittenFile amplifiers_csv(const Extract& parts, const Extract& stock);

// The converters with what each costs this shop and how many lie here.
WrittenFile converters_csv(const Extract& parts, const Extract& stock);

}  // namespace tapbook
