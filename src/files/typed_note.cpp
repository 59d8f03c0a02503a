// A table is made of the typed texts, then read like a file's.
#include "files/typed_note.h"

#include <fmt/format.h>

#include "files/table_reader.h"
#include "files/typed_value.h"

namespace tapbook {
namespace {

// The typed text as the value a file would hold; a complaint for a flag that is neither yes nor no.
TomlValue value_of(const TypedField& typed, const SourcePlace& place, Complaints& complaints) {
    if (typed.field->field.kind == FieldKind::flag && typed.text != "yes" && typed.text != "no")
        complaints.add(place, fmt::format("{} does not know \"{}\"", typed.option, shown(typed.text)), "yes or no");
    return typed_value(typed.field->field.kind, typed.text, place);
}

std::string kind_words(NoteKind kind) {
    switch (kind) {
        case NoteKind::pair:
            return "a speaker or line pair";
        case NoteKind::switched:
            return "a power circuit";
        case NoteKind::system:
            break;
    }
    return "a sound system";
}

}  // namespace

Values read_typed_note(NoteKind kind, std::span<const TypedField> typed) {
    const SourcePlace place{"note", 0, 0, {}};
    Complaints complaints;
    TomlValue table;
    table.place = place;
    std::vector<Field> fields;
    for (const auto& one : typed) {
        if (!applies_to(*one.field, kind)) {
            complaints.add(place, fmt::format("{} does not belong to {}", one.option, kind_words(kind)),
                           fmt::format("it says: {}", one.field->field.meaning));
            continue;
        }
        Field field = one.field->field;
        field.name = one.option;
        fields.push_back(field);
        table.members.emplace_back(one.option, value_of(one, place, complaints));
        table.member_places.push_back(place);
    }
    Values values = read_fields(table, fields, {}, complaints);
    complaints.throw_if_any();
    return values;
}

bool says_something(const Values& values, NoteKind kind) {
    for (const auto& row : note_fields())
        if (applies_to(row, kind) && (row.voted || row.field.kind == FieldKind::decimal) &&
            values.contains(row.field.stored))
            return true;
    for (const std::string_view other : {"hazards", "altered", "remarks", "photo", "tell", "retained_s"})
        if (values.contains(other)) return true;
    return false;
}

}  // namespace tapbook
