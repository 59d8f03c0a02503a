// May the levels be lower because one model can stand in for another? Search in single steps, each judged on the same
// stream of jobs.
#pragma once

#include <optional>
#include <span>
#include <vector>

#include "shelf/job_stream.h"
#include "shelf/plan_ask.h"

namespace tapbook {

struct LevelModel {
    double delivery_years = 0;
    std::optional<std::int64_t> cost_cents;
};

// Levels that cost no more than `levels`: one less here, or one less here and one more there, as long as the fill rate
// that is wanted is kept (by two standard errors) or, with lost_job_cents, as long as lost jobs and holding together
// cost less. No level falls below 1. A model whose cost is not known counts as much as the mean of the others.
// REQUIRES: levels >= 1.
std::vector<int> improve_levels(std::vector<int> levels, std::span<const LevelModel> models, const JobStream& stream,
                                const LevelsAsk& ask);

}  // namespace tapbook
