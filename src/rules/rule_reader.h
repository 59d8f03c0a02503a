// What does a rule file say, and is every rule in it sound? TOML in, rules out; whatever could make a rule silently
// useless is refused with its place.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "rules/rule.h"

namespace tapbook {

// The rules in `toml_text`, in the file's order. Throws InputRefused with all complaints (at most 20): an unknown or
// missing key, a word that is no effect, a condition that is refused or reads an unknown column, a sentence with an
// unknown column or format, an id twice, a case of the wrong type, a rule without a case that fires and one that is
// silent. The cases are not run here: see RuleBook::run_cases(). `trusted` conditions are not compiled here: for files
// whose text was checked before, since the book compiles every condition once more.
enum class Conditions { checked, trusted };
std::vector<Rule> read_rules(std::string_view toml_text, const std::string& file_name,
                             Conditions conditions = Conditions::checked);

}  // namespace tapbook
