// Which cars does an invented catalog hold? Makes and models that can be spoken and that nobody builds: some of two
// words, with hyphens, digits or accents; a make has models that look alike; a model has bodies and generations.
#pragma once

#include <cstdint>
#include <vector>

#include "catalog/search.h"

namespace invented {

// `count` cars in path order, no path twice. Generations of one body do not overlap. The same for the same seed.
std::vector<tapbook::VehicleName> cars(std::uint64_t seed, std::size_t count);

}  // namespace invented
