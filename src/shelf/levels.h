// How many of one model lie on the shelf? One part used is one part ordered (base stock), so what is missing is what
// was asked for while a delivery was on its way.
//
// A job finds its part when fewer than S are on their way: the fill rate of a base stock S is F(S - 1), not F(S). That
// holds for any spread of delivery times (Palm's theorem; Feeney and Sherbrooke 1966).
#pragma once

#include <cstdint>
#include <optional>

#include "shelf/distributions.h"
#include "shelf/plan_ask.h"

namespace tapbook {

// What is asked for during a delivery: jobs come at random, at a rate that is gamma distributed.
struct DeliveryDemand {
    double shape = 0;  // of the jobs a year
    double rate = 0;   // years
    double years = 0;  // from order to shelf
    double jobs_per_year() const { return rate <= 0 ? 0 : shape / rate; }

    Counts at_any_time() const;
    // As the jobs see it: where the rate is high, more jobs look, and so each sees one more in the shape.
    Counts as_jobs_see() const;
};

// The smallest base stock with fill rate F(S - 1) of at least `wanted`. REQUIRES: 0 < wanted < 1.
int fill_level(const Counts& seen_by_jobs, double wanted);

// The smallest S with F(S) >= short_cost / (short_cost + holding_cost). `asked`: Counts, or another distribution with
// its questions. REQUIRES: both costs >= 0, not both zero.
template <class Asked>
auto newsvendor_level(const Asked& asked, double holding_cost, double short_cost) {
    return asked.least_holding(short_cost / (short_cost + holding_cost));
}

// What S costs on average: holding_cost for each left over, short_cost for each asked for in vain.
template <class Asked, class Level>
double newsvendor_cost(const Asked& asked, Level level, double holding_cost, double short_cost) {
    const double in_vain = asked.short_of(level);
    return holding_cost * (level - asked.mean() + in_vain) + short_cost * in_vain;
}

// Share of the jobs that find a part when `level` are kept.
double fill_rate(const Counts& seen_by_jobs, int level);

// How many to keep: none when nothing is asked for, else one at least. By fill rate, or with `lost_job_cents` by what a
// lost job costs against what a part costs on the shelf until the next delivery; a part whose cost is not known goes by
// fill rate.
int level_of(const DeliveryDemand& demand, const LevelsAsk& ask, std::optional<std::int64_t> cost_cents);

}  // namespace tapbook
