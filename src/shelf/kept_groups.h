// Which jobs does each kept model get? Systems that would take the same kept models in the same order are one group.
#pragma once

#include <cstdint>
#include <span>
#include <vector>

#include "shelf/demand.h"
#include "shelf/shelf_input.h"

namespace tapbook {

struct KeptGroup {
    std::vector<std::uint32_t> models;  // places among the kept, the first choice first; never empty
    double shape = 0;                   // of the jobs a year; the rate is the demand's
};

// In the order of `models`. `kept`: converters.
std::vector<KeptGroup> kept_groups(const ShelfInput& input, const Demand& demand, std::span<const std::size_t> kept);

// The shape of the jobs for which each of so many models is the first choice.
std::vector<double> first_choice_shapes(std::span<const KeptGroup> groups, std::size_t models);

}  // namespace tapbook
