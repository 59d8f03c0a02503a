// How does one TOML table become the stored fields of a record? By the field tables: unknown keys are named with the
// nearest known one, numbers are scaled exactly, words and colours checked. For the files of this folder.
#pragma once

#include <functional>
#include <span>
#include <string>
#include <vector>

#include "files/toml.h"

namespace tapbook {

// Complaints in the order they were made.
class Complaints {
  public:
    void add(const SourcePlace& place, std::string message, std::string hint = {});
    bool empty() const { return list_.empty(); }
    // Throws InputRefused when there is any: sorted by place, at most 20.
    void throw_if_any();

  private:
    std::vector<Complaint> list_;
};

// The stored fields of `table`. Keys in `own` are handled by the caller and passed over.
Values read_fields(const TomlValue& table, std::span<const Field> fields, std::span<const std::string_view> own,
                   Complaints& complaints);

// The text under `key`; a complaint and "" when it is missing (if `required`) or no text.
std::string read_text(const TomlValue& table, std::string_view key, bool required, Complaints& complaints);

// The place of the value of `key`, or of the table when it is not there.
SourcePlace place_of(const TomlValue& table, std::string_view key);

}  // namespace tapbook
