// What does the shop's owner want of the shelf? Every number has a default that the answer repeats.
#pragma once

#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "electrical/electrical.h"

namespace tapbook {

// What a forecast does to what the jobs say.
enum class ForecastUse { replaces, adds };
template <>
struct NamedValues<ForecastUse> {
    static constexpr Named<ForecastUse> all[] = {{ForecastUse::replaces, "replaces"}, {ForecastUse::adds, "adds"}};
};

struct DemandAsk {
    double half_life_days = 365;  // a job of so many days ago counts half
    double prior_jobs = 5;        // so many jobs are spread evenly over the catalog's systems, as if they had been seen
    double cold_jobs_per_year = 24;  // believed when there is neither a job nor a forecast
    double cold_worth_years = 0.25;  // and so many years of one's own jobs weigh as much as that belief
    ForecastUse forecast = ForecastUse::replaces;
};

// Exactly one of the three is wanted.
struct ModelsAsk {
    std::optional<int> at_most;   // the best models, no more than so many
    std::optional<double> share;  // the fewest models that cover this share of the jobs, 0 to 1
    std::optional<std::int64_t>
        budget_cents;                  // the best models of which one pack each, where none is there, costs no more
    std::vector<std::string> with;     // kept in any case
    std::vector<std::string> without;  // kept in no case
};

struct LevelsAsk {
    double fill_rate = 0.95;                     // share of jobs that find their part on the shelf
    std::optional<std::int64_t> lost_job_cents;  // when given, the level weighs this against holding instead
    double holding_per_year = 0.25;              // share of a part's cost that one year on the shelf costs
    int usual_lead_days = 7;                     // where a converter's is not known
    int review_days = 0;  // days between two orders; 0: an order is sent as soon as a part is used
    std::optional<std::int64_t> order_budget_cents;  // today's orders cost no more (the models' budget counts here too)
};

struct PlanAsk {
    ModelsAsk models;
    DemandAsk demand;
    LevelsAsk levels;
    double care_penalty = 0.2;          // a job done with care counts as 1 - this
    double horizon_years = 1;           // the simulation's stretch of time
    std::uint64_t seed = 1;             // of the simulation
    double time_limit_seconds = 10;     // for a search elsewhere
    std::int64_t effort = 400'000'000;  // steps of the own search before it asks elsewhere: about a second
};

// How a search elsewhere ended.
enum class SearchEnd { optimal, stopped, infeasible, missing, killed, garbage };
template <>
struct NamedValues<SearchEnd> {
    static constexpr Named<SearchEnd> all[] = {{SearchEnd::optimal, "optimal"},       {SearchEnd::stopped, "stopped"},
                                               {SearchEnd::infeasible, "infeasible"}, {SearchEnd::missing, "missing"},
                                               {SearchEnd::killed, "killed"},         {SearchEnd::garbage, "garbage"}};
};

struct SearchAnswer {
    SearchEnd end = SearchEnd::missing;
    std::vector<std::uint32_t> chosen;  // yes/no variables at 1, by number; of no use when infeasible or failed
    std::optional<double> bound;        // nothing is better than this, in the model's own objective
    std::string says;                   // why it failed, for a person
};

struct CoverModel;  // cover_model.h: rows, columns and what is sought

// Solves a model elsewhere, within `seconds`. Empty function: there is no other search.
using OtherSearch = std::function<SearchAnswer(const CoverModel& model, double seconds)>;

}  // namespace tapbook
