// Which jobs does each kept model get? (kept_groups.h)
#include "shelf/kept_groups.h"

#include <map>

namespace tapbook {

std::vector<KeptGroup> kept_groups(const ShelfInput& input, const Demand& demand, std::span<const std::size_t> kept) {
    constexpr std::uint32_t not_kept = UINT32_MAX;
    std::vector<std::uint32_t> place(input.converters.size(), not_kept);
    for (std::size_t i = 0; i < kept.size(); ++i) place[kept[i]] = static_cast<std::uint32_t>(i);
    std::map<std::vector<std::uint32_t>, double> shapes;
    std::vector<std::uint32_t> models;
    for (std::size_t i = 0; i < input.systems.size(); ++i) {
        models.clear();
        for (const Choice& choice : input.systems[i].choices)
            if (place[choice.converter] != not_kept) models.push_back(place[choice.converter]);
        if (!models.empty() && demand.systems[i].shape > 0) shapes[models] += demand.systems[i].shape;
    }
    std::vector<KeptGroup> groups;
    for (const auto& [order, shape] : shapes) groups.push_back({.models = order, .shape = shape});
    return groups;
}

std::vector<double> first_choice_shapes(std::span<const KeptGroup> groups, std::size_t models) {
    std::vector<double> shapes(models);
    for (const KeptGroup& group : groups) shapes[group.models.front()] += group.shape;
    return shapes;
}

}  // namespace tapbook
