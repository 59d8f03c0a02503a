// How is a cable size written? "4" and "1/0" are AWG, "25mm2" is metric, "sae4" is cable marked SAE.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "electrical/electrical.h"

namespace tapbook {

// Absent for anything else, and for areas of 0 or above 1000 mm^2.
std::optional<CableSize> parse_cable_size(std::string_view typed);

// As parse_cable_size() reads it.
std::string cable_size_text(const CableSize& size);

}  // namespace tapbook
