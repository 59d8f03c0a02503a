// Which options does `job reading` take? Those of `note` that belong to one place on one car; day, year and initials
// are the job's.
#pragma once

#include <vector>

#include "cli/command.h"

namespace tapbook {

std::vector<OptionSpec> job_reading_options();

// job reading --from: a file of readings into the job it names, in one step.
Exit run_readings_file(Session& session, const Parsed& parsed);

}  // namespace tapbook
