// How does a job become a plan? The tap is judged, the part chosen, the work put in order; nothing is written. The
// command line and the phone page ask the same way.
#pragma once

#include <optional>
#include <span>
#include <stdexcept>
#include <string>

#include "rules/job_plan.h"

namespace tapbook {

// What is wished of a plan; what is left open stays as the job has it, else the best is taken.
struct PlanWish {
    std::string system;                    // its code
    std::string tap;                       // whole path; "" for the planned one while it lies in that system, else best
    std::optional<std::string> converter;  // "" for the best; absent: the planned one while it fits, else the best
    std::optional<Hertz> lowest;
    JobPlan said;  // the job's plan with what is said of the install
};

enum class PlanTrouble {
    system_unrecorded,  // nobody has found out yet which sound system it is
    not_judged,         // the car has no such system or tap, or none that carries a signal
    no_such_converter,
    nothing_fits,
    does_not_fit,  // the part that was named
    turn_on_refused,
    no_such_turn_on
};

// Nothing was planned. `way_out` is what may be chosen instead, without the words of any command; may be empty.
class PlanRefused : public std::runtime_error {
  public:
    PlanRefused(PlanTrouble trouble, const std::string& message, std::string way_out = {})
        : std::runtime_error(message), trouble_(trouble), way_out_(std::move(way_out)) {}
    PlanTrouble trouble() const { return trouble_; }
    const std::string& way_out() const { return way_out_; }

  private:
    PlanTrouble trouble_;
    std::string way_out_;
};

// The plan of `job` on `facts` (with the amplifier that is wished). `jobs`: this shop's, for what such a job took
// before. Throws PlanRefused.
JobPlanAnswer planned_job(const JobFacts& facts, const ShopJob& job, const PlanWish& wish,
                          std::span<const ShopJob> jobs, RuleBook& rules);

}  // namespace tapbook
