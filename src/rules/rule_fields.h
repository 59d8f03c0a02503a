// Which keys does a [[rule]] table have, and how is each read? Complaints are gathered, not thrown one by one. For the
// files that read rules only.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "files/files.h"
#include "rules/rule.h"

namespace tapbook {

// Complaints about a rule file in the order they are found.
class RuleComplaints {
  public:
    void add(const SourcePlace& place, std::string message, std::string hint = {});
    // Throws InputRefused with the first 20, when there are any.
    void throw_if_any();

  private:
    std::vector<Complaint> list_;
};

// The place of the value under `key`; the table's own when it is not there.
SourcePlace place_of_key(const TomlValue& table, std::string_view key);

// Where byte `offset` (from 0) of a text value stands: exact for a text on one line without escapes, else its start.
SourcePlace place_inside(const TomlValue& text, std::size_t offset);

// The fields of one [[rule]] table; what is missing or wrong is complained about and left at its default.
Rule rule_of(const TomlValue& table, RuleComplaints& complaints);

}  // namespace tapbook
