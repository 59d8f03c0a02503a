// What does the planner of the shelf have to know? The sound systems this shop may meet, the jobs behind them, the
// converters that would suit each, and what the shop has and pays. Values only: whoever fills this has read the
// catalog.
#pragma once

#include <cstdint>
#include <optional>
#include <stdexcept>
#include <string>
#include <vector>

#include "electrical/electrical.h"

namespace tapbook {

// What is handed in cannot be planned with. Its text says which system, converter or number is meant, why, and what to
// do.
class ShelfRefused : public std::runtime_error {
  public:
    using std::runtime_error::runtime_error;
};

// How well a converter suits a sound system, best first.
enum class Suits { fits, care };
template <>
struct NamedValues<Suits> {
    static constexpr Named<Suits> all[] = {{Suits::fits, "fits"}, {Suits::care, "care"}};
};

// One converter that can do a system's job.
struct Choice {
    std::uint32_t converter = 0;  // place in ShelfInput::converters
    Suits suits = Suits::fits;
};

// One sound system of one car: what a job is about.
struct ShelfSystem {
    std::string id;     // the path, by which it is found again
    std::string label;  // for a person
    // How many days ago each job was done; below zero: booked, so many days ahead.
    std::vector<int> jobs_days_ago;
    std::optional<double> forecast_per_year;  // jobs a year that somebody expects
    // The converters that suit, the best for the job first; no converter twice. Empty: nothing fits.
    std::vector<Choice> choices;
};

// A converter model that can be kept.
struct StockModel {
    std::string name;                        // its path; no two alike
    std::optional<std::int64_t> cost_cents;  // of one; unknown counts as nothing and is said (ShelfPlan::without_cost)
    std::optional<int> lead_days;            // from order to shelf; unknown: PlanAsk::usual_lead_days
    int pack = 1;                            // bought in packs of so many
    int on_hand = 0;
    int on_order = 0;
};

// Taken for one job: how many, of whatever the part is counted in, and how long ago; below zero is ahead.
struct Used {
    int days_ago = 0;
    double pieces = 0;
};

// By what is known how many are used.
enum class UseKnownBy { stated, plans, bookings, nothing };
template <>
struct NamedValues<UseKnownBy> {
    static constexpr Named<UseKnownBy> all[] = {{UseKnownBy::stated, "stated"},
                                                {UseKnownBy::plans, "plans"},
                                                {UseKnownBy::bookings, "bookings"},
                                                {UseKnownBy::nothing, "nothing"}};
};

struct SmallPart {
    std::string name;   // no two alike
    std::string label;  // for a person
    std::string unit;   // "" for pieces
    UseKnownBy known_by = UseKnownBy::bookings;
    std::optional<double> per_job;  // stated: what every job expected takes; then `used` is not looked at
    std::vector<Used> used;
    std::vector<int> planned_jobs_days_ago;  // by plans: the jobs that were looked at, whether they took some or not
    std::optional<int> recorded_days;        // for how long uses have been written down; empty: since the oldest
    std::optional<int> lead_days;
    std::optional<std::int64_t> cost_cents;  // of one
    int pack = 1;
    int on_hand = 0, on_order = 0;
};

struct ShelfInput {
    std::vector<ShelfSystem> systems;
    std::vector<StockModel> converters;
    std::vector<SmallPart> small_parts;
    // When the jobs were that asked for no converter, as ShelfSystem::jobs_days_ago: they take small parts all the
    // same.
    std::vector<int> other_jobs_days_ago;
    // For how many days jobs have been recorded. Empty: since the oldest job.
    std::optional<int> recorded_days;
};

}  // namespace tapbook
