// How does a job, or a car without one, become a plan? Load, advise, choose, plan; nothing is written.
#pragma once

#include <span>

#include "cli/command.h"

namespace tapbook {

// The plan of `job` with what was typed: --tap, --converter, --amp, --lowest-hz, --system and the install options; what
// was not typed stays as the job has it. Throws NoAnswer or UsageError with the reason.
JobPlanAnswer plan_for(const Catalog& catalog, const Session& session, const Parsed& parsed, const ShopJob& job,
                       std::span<const ShopJob> jobs);

// Its options, without --dry-run.
std::vector<OptionSpec> plan_options();

}  // namespace tapbook
