// What happens to the jobs that come? (job_stream.h) Rates are drawn from what is believed, once a round, so that what
// is not known about the demand is in the result.
#include "shelf/job_stream.h"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <random>

namespace tapbook {

namespace {

constexpr int fewest_rounds = 50, most_rounds = 4000;

// Orders of one model on their way, in the order in which they come.
struct OnTheWay {
    std::vector<double> due;
    std::size_t next = 0;

    int count_at(double now) {
        while (next < due.size() && due[next] <= now) ++next;
        return static_cast<int>(due.size() - next);
    }
};

}  // namespace

JobStream::JobStream(std::vector<KeptGroup> groups, const StreamAsk& ask) : groups_(std::move(groups)), ask_(ask) {
    std::mt19937_64 random(ask.seed);
    double shape = 0;
    for (const KeptGroup& group : groups_) shape += group.shape;
    const double years = ask.counted_years + ask.before_years;
    const double jobs_per_round = std::max(shape / ask.rate * years, 1e-6);
    const int rounds = static_cast<int>(
        std::clamp(static_cast<double>(ask.jobs) / jobs_per_round, double{fewest_rounds}, double{most_rounds}));
    for (int round = 0; round < rounds; ++round) {
        std::vector<double> up_to;
        double all = 0;
        for (const KeptGroup& group : groups_)
            up_to.push_back(all += std::gamma_distribution<double>(group.shape, 1 / ask.rate)(random));
        std::vector<Job>& stream = rounds_.emplace_back();
        if (all <= 0) continue;
        std::exponential_distribution<double> gap(all);
        std::uniform_real_distribution<double> which(0, all);
        for (double at = gap(random); at < years; at += gap(random)) {
            const auto group = std::upper_bound(up_to.begin(), up_to.end() - 1, which(random));
            stream.push_back({.at = at, .group = static_cast<std::uint32_t>(group - up_to.begin())});
        }
    }
}

StreamResult JobStream::run(std::span<const int> keep, std::span<const double> delivery_years) const {
    double misses = 0, squares = 0, jobs = 0;
    for (const std::vector<Job>& stream : rounds_) {
        std::vector<OnTheWay> on_the_way(keep.size());
        int missed = 0;
        for (const Job& job : stream) {
            const std::vector<std::uint32_t>& models = groups_[job.group].models;
            const auto there = std::ranges::find_if(
                models, [&](std::uint32_t model) { return on_the_way[model].count_at(job.at) < keep[model]; });
            const std::uint32_t taken = there == models.end() ? models.front() : *there;
            on_the_way[taken].due.push_back(job.at + delivery_years[taken]);
            if (job.at < ask_.before_years) continue;
            ++jobs;
            if (there == models.end()) ++missed;
        }
        misses += missed;
        squares += static_cast<double>(missed) * missed;
    }
    const auto rounds = static_cast<double>(rounds_.size());
    const double mean = misses / rounds;
    const double spread = std::max(0.0, squares / rounds - mean * mean) * rounds / std::max(rounds - 1, 1.0);
    return {.missed_per_year = mean / ask_.counted_years,
            .standard_error = std::sqrt(spread / rounds) / ask_.counted_years,
            .fill_rate = jobs > 0 ? 1 - misses / jobs : 1,
            .years = rounds * ask_.counted_years};
}

}  // namespace tapbook
