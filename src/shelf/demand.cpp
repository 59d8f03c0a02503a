// How many jobs a year will each sound system bring? (demand.h says how.)
#include "shelf/demand.h"

#include <algorithm>
#include <cmath>

namespace tapbook {

namespace {

// The days the record reaches back, and ahead to the last booked job.
double record_days(const ShelfInput& input) {
    int back = input.recorded_days.value_or(0), ahead = 0;
    for (const ShelfSystem& system : input.systems)
        for (const int days : system.jobs_days_ago) {
            back = std::max(back, days);
            ahead = std::max(ahead, -days);
        }
    return std::max(back, shortest_record_days) + ahead;
}

Demand cold_start(std::size_t systems, const DemandAsk& ask) {
    Demand demand;
    demand.cold_start = true;
    demand.rate = ask.cold_worth_years;
    demand.shape = ask.cold_jobs_per_year * demand.rate;
    const double each = systems == 0 ? 0 : demand.shape / static_cast<double>(systems);
    for (std::size_t i = 0; i < systems; ++i)
        demand.systems.push_back(
            {.jobs_per_year = each / demand.rate, .shape = each, .jobs_seen = 0, .forecast = false});
    return demand;
}

}  // namespace

double worth_of_job(int days_ago, double half_life_days) {
    return days_ago <= 0 ? 1 : std::exp2(-days_ago / half_life_days);
}

double worth_in_years(double days, double half_life_days) {
    const double life = half_life_days / std::log(2.0);
    return life * -std::expm1(-days / life) / days_per_year;
}

Demand demand_of(const ShelfInput& input, const DemandAsk& ask) {
    Demand demand;
    double from_jobs = 0, forecast = 0;
    int without_forecast = 0;
    for (const ShelfSystem& system : input.systems) {
        SystemDemand one{.jobs_per_year = 0,
                         .shape = 0,
                         .jobs_seen = static_cast<int>(system.jobs_days_ago.size()),
                         .forecast = system.forecast_per_year.has_value()};
        if (!one.forecast || ask.forecast == ForecastUse::adds)
            for (const int days : system.jobs_days_ago) one.shape += worth_of_job(days, ask.half_life_days);
        from_jobs += one.shape;
        forecast += system.forecast_per_year.value_or(0);
        without_forecast += one.forecast ? 0 : 1;
        demand.systems.push_back(one);
    }
    if (from_jobs <= 0 && forecast <= 0 && without_forecast > 0) return cold_start(input.systems.size(), ask);
    const double belief = without_forecast == 0 ? 0 : ask.prior_jobs;
    demand.rate = from_jobs <= 0 ? forecast_worth_years
                                 : worth_in_years(record_days(input), ask.half_life_days) * (1 + belief / from_jobs);
    for (std::size_t i = 0; i < input.systems.size(); ++i) {
        SystemDemand& one = demand.systems[i];
        one.shape += one.forecast ? *input.systems[i].forecast_per_year * demand.rate : belief / without_forecast;
        one.jobs_per_year = one.shape / demand.rate;
        demand.shape += one.shape;
    }
    return demand;
}

}  // namespace tapbook
