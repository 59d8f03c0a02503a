// Do two taps look the same to every rule? They do when their keys are the same: every column about car, system,
// circuit, tap, signal and job that some rule reads, and the numbers from which converter and level columns are worked
// out. For the files of this folder.
#pragma once

#include <string>
#include <vector>

#include "rules/columns.h"
#include "rules/rule_book.h"

namespace tapbook {

// Adds the bytes of a value to a key, so that no two rows of values give one.
void append_value(const sqlite::Value& value, std::string& key);

class TapKeys {
  public:
    // Of the rules that are asked about tap and part.
    TapKeys(const RuleBook& rules, bool has_amplifier);

    // Adds the key of the candidate's tap. REQUIRES: nothing of its converter.
    void append(const Candidate& candidate, std::string& key) const;

  private:
    std::vector<const Column*> columns_;
};

}  // namespace tapbook
