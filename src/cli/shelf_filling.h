// What does the planner of the shelf get from this catalog? Every sound system with the converters that suit it, the
// jobs behind it, and the terms of each converter.
#pragma once

#include "cli/command.h"

namespace tapbook {

// Fills input and sources. `amplifier`: its words; absent: the one that most jobs had, if any. Throws NoAnswer for an
// unknown amplifier and InputRefused, at its line, for a forecast that names an unknown car.
ShelfAnswer filled_shelf(const Catalog& catalog, RuleBook& rules, const std::optional<std::string>& amplifier,
                         std::span<const ForecastLine> forecast, const std::string& today);

}  // namespace tapbook
