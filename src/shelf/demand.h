// How many jobs a year will each sound system bring? From the shop's own jobs, older ones counting less, from a
// forecast, or both; and a stated belief where there is neither.
//
// Method: the jobs of a system are Poisson with a gamma distributed rate (Gelman et al., Bayesian Data Analysis,
// chapter 2). A job of t days ago counts 2^(-t / half-life), and so does every day of the record: the quotient is the
// rate. The belief is `prior_jobs` jobs spread evenly over the systems without a forecast, scaled so that all jobs
// together stay as many as were seen. A forecast is taken as it is, and is as sure as the shop's own record.
#pragma once

#include <vector>

#include "shelf/plan_ask.h"
#include "shelf/shelf_input.h"
#include "shelf/shelf_plan.h"

namespace tapbook {

// A record that is shorter counts as so long: one job on the first day is not 365 a year.
constexpr int shortest_record_days = 30;
constexpr double forecast_worth_years = 1;  // how sure a forecast is when there is no job at all
constexpr double days_per_year = 365.25;

struct Demand {
    std::vector<SystemDemand> systems;  // one for each of the input's
    double rate = 0;                    // years, the same for all: their sum is gamma distributed again
    double shape = 0;                   // of all together
    bool cold_start = false;
};

Demand demand_of(const ShelfInput& input, const DemandAsk& ask);

// What a record of `days` days is worth in years, when a day of `half_life_days` ago counts half.
double worth_in_years(double days, double half_life_days);

// What a job of so many days ago counts; 1 for one that is booked.
double worth_of_job(int days_ago, double half_life_days);

}  // namespace tapbook
