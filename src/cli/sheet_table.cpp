// The command for the page that goes to the car: words, options, examples.
#include "cli/command_tables.h"
#include "cli/planning.h"

namespace tapbook {
namespace {

std::vector<OptionSpec> sheet_options() {
    std::vector<OptionSpec> options = plan_options();
    options.push_back({"--year", "YEAR", "the car's model year, for a car without a job"});
    options.push_back({"--read", "TAP,...", "further circuits to read, each once; all for every other one"});
    options.push_back({"--paper", "letter|a4", "a4 without it", spellings<SheetPaper>});
    options.push_back({"--html", "FILE", "the page as one file that opens anywhere; \"-\" for standard output"});
    options.push_back({"--pdf", "FILE", "the page printed by Chromium"});
    options.push_back({"--drawing", "FILE", "the drawing alone, as SVG"});
    options.push_back({"--address", "URL", "where the QR code leads: this shop's page"});
    options.push_back({"--replace", "", "put them in the place of files that are there"});
    return options;
}

}  // namespace

std::span<const CommandSpec> sheet_commands() {
    static const CommandSpec table[] = {
        {"sheet",
         "in the office",
         "[JOB | VEHICLE]",
         0,
         -1,
         "the page the job is done from: order of work, readings to take, cautions, drawing, gain, the list as it came",
         sheet_options(),
         {},
         run_sheet},
    };
    return table;
}

}  // namespace tapbook
