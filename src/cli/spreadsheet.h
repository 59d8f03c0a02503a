// The parts of add and export that read and write spreadsheets. For the files of this folder.
#pragma once

#include "cli/command.h"

namespace tapbook {

// What export can write as a spreadsheet.
enum class CsvOf { notes, taps, converters, amplifiers, jobs };
template <>
struct NamedValues<CsvOf> {
    static constexpr Named<CsvOf> all[] = {{CsvOf::notes, "notes"},
                                           {CsvOf::taps, "taps"},
                                           {CsvOf::converters, "converters"},
                                           {CsvOf::amplifiers, "amplifiers"},
                                           {CsvOf::jobs, "jobs"}};
};
static_assert(table_is_sound<CsvOf>());

// add FILE.csv --mapping MAPPING. REQUIRES --mapping.
Exit add_spreadsheet(Session& session, const Parsed& parsed);

// What --csv asks for, as the one file of an export; its place is for the caller to say. Throws UsageError for what
// does not go with it.
ExportedFile spreadsheet_file(const Catalog& catalog, const Parsed& parsed, CsvOf what);

// The mapping that reads such a spreadsheet again; "" when none does.
std::string_view mapping_of(CsvOf what);

// Throws UsageError for options that go with --mapping only, and for a spreadsheet without one.
void check_no_spreadsheet(const Parsed& parsed);

}  // namespace tapbook
