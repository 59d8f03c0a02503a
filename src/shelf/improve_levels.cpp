// May the levels be lower because one model can stand in for another? (improve_levels.h) Steepest descent with a limit
// on the number of shelves that are tried.
#include "shelf/improve_levels.h"

#include <limits>

namespace tapbook {

namespace {

constexpr int most_trials = 300;

std::vector<double> costs_of(std::span<const LevelModel> models) {
    double sum = 0;
    int known = 0;
    for (const LevelModel& model : models)
        if (model.cost_cents.value_or(0) > 0) {
            sum += static_cast<double>(*model.cost_cents);
            ++known;
        }
    std::vector<double> costs;
    for (const LevelModel& model : models)
        costs.push_back(model.cost_cents.value_or(0) > 0 ? static_cast<double>(*model.cost_cents)
                        : known > 0                      ? sum / known
                                                         : 1);
    return costs;
}

class Descent {
  public:
    Descent(std::span<const LevelModel> models, const JobStream& stream, const LevelsAsk& ask)
        : stream_(stream), ask_(ask), costs_(costs_of(models)) {
        for (const LevelModel& model : models) delivery_.push_back(model.delivery_years);
    }

    std::vector<int> from(std::vector<int> levels) {
        double cost = cost_of(levels);
        for (bool better = cost < out_of_question; better && trials_ < most_trials;) {
            const std::vector<int> next = best_step(levels, cost);
            better = next != levels;
            levels = next;
        }
        return levels;
    }

  private:
    static constexpr double out_of_question = std::numeric_limits<double>::infinity();

    // A year's cost of these levels; endless when they miss the fill rate.
    double cost_of(const std::vector<int>& levels) {
        ++trials_;
        const StreamResult result = stream_.run(levels, delivery_);
        double cost = 0;
        for (std::size_t i = 0; i < levels.size(); ++i) cost += costs_[i] * levels[i];
        if (ask_.lost_job_cents)
            return cost * ask_.holding_per_year + static_cast<double>(*ask_.lost_job_cents) * result.missed_per_year;
        const double jobs = result.fill_rate < 1 ? result.missed_per_year / (1 - result.fill_rate) : 0;
        const double error = jobs > 0 ? result.standard_error / jobs : 0;
        return result.fill_rate - 2 * error >= ask_.fill_rate ? cost : out_of_question;
    }

    // The cheapest neighbour; `levels` when none is cheaper. `cost` becomes its cost.
    std::vector<int> best_step(const std::vector<int>& levels, double& cost) {
        std::vector<int> best = levels;
        const auto take = [&](const std::vector<int>& trial) {
            if (const double here = cost_of(trial); here < cost - 1e-9) {
                cost = here;
                best = trial;
            }
        };
        for (std::size_t down = 0; down < levels.size(); ++down) {
            if (levels[down] <= 1) continue;
            std::vector<int> trial = levels;
            --trial[down];
            take(trial);
            for (std::size_t up = 0; up < levels.size(); ++up) {
                if (costs_[up] >= costs_[down]) continue;
                ++trial[up];
                take(trial);
                --trial[up];
            }
        }
        return best;
    }

    const JobStream& stream_;
    const LevelsAsk& ask_;
    std::vector<double> costs_, delivery_;
    int trials_ = 0;
};

}  // namespace

std::vector<int> improve_levels(std::vector<int> levels, std::span<const LevelModel> models, const JobStream& stream,
                                const LevelsAsk& ask) {
    return Descent(models, stream, ask).from(std::move(levels));
}

}  // namespace tapbook
