// The fields of a record and the columns of a table both stand in the order of their keys: one walk over both.
#include "catalog/cell_binding.h"

#include <algorithm>

namespace tapbook {
namespace {

constexpr char between_items = '\n';

bool holds_numbers(FieldKind kind) {
    return kind == FieldKind::whole || kind == FieldKind::decimal;
}

bool holds_lists(FieldKind kind) {
    return kind == FieldKind::names || kind == FieldKind::word_list || kind == FieldKind::loads;
}

// The list as one text; absent when it would not come back as it is.
std::optional<std::string> joined(const RecordToken& list) {
    std::string text;
    bool is_first = true;
    for (const auto& item : items_of(list)) {
        if (item.empty() || item.find(between_items) != std::string::npos) return std::nullopt;
        if (!is_first) text += between_items;
        is_first = false;
        text += item;
    }
    return text;
}

}  // namespace

CellBinding::CellBinding(std::span<const Field> fields, std::span<const std::string_view> kept, CellStyle style,
                         int first)
    : fields_(fields.begin(), fields.end()),
      style_(style),
      first_(first),
      filled_(fields.size() + 1, true),
      filling_(fields.size() + 1, false) {
    int parameter = first;
    for (const auto& field : fields_)
        columns_.push_back({field.stored, &field, parameter++,
                            field.kind == FieldKind::word ? field.words() : std::vector<std::string_view>()});
    for (const auto& key : kept) {
        const auto is_field = [&](const Column& column) { return column.key == key; };
        if (std::none_of(columns_.begin(), columns_.end(), is_field)) columns_.push_back({key});
    }
    std::sort(columns_.begin(), columns_.end(), [](const Column& a, const Column& b) { return a.key < b.key; });
}

void CellBinding::bind(sqlite::Statement& statement, const RecordTokens& record) {
    std::fill(filling_.begin(), filling_.end(), false);
    rest_.clear();
    auto column = columns_.begin();
    for (const auto& token : record.fields()) {
        while (column != columns_.end() && column->key < token.key) ++column;
        const bool is_known = column != columns_.end() && column->key == token.key;
        if (is_known && column->field == nullptr) continue;
        if (is_known && bind_cell(statement, *column, token)) {
            filling_[static_cast<std::size_t>(column->parameter - first_)] = true;
            continue;
        }
        rest_ += rest_.empty() ? '{' : ',';
        rest_ += token.field;
    }
    if (!rest_.empty()) {
        rest_ += '}';
        statement.bind(first_ + static_cast<int>(fields_.size()), rest_);
        filling_.back() = true;
    }
    for (std::size_t i = 0; i < filling_.size(); ++i)
        if (filled_[i] && !filling_[i]) statement.bind(first_ + static_cast<int>(i), std::nullopt);
    std::swap(filled_, filling_);
}

bool CellBinding::bind_cell(sqlite::Statement& statement, const Column& column, const RecordToken& token) {
    const FieldKind kind = column.field->kind;
    switch (token.kind) {
        case TokenKind::whole:
            if (!holds_numbers(kind)) return false;
            statement.bind(column.parameter, token.number);
            return true;
        case TokenKind::flag:
            if (kind != FieldKind::flag) return false;
            statement.bind(column.parameter, token.number);
            return true;
        case TokenKind::text:
            return bind_text(statement, column, token);
        case TokenKind::list:
            if (!holds_lists(kind)) return false;
            if (const auto text = joined(token)) {
                statement.bind(column.parameter, *text);
                return true;
            }
            return false;
    }
    return false;
}

bool CellBinding::bind_text(sqlite::Statement& statement, const Column& column, const RecordToken& token) {
    const FieldKind kind = column.field->kind;
    if (holds_numbers(kind) || holds_lists(kind) || kind == FieldKind::flag) return false;
    const bool is_number =
        style_ == CellStyle::ledger && (kind == FieldKind::word || kind == FieldKind::colour || kind == FieldKind::day);
    if (!is_number) {
        statement.bind(column.parameter, token.text);
        return true;
    }
    const auto number = number_of(column, token.text);
    if (number) statement.bind(column.parameter, *number);
    return number.has_value();
}

// The small number that the ledger keeps for a word, a colour or a day. There are few colours and each comes often.
std::optional<std::int64_t> CellBinding::number_of(const Column& column, std::string_view text) {
    const Field& field = *column.field;
    if (field.kind == FieldKind::day) return day_number(text);
    if (field.kind == FieldKind::colour) {
        constexpr std::size_t most_kept = 4096;
        if (const auto found = colours_.find(text); found != colours_.end()) return found->second;
        const auto colour = wire_colour_from_code(text);
        const auto number = colour ? std::optional(to_integer(*colour)) : std::nullopt;
        if (colours_.size() < most_kept) colours_.emplace(text, number);
        return number;
    }
    const auto found = std::find(column.words.begin(), column.words.end(), text);
    return found == column.words.end() ? std::nullopt : std::optional<std::int64_t>(found - column.words.begin());
}

}  // namespace tapbook
