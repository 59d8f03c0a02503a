// Can this be planned with? Each refusal says what is wrong, where, and what to do.
#pragma once

#include "shelf/plan_ask.h"
#include "shelf/shelf_input.h"

namespace tapbook {

// Throws ShelfRefused for the first thing that is wrong, in the order of the fields.
void check_input(const ShelfInput& input);
void check_ask(const PlanAsk& ask, const ShelfInput& input);
void check_demand_ask(const DemandAsk& ask);
void check_levels_ask(const LevelsAsk& ask);

// The place of the converter of that name. Throws ShelfRefused, with the nearest name.
std::uint32_t converter_called(const ShelfInput& input, std::string_view name);

}  // namespace tapbook
