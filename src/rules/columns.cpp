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
    for (const auto part : {car_columns(), tap_columns(), converter_columns(), chain_columns(), turn_on_columns(),
                            feed_columns(), load_columns(), plan_columns()})
        all.insert(all.end(), part.begin(), part.end());
    return all;
}

// The columns of each relation: they stand together in the table.
std::vector<std::span<const Column>> runs_of_relations() {
    std::vector<std::span<const Column>> runs;
    const auto all = columns();
    for (std::size_t first = 0, end = 0; first < all.size(); first = end) {
        while (end < all.size() && all[end].relation == all[first].relation) ++end;
        runs.push_back(all.subspan(first, end - first));
    }
    return runs;
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
    return dot == std::string_view::npos ? nullptr : find_column(name.substr(0, dot), name.substr(dot + 1));
}

const Column* find_column(std::string_view relation, std::string_view name) {
    const auto all = columns_of(relation);
    const auto found = std::find_if(all.begin(), all.end(), [&](const Column& column) { return column.name == name; });
    return found == all.end() ? nullptr : &*found;
}

std::span<const Column> columns_of(std::string_view relation) {
    static const std::vector<std::span<const Column>> all = runs_of_relations();
    const auto found =
        std::find_if(all.begin(), all.end(), [&](const auto& run) { return run[0].relation == relation; });
    return found == all.end() ? std::span<const Column>() : *found;
}

std::size_t index_of(const Column& column) {
    return static_cast<std::size_t>(&column - columns().data());
}

std::string full_name(const Column& column) {
    return fmt::format("{}.{}", column.relation, column.name);
}

bool is_of_tap(std::string_view relation) {
    constexpr std::array<std::string_view, 6> of_tap = {"vehicle", "system", "circuit", "tap", "signal", "job"};
    return std::find(of_tap.begin(), of_tap.end(), relation) != of_tap.end();
}

bool is_of_part_alone(const Column& column) {
    if (column.relation == "level") return column.name == "pairs";
    return column.relation == "amplifier" || (column.relation == "converter" && !column.needs_tap);
}

bool is_of_install(std::string_view relation) {
    constexpr std::array<std::string_view, 4> of_install = {"turn_on", "feed", "load", "plan"};
    return std::find(of_install.begin(), of_install.end(), relation) != of_install.end();
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
