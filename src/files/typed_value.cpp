// See typed_value.h.
#include "files/typed_value.h"

#include <algorithm>

namespace tapbook {
namespace {

TomlValue plain_value(TomlValue::Type type, std::string_view text, const SourcePlace& place) {
    TomlValue value;
    value.type = type;
    value.text = text;
    value.place = place;
    return value;
}

TomlValue list_value(std::string_view text, const SourcePlace& place, char mark) {
    TomlValue list = plain_value(TomlValue::Type::list, {}, place);
    while (!text.empty()) {
        const auto end = std::min(text.find(mark), text.size());
        list.items.push_back(plain_value(TomlValue::Type::text, text.substr(0, end), place));
        text.remove_prefix(std::min(end + 1, text.size()));
    }
    return list;
}

}  // namespace

TomlValue typed_value(FieldKind kind, std::string_view text, const SourcePlace& place, char list_mark) {
    switch (kind) {
        case FieldKind::whole:
        case FieldKind::decimal:
            return plain_value(TomlValue::Type::number, text, place);
        case FieldKind::day:
            return plain_value(TomlValue::Type::date, text, place);
        case FieldKind::flag: {
            TomlValue value = plain_value(TomlValue::Type::flag, text, place);
            value.flag = text == "yes";
            return value;
        }
        case FieldKind::names:
        case FieldKind::word_list:
        case FieldKind::loads:
            return list_value(text, place, list_mark);
        case FieldKind::name:
        case FieldKind::text:
        case FieldKind::slug:
        case FieldKind::word:
        case FieldKind::colour:
            break;
    }
    return plain_value(TomlValue::Type::text, text, place);
}

}  // namespace tapbook
