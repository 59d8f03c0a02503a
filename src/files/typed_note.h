// How does a note typed on one line become the fields of a note? The typed texts are read by the same rules as a file's
// values, so that both refuse the same things in the same words.
#pragma once

#include <span>
#include <string>

#include "catalog/catalog.h"

namespace tapbook {

struct TypedField {
    const NoteField* field;
    std::string option;  // as it was typed: "--dc-positive"
    std::string text;
};

// The stored fields. A flag is "yes" or "no"; items of a list stand between commas. Throws InputRefused: each complaint
// begins with the option; place is that of `file` without a line. Fields that do not belong to `kind` are refused.
Values read_typed_note(NoteKind kind, std::span<const TypedField> typed);

// Does a note with these fields answer or remark anything?
bool says_something(const Values& values, NoteKind kind);

}  // namespace tapbook
