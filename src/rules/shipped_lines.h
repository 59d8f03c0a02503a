// What do the rule files that come with the program say, without their cases? Read line by line in a fraction of the
// time TOML takes, since they are written that way: [[rule]], key = "text" on one line, then the cases.
#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "rules/rule.h"

namespace tapbook {

// The rules in the file's order, without cases. Absent when any line is of another form (an escape, a text over several
// lines), a key is unknown, missing or twice, or a word is none: read_rules() then reads it, or says what is wrong.
std::optional<std::vector<Rule>> rules_in_plain_lines(std::string_view text, std::string_view file);

}  // namespace tapbook
