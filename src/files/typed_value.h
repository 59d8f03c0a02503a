// How does a text that was typed, or stands in a cell, become the value that a TOML file would hold for a field? So
// that all three are read, and refused, by the same rules. For the files of this folder.
#pragma once

#include "files/toml.h"

namespace tapbook {

// Items of a list stand between `list_mark`s. A flag is true for "yes" and otherwise false: whether the text is "yes"
// or "no" is the caller's to check.
TomlValue typed_value(FieldKind kind, std::string_view text, const SourcePlace& place, char list_mark = ',');

}  // namespace tapbook
