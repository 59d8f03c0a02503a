// The commands in the office: words, options, examples.
#include "cli/command_tables.h"
#include "cli/spreadsheet.h"

namespace tapbook {

std::span<const CommandSpec> office_commands() {
    static const CommandSpec table[] = {
        {"add",
         "in the office",
         "FILE",
         1,
         1,
         "put a vehicle, parts or stock file or a spreadsheet into the catalog; \"-\" reads from a pipe",
         {{"--mapping", "MAPPING",
           "of a spreadsheet: a TOML file that says which column is what; notes, converters, amplifiers or "
           "stock for what export --csv wrote"},
          {"--skip-refused", "", "of a spreadsheet: leave refused rows out instead of holding all back"},
          {"--refused", "FILE", "of a spreadsheet: write the refused rows with their reasons to a new one"},
          dry_run_option},
         {"tapbook add car.toml --dry-run",
          "tapbook export --csv converters | tapbook add - --mapping stock --dry-run"},
         run_add},
        {"export",
         "in the office",
         "[VEHICLE]",
         0,
         -1,
         "write a car, the parts or the stock as the files that add reads",
         {{"--parts", "", "what each converter and amplifier is"},
          {"--stock", "", "what they cost this shop and how many lie here"},
          {"--csv", "WHAT", "a spreadsheet: notes or taps of a VEHICLE, converters, amplifiers or jobs",
           spellings<CsvOf>},
          {"--out", "FILE", "to a file instead of standard output"},
          {"--into", "FOLDER", "one file each into a folder; everything there is, when nothing is named"},
          {"--replace", "", "put it in the place of a file that is there"},
          {"--dry-run", "", "say what would be written and write nothing"}},
         {"tapbook export --parts", "tapbook export --into shop-files --dry-run"},
         run_export},
    };
    return table;
}

}  // namespace tapbook
