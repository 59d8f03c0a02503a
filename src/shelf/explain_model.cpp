// Why is this model kept, or not? What it does alone, what only it does, who does the same, and what a plan that has it
// would cover.
#include <algorithm>

#include "shelf/plan_checks.h"
#include "shelf/planned.h"

namespace tapbook {

namespace {

struct Overlap {
    std::size_t converter = 0;
    std::int64_t weight = 0;
};

// What the model does, system by system; who of the kept does the same.
std::vector<Overlap> take_systems(ModelExplained& explained, const ShelfInput& input, const Groundwork& ground,
                                  std::vector<bool> kept, double care_penalty) {
    const auto all_weight = static_cast<double>(ground.cover.all_weight);
    std::vector<Overlap> overlaps(input.converters.size());
    std::vector<bool> all(input.converters.size(), true), others = kept;
    others[explained.converter] = all[explained.converter] = false;
    for (std::size_t i = 0; i < input.systems.size(); ++i) {
        const ShelfSystem& system = input.systems[i];
        const auto own = std::ranges::find(system.choices, explained.converter, &Choice::converter);
        if (own == system.choices.end()) continue;
        const double share = all_weight > 0 ? static_cast<double>(ground.weights[i]) / all_weight : 0;
        const double counts = own->suits == Suits::fits ? 1 : 1 - care_penalty;
        explained.covers_share += share * counts;
        explained.only_share += share * std::max(0.0, counts - counts_with(system, all, care_penalty));
        explained.adds_share += share * std::max(0.0, counts - counts_with(system, others, care_penalty));
        explained.systems.push_back({.system = i, .jobs_per_year = ground.demand.systems[i].jobs_per_year});
        for (const Choice& choice : system.choices)
            if (others[choice.converter])
                overlaps[choice.converter] = {.converter = choice.converter,
                                              .weight = overlaps[choice.converter].weight + ground.weights[i]};
    }
    std::erase_if(overlaps, [](const Overlap& one) { return one.weight == 0; });
    return overlaps;
}

ModelPlace place_of(const ModelExplained& explained, const ShelfInput& input, const Groundwork& ground,
                    const PlanAsk& ask, bool kept) {
    const std::vector<std::string>& without = ask.models.without;
    if (kept) return ModelPlace::kept;
    if (std::ranges::find(without, input.converters[explained.converter].name) != without.end())
        return ModelPlace::shut_out;
    if (explained.systems.empty()) return ModelPlace::suits_nothing;
    return ground.cover.beaten_by[explained.converter] ? ModelPlace::beaten : ModelPlace::left_out;
}

// The share that the best plan with this model covers: of the same size, or for the same budget.
double share_when_forced(const ShelfInput& input, const PlanAsk& ask, const ShelfPlan& plan, const std::string& name,
                         const OtherSearch& other_search) {
    PlanAsk forced = ask;
    forced.models.with.push_back(name);
    if (!ask.models.budget_cents) {
        forced.models.share.reset();
        forced.models.at_most = std::max(plan.models.size(), forced.models.with.size());
    }
    const Groundwork ground = groundwork_of(input, forced);
    if (forced.models.budget_cents && ground.cover.forced_cost > *forced.models.budget_cents) return 0;
    const ChosenModels chosen = choose_models(ground.cover, forced, other_search);
    return static_cast<double>(chosen.best.weight + ground.cover.forced_weight) /
           static_cast<double>(ground.cover.all_weight);
}

}  // namespace

ModelExplained explain_model(const ShelfInput& input, const PlanAsk& ask, const ShelfPlan& plan, std::string_view name,
                             const OtherSearch& other_search) {
    ModelExplained explained;
    explained.converter = converter_called(input, name);
    explained.name = name;
    const Groundwork ground = groundwork_of(input, ask);
    std::vector<bool> kept(input.converters.size(), false);
    for (const KeptModel& model : plan.models) kept[model.converter] = true;
    std::vector<Overlap> overlaps = take_systems(explained, input, ground, kept, ask.care_penalty);
    sort_lost(explained.systems, input);
    std::ranges::stable_sort(overlaps, std::greater<>(), &Overlap::weight);
    for (const Overlap& one : overlaps) explained.instead.push_back(one.converter);
    explained.beaten_by = ground.cover.beaten_by[explained.converter];
    explained.place = place_of(explained, input, ground, ask, kept[explained.converter]);
    for (const CurvePoint& point : plan.curve)
        if (!explained.joins_at && std::ranges::find(point.converters, explained.converter) != point.converters.end())
            explained.joins_at = point.models;
    explained.forced_share = plan.covered_share;
    if (plan.state == ShelfState::planned &&
        (explained.place == ModelPlace::beaten || explained.place == ModelPlace::left_out))
        explained.forced_share = share_when_forced(input, ask, plan, explained.name, other_search);
    return explained;
}

}  // namespace tapbook
