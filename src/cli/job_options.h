// Which options does `job reading` take? Those of `note` that belong to one place on one car; day, year and initials
// are the job's.
#pragma once

#include <vector>

#include "cli/command.h"

namespace tapbook {

std::vector<OptionSpec> job_reading_options();

}  // namespace tapbook
