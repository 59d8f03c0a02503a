// The commands of a job: words, options, examples.
#include "cli/command_tables.h"
#include "cli/job_options.h"
#include "cli/planning.h"

namespace tapbook {

namespace {

std::vector<OptionSpec> with_dry_run(std::vector<OptionSpec> options) {
    options.push_back(dry_run_option);
    return options;
}

}  // namespace

std::span<const CommandSpec> job_commands() {
    static const CommandSpec table[] = {
        {"job start",
         "at the car",
         "VEHICLE",
         1,
         -1,
         "start a job: number, label code and the list as it came",
         {year_option,
          {"--system", "CODE",
           "its sound system, as listed by taps; unrecorded without it when the car came with several"},
          {"--customer", "REF", "the shop's own reference; it never leaves this catalog"},
          {"--car", "PLATE", "plate or VIN: only a salted token is stored"},
          {"--initials", "TEXT", "who works on it; they go into the notes"},
          dry_run_option},
         {},
         run_job_start},
        {"job came",
         "at the car",
         "[JOB] [ITEM=ok|bad:WORDS|none...]",
         0,
         -1,
         "fill the list as it came; without items show it",
         {{"--agreed", "TEXT", "the customer's initials"}, dry_run_option},
         {},
         run_job_came},
        {"job plan",
         "at the car",
         "[JOB]",
         0,
         1,
         "choose tap, converter and amplifier; the steps by power phase, each reading with its predicted range",
         with_dry_run(plan_options()),
         {},
         run_job_plan},
        {"job reading",
         "at the car",
         "[JOB] [TAP]",
         0,
         -1,
         "write down what was seen and metered at a tap, and hear at once what it means",
         job_reading_options(),
         {},
         run_job_reading},
        {"job action",
         "at the car",
         "[JOB] [WORDS]",
         0,
         -1,
         "something done for a while only, like a pulled fuse; the job does not close while it is open",
         {{"--done", "N", "it is put back"}, dry_run_option},
         {},
         run_job_action},
        {"job left",
         "at the car",
         "[JOB] [ITEM=ok|bad:WORDS|none...]",
         0,
         -1,
         "fill the list as it left; what differs from how it came is listed",
         {dry_run_option},
         {},
         run_job_left},
        {"job close",
         "at the car",
         "[JOB] [ITEM=ok|bad:WORDS|none...]",
         0,
         -1,
         "close the job: its readings become notes, in one go",
         {{"--outcome", "WORD", "fine, noise, thump, comeback"},
          {"--remarks", "TEXT", "anything else"},
          {"--minutes", "N", "what the whole job took"},
          {"--sure", "WORD,...",
           "items of the list knowingly left out, places whose reading is right although it is odd"},
          dry_run_option},
         {},
         run_job_close},
        {"job list",
         "in the office",
         "",
         0,
         0,
         "the open jobs",
         {{"--all", "", "the closed ones too"}},
         {},
         run_job_list},
        {"job show", "in the office", "[JOB]", 0, 1, "everything of one job", {}, {}, run_job_show},
        {"job open",
         "in the office",
         "JOB",
         1,
         1,
         "open a closed job again, to correct it",
         {dry_run_option},
         {},
         run_job_open},
    };
    return table;
}

}  // namespace tapbook
