// What is gone when one kept model is dropped? System by system: what its jobs count with all kept models, and without
// this one.
#include <algorithm>

#include "shelf/planned.h"

namespace tapbook {

double counts_with(const ShelfSystem& system, const std::vector<bool>& kept, double care_penalty) {
    double counts = 0;
    for (const Choice& choice : system.choices)
        if (kept[choice.converter]) counts = std::max(counts, choice.suits == Suits::fits ? 1 : 1 - care_penalty);
    return counts;
}

void sort_lost(std::vector<LostSystem>& lost, const ShelfInput& input) {
    std::ranges::sort(lost, [&](const LostSystem& a, const LostSystem& b) {
        if (a.jobs_per_year != b.jobs_per_year) return a.jobs_per_year > b.jobs_per_year;
        return input.systems[a.system].id < input.systems[b.system].id;
    });
}

std::vector<LostModel> lost_by_model(const ShelfInput& input, const Groundwork& ground,
                                     const std::vector<std::size_t>& kept, double care_penalty) {
    std::vector<LostModel> lost;
    std::vector<LostModel*> of_converter(input.converters.size(), nullptr);
    std::vector<bool> flags(input.converters.size(), false);
    for (const std::size_t converter : kept) {
        lost.push_back({.converter = converter,
                        .name = input.converters[converter].name,
                        .share = 0,
                        .jobs_per_year = 0,
                        .systems = {}});
        flags[converter] = true;
    }
    for (LostModel& one : lost) of_converter[one.converter] = &one;
    for (std::size_t i = 0; i < input.systems.size(); ++i) {
        const ShelfSystem& system = input.systems[i];
        const double with_all = counts_with(system, flags, care_penalty);
        const auto kept_choices = std::ranges::count_if(system.choices, [&](Choice c) { return flags[c.converter]; });
        for (const Choice& choice : system.choices) {
            LostModel* one = of_converter[choice.converter];
            if (one == nullptr) continue;
            flags[choice.converter] = false;
            const double drop = with_all - counts_with(system, flags, care_penalty);
            flags[choice.converter] = true;
            one->share += drop * static_cast<double>(ground.weights[i]) / static_cast<double>(ground.cover.all_weight);
            if (kept_choices != 1) continue;
            const double jobs = ground.demand.systems[i].jobs_per_year;
            one->jobs_per_year += jobs;
            one->systems.push_back({.system = i, .jobs_per_year = jobs});
        }
    }
    for (LostModel& one : lost) sort_lost(one.systems, input);
    return lost;
}

}  // namespace tapbook
