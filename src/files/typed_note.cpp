// A table is made of the typed texts, then read like a file's.
#include "files/typed_note.h"

#include <fmt/format.h>

#include <algorithm>

#include "files/table_reader.h"

namespace tapbook {
namespace {

TomlValue text_value(std::string_view text, const SourcePlace& place) {
    TomlValue value;
    value.type = TomlValue::Type::text;
    value.text = text;
    value.place = place;
    return value;
}

TomlValue list_value(std::string_view text, const SourcePlace& place) {
    TomlValue list;
    list.type = TomlValue::Type::list;
    list.place = place;
    while (!text.empty()) {
        const auto end = std::min(text.find(','), text.size());
        list.items.push_back(text_value(text.substr(0, end), place));
        text.remove_prefix(std::min(end + 1, text.size()));
    }
    return list;
}

// The typed text as the value a file would hold; a complaint for a flag that is neither yes nor no.
TomlValue value_of(const TypedField& typed, const SourcePlace& place, Complaints& complaints) {
    TomlValue value = text_value(typed.text, place);
    switch (typed.field->field.kind) {
        case FieldKind::whole:
        case FieldKind::decimal:
            value.type = TomlValue::Type::number;
            break;
        case FieldKind::day:
            value.type = TomlValue::Type::date;
            break;
        case FieldKind::flag:
            value.type = TomlValue::Type::flag;
            value.flag = typed.text == "yes";
            if (typed.text != "yes" && typed.text != "no")
                complaints.add(place, fmt::format("{} does not know \"{}\"", typed.option, shown(typed.text)),
                               "yes or no");
            break;
        case FieldKind::names:
        case FieldKind::word_list:
        case FieldKind::loads:
            return list_value(typed.text, place);
        case FieldKind::name:
        case FieldKind::text:
        case FieldKind::slug:
        case FieldKind::word:
        case FieldKind::colour:
            break;
    }
    return value;
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
