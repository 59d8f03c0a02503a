// What does the planner of the shelf get from this catalog? Every sound system with the converters that suit it, the
// jobs behind it, and the terms of each converter. Loaded for the command line and the page alike.
#pragma once

#include <optional>
#include <span>
#include <string>

#include "files/files.h"
#include "report/shelf_report.h"
#include "rules/rules.h"

namespace tapbook {

// Input, sources and practice of an answer that is not planned yet. `amplifier`: absent: the one that most jobs had, if
// any. Throws InputRefused, at its line, for a forecast that names an unknown car, and CatalogError.
ShelfAnswer shelf_of_shop(const Catalog& catalog, RuleBook& rules, const std::optional<Amplifier>& amplifier,
                          std::span<const ForecastLine> forecast, const std::string& today);

}  // namespace tapbook
