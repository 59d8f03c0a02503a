// See cells.h.
#include "catalog/cells.h"

#include <algorithm>

namespace tapbook {
namespace {

constexpr char between_items = '\n';

std::string joined(const TextList& list) {
    std::string text;
    for (const auto& item : list) {
        if (!text.empty()) text += between_items;
        text += item;
    }
    return text;
}

TextList split(std::string_view text) {
    TextList list;
    while (!text.empty()) {
        const auto end = std::min(text.find(between_items), text.size());
        list.emplace_back(text.substr(0, end));
        text.remove_prefix(std::min(end + 1, text.size()));
    }
    return list;
}

// The small number the ledger keeps for a word, a colour or a day.
sqlite::Value ledger_number(const Field& field, const std::string& text) {
    if (field.kind == FieldKind::word) {
        const auto words = field.words();
        const auto found = std::find(words.begin(), words.end(), text);
        if (found != words.end()) return static_cast<std::int64_t>(found - words.begin());
    }
    if (field.kind == FieldKind::colour)
        if (const auto colour = wire_colour_from_code(text)) return to_integer(*colour);
    if (field.kind == FieldKind::day)
        if (const auto day = day_number(text)) return *day;
    return std::monostate{};
}

// Is the value of the type that the field's column holds, and would it come back as it is? Anything else goes to the
// rest.
bool fits(FieldKind kind, const Value& value) {
    switch (kind) {
        case FieldKind::whole:
        case FieldKind::decimal:
            return std::holds_alternative<std::int64_t>(value);
        case FieldKind::flag:
            return std::holds_alternative<bool>(value);
        case FieldKind::names:
        case FieldKind::word_list:
        case FieldKind::loads: {
            const auto* list = std::get_if<TextList>(&value);
            return list != nullptr && std::none_of(list->begin(), list->end(), [](const std::string& item) {
                       return item.empty() || item.find(between_items) != std::string::npos;
                   });
        }
        case FieldKind::name:
        case FieldKind::text:
        case FieldKind::slug:
        case FieldKind::word:
        case FieldKind::colour:
        case FieldKind::day:
            return std::holds_alternative<std::string>(value);
    }
    return false;
}

bool is_ledger_number(FieldKind kind) {
    return kind == FieldKind::word || kind == FieldKind::colour || kind == FieldKind::day;
}

std::optional<std::string> ledger_text(const Field& field, std::int64_t number) {
    if (field.kind == FieldKind::word) {
        const auto words = field.words();
        if (number >= 0 && number < static_cast<std::int64_t>(words.size()))
            return std::string(words[static_cast<std::size_t>(number)]);
    }
    if (field.kind == FieldKind::colour)
        if (const auto colour = wire_colour_from_integer(number)) return code(*colour);
    if (field.kind == FieldKind::day) return day_text(number);
    return std::nullopt;
}

}  // namespace

sqlite::Value cell_of(const Field& field, const Values& values, CellStyle style) {
    const auto found = values.find(field.stored);
    if (found == values.end() || !fits(field.kind, found->second)) return std::monostate{};
    if (const auto* number = std::get_if<std::int64_t>(&found->second)) return *number;
    if (const auto* flag = std::get_if<bool>(&found->second)) return std::int64_t{*flag ? 1 : 0};
    if (const auto* list = std::get_if<TextList>(&found->second)) return joined(*list);
    const auto& text = std::get<std::string>(found->second);
    if (style == CellStyle::ledger && is_ledger_number(field.kind)) return ledger_number(field, text);
    return text;
}

void put_cell(const Field& field, sqlite::Value cell, Values& values, CellStyle style) {
    const auto put = [&](Value value) { values.insert_or_assign(std::string(field.stored), std::move(value)); };
    if (const auto* number = std::get_if<std::int64_t>(&cell)) {
        if (field.kind == FieldKind::flag)
            put(*number != 0);
        else if (style == CellStyle::ledger && is_ledger_number(field.kind)) {
            if (auto text = ledger_text(field, *number)) put(std::move(*text));
        } else
            put(*number);
    } else if (auto* text = std::get_if<std::string>(&cell)) {
        if (field.kind == FieldKind::names || field.kind == FieldKind::word_list || field.kind == FieldKind::loads)
            put(split(*text));
        else
            put(std::move(*text));
    }
}

sqlite::Value rest_of(const Values& values, std::span<const Field> fields, std::span<const std::string_view> kept,
                      CellStyle style) {
    Values rest;
    for (const auto& [key, value] : values) {
        if (std::find(kept.begin(), kept.end(), key) != kept.end()) continue;
        const auto field =
            std::find_if(fields.begin(), fields.end(), [&, &name = key](const Field& f) { return f.stored == name; });
        const bool has_cell =
            field != fields.end() && !std::holds_alternative<std::monostate>(cell_of(*field, values, style));
        if (!has_cell) rest[key] = value;
    }
    if (rest.empty()) return std::monostate{};
    return record_line(rest);
}

void put_rest(const sqlite::Value& cell, Values& values) {
    if (const auto* line = std::get_if<std::string>(&cell)) values.merge(read_record_line(*line));
}

}  // namespace tapbook
