// See cell_value.h.
#include "files/cell_value.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "files/typed_value.h"

namespace tapbook {
namespace {

constexpr std::string_view digits = "0123456789";

// The numbers of a date between points, strokes, dashes or blanks: three, or none.
std::optional<std::array<std::string_view, 3>> parts_of_date(std::string_view text) {
    std::array<std::string_view, 3> parts;
    for (std::size_t i = 0; i < parts.size(); ++i) {
        const auto end = std::min(text.find_first_not_of(digits), text.size());
        parts[i] = text.substr(0, end);
        text.remove_prefix(end);
        const bool is_last = i + 1 == parts.size();
        if (parts[i].empty() || is_last != text.empty()) return std::nullopt;
        if (is_last) break;
        const auto next = text.find_first_of(digits);
        if (next == std::string_view::npos || text.substr(0, next).find_first_not_of("./- ") != std::string_view::npos)
            return std::nullopt;
        text.remove_prefix(next);
    }
    return parts;
}

std::variant<std::string, CellRefusal> day_of(const Mapping& mapping, const std::string& text) {
    constexpr std::size_t places[][3] = {{0, 1, 2}, {2, 1, 0}, {2, 0, 1}};  // of year, month, day, by DateOrder
    const auto& place = places[static_cast<std::size_t>(mapping.dates)];
    if (const auto parts = parts_of_date(text)) {
        const std::string day =
            fmt::format("{}-{:0>2}-{:0>2}", (*parts)[place[0]], (*parts)[place[1]], (*parts)[place[2]]);
        if (day_number(day)) return day;
    }
    return CellRefusal{fmt::format("\"{}\" is not a day in the order {}", shown(text), word_of(mapping.dates)),
                       "years have four digits; another order is said in the mapping: dates = \"day-month-year\""};
}

std::variant<std::string, CellRefusal> number_of(const Mapping& mapping, std::string text) {
    if (mapping.decimal_mark == DecimalMark::point) return text;
    if (text.find('.') != std::string::npos)
        return CellRefusal{fmt::format("{} has a point, and the mapping says decimal_mark = \"comma\"", shown(text)),
                           "write 13,8; a thousand has no point in it"};
    std::replace(text.begin(), text.end(), ',', '.');
    return text;
}

std::variant<std::string, CellRefusal> flag_of(const MappedKey& key, const std::string& text) {
    const std::string word = compared(text);
    if (word == "yes" || word == "true") return "yes";
    if (word == "no" || word == "false") return "no";
    return CellRefusal{fmt::format("does not know \"{}\"", shown(text)),
                       fmt::format("yes or no; what else it is called here is said under [words.{}]", key.name)};
}

bool is_list(FieldKind kind) {
    return kind == FieldKind::names || kind == FieldKind::word_list || kind == FieldKind::loads;
}

// Each item trimmed and translated; those that mean nothing are left out.
std::string translated_items(const Mapping& mapping, const MappedKey& key, std::string_view text) {
    const char mark = character_of(mapping.list_mark);
    std::string items;
    if (text == empty_list_cell) return items;
    while (!text.empty()) {
        const auto end = std::min(text.find(mark), text.size());
        const std::string item = translated(mapping, key.name, text.substr(0, end));
        if (!item.empty()) items += (items.empty() ? "" : std::string(1, mark)) + item;
        text.remove_prefix(std::min(end + 1, text.size()));
    }
    return items;
}

std::variant<std::string, CellRefusal> written_as_toml(const Mapping& mapping, const MappedKey& key,
                                                       const std::string& text) {
    switch (key.kind) {
        case FieldKind::day:
            return day_of(mapping, text);
        case FieldKind::whole:
        case FieldKind::decimal:
            return number_of(mapping, text);
        case FieldKind::flag:
            return flag_of(key, text);
        case FieldKind::names:
        case FieldKind::word_list:
        case FieldKind::loads:
            return translated_items(mapping, key, text);
        case FieldKind::name:
        case FieldKind::text:
        case FieldKind::slug:
        case FieldKind::word:
        case FieldKind::colour:
            break;
    }
    return text;
}

}  // namespace

std::string translated(const Mapping& mapping, std::string_view key, std::string_view cell) {
    const auto words = mapping.words.find(key);
    if (words != mapping.words.end())
        if (const auto word = words->second.find(compared(cell)); word != words->second.end()) return word->second;
    if (mapping.keep_blanks) return std::string(cell);
    const auto start = cell.find_first_not_of(" \t"), end = cell.find_last_not_of(" \t");
    return start == std::string_view::npos ? std::string() : std::string(cell.substr(start, end - start + 1));
}

std::variant<TomlValue, CellRefusal> cell_value(const Mapping& mapping, const MappedKey& key, const std::string& text,
                                                const SourcePlace& place) {
    const auto written = written_as_toml(mapping, key, text);
    if (const auto* refusal = std::get_if<CellRefusal>(&written)) return *refusal;
    const char mark = is_list(key.kind) ? character_of(mapping.list_mark) : ',';
    return typed_value(key.kind, std::get<std::string>(written), place, mark);
}

}  // namespace tapbook
