// What is said of an install beside tap and parts: its options, and how they change a plan.
#pragma once

#include <vector>

#include "cli/command.h"

namespace tapbook {

// --turn-on, --metres, --size, --metal, --insulation, --engine-space, --load, --bridged, --speaker-watts.
std::vector<OptionSpec> install_options();

// `before` with what was typed. The turn-on as typed: planned_source() finds the place. Throws UsageError.
JobPlan with_install(JobPlan before, const Parsed& parsed);

// The code of the turn-on that `typed` names ("converter", "own-input" or a tap point of the system); "" for "".
// Throws NoAnswer for a tap the car does not have.
std::string turn_on_code(const CarFacts& car, const std::string& system, const std::string& typed);

// The amplifier of that code or name. Throws NoAnswer with the nearest.
Amplifier known_amplifier(const Catalog& catalog, const std::string& words);

}  // namespace tapbook
