// Which options does `note` take? One for each row of the table of note fields, and one flag for each method: nothing
// is listed twice.
#pragma once

#include <vector>

#include "cli/command.h"
#include "files/files.h"

namespace tapbook {

// All options of the command, those of `note why` and `note withdraw` among them.
std::vector<OptionSpec> note_options();

// Those of the fields of a note alone: the methods, then the table's rows.
std::vector<OptionSpec> note_field_options();

enum class MethodSaid { once, at_most_once };

// What was typed for the fields of a note, in the order of the table; the method first. Throws UsageError unless the
// method was said as often as it must.
std::vector<TypedField> typed_note_fields(const Parsed& parsed, MethodSaid method = MethodSaid::once);

// The option of a field: "dc_positive_v" is "--dc-positive". "--car" for "car", which no table lists.
std::string note_option_of(std::string_view field);

}  // namespace tapbook
