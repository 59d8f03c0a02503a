// The commands of the shelf: words, options, examples.
#include "cli/command_tables.h"

namespace tapbook {

std::span<const CommandSpec> shelf_commands() {
    static const CommandSpec table[] = {
        {"shelf",
         "in the office",
         "",
         0,
         0,
         "which converters to keep, how many, what to order today, and what is lost without one",
         {{"--models", "K", "the best models, no more than so many"},
          {"--share", "P", "the fewest models for so many percent of the jobs; 95 without any of these three"},
          {"--budget", "MONEY", "the best models that this pays for, and today's orders too"},
          {"--fill", "P", "percent of the jobs that shall find their part there; 95 without it"},
          {"--lost-job", "MONEY", "what a lost job costs: weighs it against holding, instead of --fill"},
          {"--half-life", "DAYS", "after so many days a job counts half; 365 without it"},
          {"--forecast", "FILE", "jobs expected: [[expect]] tables with of = PATH and jobs_a_year"},
          {"--forecast-adds", "", "the forecast comes on top of the jobs, instead of in their place"},
          {"--amp", "AMPLIFIER", "judged with it; without it the amplifier that most jobs had"},
          {"--what-if", "CHANGE", "without=MODEL or with=MODEL: what would change"},
          {"--explain", "MODEL", "why this model is kept, or not"},
          {"--seed", "N", "of the simulation; 1 without it"},
          {"--time-limit", "SECONDS", "for the solver; 10 without it"},
          {"--svg", "FILE", "the coverage curve as a drawing; an older one is replaced"}},
         {"tapbook shelf --models 3"},
         run_shelf},
        {"shelf count",
         "in the office",
         "[PART] [receive|use|correct|order|cancel N]",
         0,
         3,
         "what lies on the shelf; book what came, what was taken, what was counted",
         {{"--job", "JOB", "of use: the job it was taken for"},
          {"--words", "TEXT", "anything to remember beside it"},
          dry_run_option},
         {"tapbook shelf count"},
         run_shelf_count},
    };
    return table;
}

}  // namespace tapbook
