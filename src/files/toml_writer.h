// How is one record written as a TOML table that the reader takes back to the same fields? By the same field tables;
// numbers exactly in people's units, texts escaped so that nothing in them ends the text or hides.
#pragma once

#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "catalog/catalog.h"

namespace tapbook {

// `text` in double quotes. Quotes, backslashes, line feeds and every character that could not be seen are escaped.
std::string toml_text(std::string_view text);

// The colour as people write it, base first: "light blue/red".
std::string colour_spelling(const WireColour& colour);

// A stored text as people write it: a colour in words, a load in ohms and watts; every other as it is.
std::string spelled(FieldKind kind, const std::string& stored);

// One line "name = value" (several for a long list) with a line feed. A value of another type than the field's is
// written as it is: reading it back then fails, and the caller learns that it cannot be written.
std::string toml_line(const Field& field, const Value& value);

// The lines of all `fields` that `values` has, in the order of the table.
std::string toml_lines(std::span<const Field> fields, const Values& values);

// Keys of `values` that neither `fields` nor `own` name: fields of a newer version.
std::vector<std::string> unknown_keys(std::span<const Field> fields, std::span<const std::string_view> own,
                                      const Values& values);

}  // namespace tapbook
