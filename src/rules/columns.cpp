// The one table put together from its parts, and its names.
#include "rules/columns.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "rules/column_values.h"

namespace tapbook {
namespace {

std::vector<Column> whole_table() {
    std::vector<Column> all;
    for (const auto part : {car_columns(), tap_columns(), converter_columns(), chain_columns()})
        all.insert(all.end(), part.begin(), part.end());
    return all;
}

std::string trimmed(double number) {
    std::string text = fmt::format("{:.3f}", number);
    while (text.back() == '0') text.pop_back();
    if (text.back() == '.') text.pop_back();
    return text == "-0" ? "0" : text;
}

bool has_written_unit(std::string_view unit) {
    return unit != "word" && unit != "text" && unit != "count" && unit != "year";
}

}  // namespace

std::span<const Column> columns() {
    static const std::vector<Column> all = whole_table();
    return all;
}

const Column* find_column(std::string_view name) {
    const auto dot = name.find('.');
    if (dot == std::string_view::npos) return nullptr;
    const auto all = columns();
    const auto found = std::find_if(all.begin(), all.end(), [&](const Column& column) {
        return column.relation == name.substr(0, dot) && column.name == name.substr(dot + 1);
    });
    return found == all.end() ? nullptr : &*found;
}

std::string full_name(const Column& column) {
    return fmt::format("{}.{}", column.relation, column.name);
}

bool is_of_tap(std::string_view relation) {
    constexpr std::array<std::string_view, 6> of_tap = {"vehicle", "system", "circuit", "tap", "signal", "job"};
    return std::find(of_tap.begin(), of_tap.end(), relation) != of_tap.end();
}

std::vector<sqlite::Relation> column_relations() {
    std::vector<sqlite::Relation> relations;
    for (const Column& column : columns()) {
        if (relations.empty() || relations.back().name != column.relation)
            relations.push_back({std::string(column.relation), {}});
        relations.back().columns.push_back({std::string(column.name), std::string(column.type)});
    }
    return relations;
}

std::string shown_value(const Column& column, const sqlite::Value& value) {
    if (const auto* text = std::get_if<std::string>(&value)) return *text;
    double number = 0;
    if (const auto* whole = std::get_if<std::int64_t>(&value))
        number = static_cast<double>(*whole);
    else if (const auto* real = std::get_if<double>(&value))
        number = *real;
    else
        return "unknown";
    if (column.unit == "yes/no") return number != 0 ? "yes" : "no";
    return has_written_unit(column.unit) ? fmt::format("{} {}", trimmed(number), column.unit) : trimmed(number);
}

}  // namespace tapbook
