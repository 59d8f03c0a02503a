// The parts of the command table (command.h) by the place where people work, and the options that several share.
#pragma once

#include "cli/command.h"

namespace tapbook {

inline constexpr OptionSpec year_option{"--year", "YEAR", "model year of this car, two or four digits"};
inline constexpr OptionSpec system_option{"--system", "CODE", "sound system, as listed by taps"};
inline constexpr OptionSpec dry_run_option{"--dry-run", "", "show what would happen and write nothing"};

std::span<const CommandSpec> car_commands();
std::span<const CommandSpec> job_commands();
std::span<const CommandSpec> office_commands();
std::span<const CommandSpec> share_commands();
std::span<const CommandSpec> sheet_commands();
std::span<const CommandSpec> feed_commands();
std::span<const CommandSpec> shelf_commands();
std::span<const CommandSpec> look_after_commands();
std::span<const CommandSpec> bench_commands();

}  // namespace tapbook
