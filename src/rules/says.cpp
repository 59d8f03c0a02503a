// Placeholders: found by their braces, checked once when a rule is read, filled for each finding.
#include "rules/says.h"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>
#include <vector>

namespace tapbook {
namespace {

struct Placeholder {
    std::size_t open;   // of the brace
    std::size_t close;  // of the closing one; npos when it is missing
    std::string_view name;
    std::optional<std::string_view> format;  // behind the colon
};

std::optional<Placeholder> next_placeholder(std::string_view sentence, std::size_t from) {
    const auto open = sentence.find('{', from);
    if (open == std::string_view::npos) return std::nullopt;
    const auto close = sentence.find('}', open);
    const auto inside = sentence.substr(open + 1, close == std::string_view::npos ? close : close - open - 1);
    const auto colon = inside.find(':');
    Placeholder found{open, close, inside.substr(0, colon), std::nullopt};
    if (colon != std::string_view::npos) found.format = inside.substr(colon + 1);
    return found;
}

// The digits of ".1f"; absent for anything else.
std::optional<int> digits_of(std::string_view format) {
    if (format.size() != 3 || format[0] != '.' || format[2] != 'f') return std::nullopt;
    if (format[1] < '0' || format[1] > '6') return std::nullopt;
    return format[1] - '0';
}

std::optional<SaysTrouble> trouble_of(const Placeholder& one) {
    if (one.close == std::string_view::npos)
        return SaysTrouble{"a { is never closed", "write {relation.column}", one.open};
    const Column* column = find_column(one.name);
    if (column == nullptr)
        return SaysTrouble{fmt::format("the sentence names an unknown column \"{}\"", shown(one.name)),
                           nearest_column_hint(one.name), one.open + 1};
    if (!one.format) return std::nullopt;
    const auto at = one.open + 2 + one.name.size();
    if (!digits_of(*one.format))
        return SaysTrouble{fmt::format("\"{}\" is no format", shown(*one.format)),
                           "write .0f to .6f, or no format at all", at};
    if (column->type == "TEXT")
        return SaysTrouble{fmt::format("{} is a text and takes no format", one.name),
                           fmt::format("write {{{}}}", one.name), at};
    return std::nullopt;
}

std::string written(const Column& column, const sqlite::Value& value, std::optional<std::string_view> format) {
    const int digits = (format ? digits_of(*format) : std::nullopt).value_or(-1);  // -1: no format
    if (const auto* real = std::get_if<double>(&value); real != nullptr && digits >= 0)
        return fmt::format("{:.{}f}", *real, digits);
    if (const auto* real = std::get_if<double>(&value)) return fmt::format("{:.4g}", *real);
    if (const auto* whole = std::get_if<std::int64_t>(&value); whole != nullptr && column.unit != "yes/no")
        return digits >= 0 ? fmt::format("{:.{}f}", static_cast<double>(*whole), digits) : fmt::format("{}", *whole);
    std::string text = shown_value(column, value);
    if (column.unit == "word") std::replace(text.begin(), text.end(), '_', ' ');
    return text;
}

// How many bytes of `rest` are the column's unit, which what is not known does not take: "unknown", not "unknown V".
std::size_t unit_after(std::string_view rest, const Column& column) {
    const std::string_view unit = column.unit.substr(0, column.unit.find(' '));
    if (unit.empty() || rest.size() <= unit.size() || rest[0] != ' ' || rest.substr(1, unit.size()) != unit) return 0;
    const auto after = rest.substr(1 + unit.size());
    return after.empty() || !std::isalnum(static_cast<unsigned char>(after[0])) ? 1 + unit.size() : 0;
}

}  // namespace

std::optional<SaysTrouble> says_trouble(std::string_view sentence) {
    std::size_t from = 0;
    while (const auto one = next_placeholder(sentence, from)) {
        const auto stray = sentence.substr(from, one->open - from).find('}');
        if (stray != std::string_view::npos)
            return SaysTrouble{"a } without its {", "write {relation.column}", from + stray};
        if (auto trouble = trouble_of(*one)) return trouble;
        from = one->close + 1;
    }
    const auto stray = sentence.find('}', from);
    if (stray != std::string_view::npos) return SaysTrouble{"a } without its {", "write {relation.column}", stray};
    return std::nullopt;
}

std::string filled(std::string_view sentence, const std::function<sqlite::Value(const Column&)>& value_of) {
    std::string text;
    std::size_t from = 0;
    while (const auto one = next_placeholder(sentence, from)) {
        text += sentence.substr(from, one->open - from);
        from = one->close + 1;
        const Column* column = find_column(one->name);
        if (column == nullptr) continue;
        const sqlite::Value value = value_of(*column);
        text += written(*column, value, one->format);
        if (std::holds_alternative<std::monostate>(value)) from += unit_after(sentence.substr(from), *column);
    }
    text += sentence.substr(from);
    return text;
}

std::string nearest_column_hint(std::string_view typed) {
    std::vector<std::string> names;
    const bool whole = typed.find('.') != std::string_view::npos;
    for (const Column& column : columns()) names.push_back(whole ? full_name(column) : std::string(column.name));
    const std::vector<std::string_view> views(names.begin(), names.end());
    const auto near = nearest(typed, views);
    if (!near) return "tapbook rules columns lists them";
    if (whole) return fmt::format("did you mean {}?", *near);
    for (const Column& column : columns())
        if (column.name == *near) return fmt::format("did you mean {}?", full_name(column));
    return {};
}

}  // namespace tapbook
