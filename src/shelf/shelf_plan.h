// What does the shelf answer? Which models, how many of each, what to order today, what each is good for, and how sure
// that is. Renderers show this and compute nothing.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "shelf/plan_ask.h"
#include "shelf/shelf_input.h"

namespace tapbook {

// A number and where it lies with 90 of 100 chances.
struct Likely {
    double low = 0, mean = 0, high = 0;
};

// What a system will ask for: the jobs a year are gamma distributed, and the rate is the same for all systems.
struct SystemDemand {
    double jobs_per_year = 0;  // mean
    double shape = 0;          // of the gamma distribution; its rate is ShelfPlan::demand_rate
    int jobs_seen = 0;
    bool forecast = false;
};

// A system that would no longer be covered. `system` is the place in ShelfInput::systems.
struct LostSystem {
    std::size_t system = 0;
    double jobs_per_year = 0;
};

struct KeptModel {
    std::size_t converter = 0;  // place in ShelfInput::converters
    std::string name;
    double covers_share = 0;   // of all jobs, by this model alone (with care counted less)
    double jobs_per_year = 0;  // of the systems for which it is the first choice among the kept
    int lead_days = 0;
    int keep = 0, on_hand = 0, on_order = 0;
    int order = 0;         // pieces today, whole packs
    int order_wanted = 0;  // without the budget
    std::int64_t order_cents = 0;
    double fill_rate = 0;  // of its own jobs, were no other model to help
};

// What is gone when one kept model is dropped and nothing put in its place.
struct LostModel {
    std::size_t converter = 0;
    std::string name;
    double share = 0;                 // of all jobs, as covered_share counts
    double jobs_per_year = 0;         // that nothing kept could do any more
    std::vector<LostSystem> systems;  // most jobs first, then path
};

// A small part and when it is ordered again.
struct Reorder {
    std::string name, label, unit;
    UseKnownBy known_by = UseKnownBy::nothing;  // nothing: never used and not stated, so there is no telling
    double per_year = 0;                        // pieces
    int on_hand = 0, on_order = 0, pack = 1;
    int lead_days = 0;
    int reorder_at = 0;                       // at or below this many, there and on their way, order
    int order = 0;                            // pieces today, whole packs; 0 when there are more
    std::optional<std::int64_t> order_cents;  // absent: the cost is not known, and something is ordered
    double fill_rate = 1;                     // share of the pieces asked for during delivery that are there
};

// The best that so many models cover.
struct CurvePoint {
    int models = 0;
    double covered_share = 0;
    double bound_share = 0;  // nothing of this size covers more
    bool proved = false;     // then both are the same
    std::vector<std::size_t> converters;
};

// How many jobs a year find no part on the shelf, by simulation; low and high hold the true mean with 95 of 100
// chances.
struct LostJobs {
    double without_model = 0;            // nothing kept suits: a year
    double low = 0, mean = 0, high = 0;  // something kept suits, but the shelf is empty: a year
    int years = 0;                       // simulated
    double closed_form = 0;              // the same by formula, were no model to help another
};

// Why there is no plan, when there is none.
enum class ShelfState { planned, nothing_fits, no_systems, no_converters, no_demand };
template <>
struct NamedValues<ShelfState> {
    static constexpr Named<ShelfState> all[] = {{ShelfState::planned, "planned"},
                                                {ShelfState::nothing_fits, "nothing_fits"},
                                                {ShelfState::no_systems, "no_systems"},
                                                {ShelfState::no_converters, "no_converters"},
                                                {ShelfState::no_demand, "no_demand"}};
};

struct ShelfPlan {
    ShelfState state = ShelfState::planned;
    std::vector<KeptModel> models;  // most jobs first, then name
    double covered_share = 0;       // of all jobs; one done with care counts 1 - care_penalty
    double care_share = 0;          // of all jobs: those that only a model with care can do
    double no_converter_share = 0;  // of all jobs: nothing in the catalog suits
    bool proved = false;            // no other choice of models is better
    double gap = 0;                 // share that a better choice might add at most; 0 when proved
    std::optional<bool> reached;    // with a wanted share: whether it can be reached
    std::vector<CurvePoint> curve;  // from no model on
    std::vector<LostModel> lost;    // in the order of `models`
    LostJobs lost_jobs;
    double fill_rate = 0;  // share of covered jobs that find a part, by simulation
    std::int64_t order_cents = 0;

    std::vector<Reorder> small_parts;    // in the order of the input; also where no model can be kept
    std::int64_t small_order_cents = 0;  // of those whose cost is known; no budget holds them

    std::vector<SystemDemand> demand;       // one for each of ShelfInput::systems
    double demand_rate = 0;                 // years of own jobs that the belief is worth
    Likely jobs_per_year;                   // all systems
    bool cold_start = false;                // neither job nor forecast: the catalog's mix was taken, each system alike
    std::vector<std::string> without_cost;  // kept models whose cost is not known: counted as nothing

    // How the models were found.
    int masks = 0;                          // kinds of systems that the same models suit
    int models_left = 0;                    // after those that another one beats in every way
    std::int64_t steps = 0;                 // of the own search
    std::optional<SearchEnd> other_search;  // when one was asked
    std::string other_search_says;          // why it was of no use; empty when it was
};

// Why is this model kept, or not?
enum class ModelPlace { kept, beaten, left_out, suits_nothing, shut_out };
template <>
struct NamedValues<ModelPlace> {
    static constexpr Named<ModelPlace> all[] = {{ModelPlace::kept, "kept"},
                                                {ModelPlace::beaten, "beaten"},
                                                {ModelPlace::left_out, "left_out"},
                                                {ModelPlace::suits_nothing, "suits_nothing"},
                                                {ModelPlace::shut_out, "shut_out"}};
};

struct ModelExplained {
    std::size_t converter = 0;
    std::string name;
    ModelPlace place = ModelPlace::left_out;
    double covers_share = 0;               // alone
    double only_share = 0;                 // of all jobs: nothing else in the catalog does them
    double adds_share = 0;                 // kept: lost without it; not kept: gained when added to the kept ones
    double forced_share = 0;               // not kept: covered share of the best plan of the same size that has it
    std::optional<std::size_t> beaten_by;  // does all it does and costs no more
    std::vector<LostSystem> systems;       // it suits; most jobs first, then path
    std::vector<std::size_t> instead;      // kept models that do most of the same jobs, most first
    std::optional<int> joins_at;           // size on the curve from which it belongs to the best models
};

// One thing that differs between two plans.
struct ModelChange {
    std::string name;
    int keep_before = 0, keep_after = 0, order_before = 0, order_after = 0;
};

struct PlanChange {
    ShelfPlan before, after;
    std::vector<ModelChange> models;       // that differ, by name
    double share = 0;                      // gained, below zero lost
    std::vector<LostSystem> gained, lost;  // systems that are covered now, or no longer; most jobs first, then path
    std::int64_t order_cents = 0;          // more to pay today
};

}  // namespace tapbook
