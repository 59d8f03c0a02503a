// How many of one model lie on the shelf? (levels.h says by which method.)
#include "shelf/levels.h"

#include <algorithm>

namespace tapbook {

Counts DeliveryDemand::at_any_time() const {
    return shape <= 0 ? Counts({1.0}) : gamma_poisson_counts(shape, jobs_per_year() * years);
}

Counts DeliveryDemand::as_jobs_see() const {
    return shape <= 0 ? Counts({1.0}) : gamma_poisson_counts(shape + 1, (shape + 1) / rate * years);
}

int fill_level(const Counts& seen_by_jobs, double wanted) {
    return seen_by_jobs.least_holding(wanted) + 1;
}

double fill_rate(const Counts& seen_by_jobs, int level) {
    return seen_by_jobs.at_most(level - 1);
}

int level_of(const DeliveryDemand& demand, const LevelsAsk& ask, std::optional<std::int64_t> cost_cents) {
    if (demand.shape <= 0) return 0;
    if (!ask.lost_job_cents || !cost_cents) return fill_level(demand.as_jobs_see(), ask.fill_rate);
    const double holding = static_cast<double>(*cost_cents) * ask.holding_per_year * demand.years;
    const auto lost = static_cast<double>(*ask.lost_job_cents);
    if (holding + lost <= 0) return 1;
    return std::max(1, newsvendor_level(demand.at_any_time(), holding, lost));
}

}  // namespace tapbook
