// What happens to the jobs that come? One invented stream of jobs, drawn from a seed once, so that two shelves are
// judged on the same jobs; and what a shelf with given levels does with it.
#pragma once

#include <cstdint>
#include <span>
#include <vector>

#include "shelf/kept_groups.h"

namespace tapbook {

struct StreamAsk {
    double rate = 0;           // of the gamma distributed jobs a year
    double counted_years = 1;  // of one round
    double before_years = 0;   // run first and not counted: the shelf begins full
    std::int64_t jobs = 0;     // about so many in all; it is drawn in rounds, each with its own rates
    std::uint64_t seed = 1;
};

// Misses of all rounds.
struct StreamResult {
    double missed_per_year = 0;
    double standard_error = 0;  // of that mean, from the spread of the rounds
    double fill_rate = 1;
    double years = 0;  // counted, all rounds
};

class JobStream {
  public:
    // REQUIRES: groups with shape > 0, rate > 0, counted_years > 0.
    JobStream(std::vector<KeptGroup> groups, const StreamAsk& ask);

    // Each job takes its first choice that lies there, and a new one is ordered, which comes after its model's delivery
    // time. A job that finds nothing is missed at the shelf and has its first choice ordered. `keep` and
    // `delivery_years`: one for each model.
    StreamResult run(std::span<const int> keep, std::span<const double> delivery_years) const;

  private:
    struct Job {
        double at = 0;  // years from the round's beginning
        std::uint32_t group = 0;
    };

    std::vector<KeptGroup> groups_;
    StreamAsk ask_;
    std::vector<std::vector<Job>> rounds_;
};

}  // namespace tapbook
