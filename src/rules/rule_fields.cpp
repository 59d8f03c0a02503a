// One [[rule]] table and its [[rule.case]] tables, key by key.
#include "rules/rule_fields.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <charconv>
#include <span>

#include "rules/columns.h"
#include "rules/says.h"

namespace tapbook {
namespace {

constexpr std::size_t most_complaints = 20;
constexpr std::array<std::string_view, 10> rule_keys = {"id",   "asks",         "when",  "effect", "unknown",
                                                        "says", "says_unknown", "basis", "case",   "off"};
constexpr std::array<std::string_view, 2> case_keys = {"given", "fires"};

void check_keys(const TomlValue& table, std::span<const std::string_view> known, std::string_view kind,
                RuleComplaints& complaints) {
    for (std::size_t i = 0; i < table.members.size(); ++i) {
        const auto& key = table.members[i].first;
        if (std::find(known.begin(), known.end(), key) != known.end()) continue;
        const auto near = nearest(key, known);
        std::string all;
        for (const auto one : known) all += fmt::format("{}{}", all.empty() ? "" : ", ", one);
        complaints.add(i < table.member_places.size() ? table.member_places[i] : table.place,
                       fmt::format("a {} has no key \"{}\"", kind, shown(key)),
                       near ? fmt::format("did you mean {}?", *near) : fmt::format("known are {}", all));
    }
}

std::string text_of(const TomlValue& table, std::string_view key, RuleComplaints& complaints) {
    const TomlValue* value = table.find(key);
    if (value == nullptr) {
        complaints.add(table.place, fmt::format("the rule has no \"{}\"", key), fmt::format("add {} = \"...\"", key));
        return {};
    }
    if (value->type == TomlValue::Type::text && value->text.empty()) {
        complaints.add(value->place, fmt::format("\"{}\" is empty", key), "say it in words");
        return {};
    }
    if (value->type != TomlValue::Type::text) {
        complaints.add(value->place, fmt::format("\"{}\" must be a text", key), "write it in double quotes");
        return {};
    }
    return value->text;
}

template <class Enum>
void read_word(const TomlValue& table, std::string_view key, Enum& target, RuleComplaints& complaints) {
    const std::string typed = text_of(table, key, complaints);
    if (typed.empty()) return;
    if (const auto value = parse_word<Enum>(typed)) {
        target = *value;
        return;
    }
    const auto known = spellings<Enum>();
    const auto near = nearest(typed, known);
    std::string all;
    for (const auto one : known) all += fmt::format("{}{}", all.empty() ? "" : ", ", one);
    complaints.add(place_inside(*table.find(key), 0), fmt::format("\"{}\" is no {}", shown(typed), key),
                   near ? fmt::format("did you mean {}?", *near) : fmt::format("write one of {}", all));
}

bool is_basis(std::string_view text) {
    constexpr std::string_view published = "published: ";
    return text == "physics" || text == "common practice" ||
           (text.starts_with(published) && text.size() > published.size());
}

// The number as it is written, whole where it is whole.
std::optional<sqlite::Value> number_of(std::string_view text) {
    if (text.starts_with('+')) text.remove_prefix(1);
    const char* end = text.data() + text.size();
    std::int64_t whole = 0;
    if (const auto read = std::from_chars(text.data(), end, whole); read.ec == std::errc() && read.ptr == end)
        return whole;
    double real = 0;
    if (const auto read = std::from_chars(text.data(), end, real, std::chars_format::fixed);
        read.ec == std::errc() && read.ptr == end)
        return real;
    return std::nullopt;
}

std::optional<sqlite::Value> given_value(const Column& column, const TomlValue& value) {
    if (value.type == TomlValue::Type::text)
        return column.type == "TEXT" ? std::optional<sqlite::Value>(value.text) : std::nullopt;
    if (column.type == "TEXT") return std::nullopt;
    if (value.type == TomlValue::Type::flag)
        return column.unit == "yes/no" ? std::optional<sqlite::Value>(std::int64_t{value.flag}) : std::nullopt;
    if (value.type != TomlValue::Type::number) return std::nullopt;
    auto number = number_of(value.text);
    if (number && column.type == "INTEGER" && std::holds_alternative<double>(*number)) return std::nullopt;
    return number;
}

std::string_view wanted_words(const Column& column) {
    if (column.type == "TEXT") return "a text";
    if (column.unit == "yes/no") return "1 or 0, true or false";
    return column.type == "INTEGER" ? "a whole number" : "a number";
}

// `given` may name columns in quotes ("tap.drive") or as a table of tables (tap.drive).
void read_given(const TomlValue& table, const std::string& prefix, RuleCase& one, RuleComplaints& complaints) {
    for (std::size_t i = 0; i < table.members.size(); ++i) {
        const auto& [key, value] = table.members[i];
        const std::string name = prefix.empty() ? key : fmt::format("{}.{}", prefix, key);
        if (value.type == TomlValue::Type::table && prefix.empty()) {
            read_given(value, key, one, complaints);
            continue;
        }
        const SourcePlace& place = i < table.member_places.size() ? table.member_places[i] : table.place;
        const Column* column = find_column(name);
        if (column == nullptr) {
            complaints.add(place, fmt::format("the case gives an unknown column \"{}\"", shown(name)),
                           nearest_column_hint(name));
            continue;
        }
        if (auto cell = given_value(*column, value))
            one.given.emplace_back(name, std::move(*cell));
        else
            complaints.add(value.place, fmt::format("{} takes {}", name, wanted_words(*column)),
                           "leave it out when not known");
    }
}

RuleCase case_of(const TomlValue& table, RuleComplaints& complaints) {
    RuleCase one;
    one.place = table.place;
    check_keys(table, case_keys, "case", complaints);
    if (const auto* given = table.find("given"); given != nullptr && given->type == TomlValue::Type::table)
        read_given(*given, "", one, complaints);
    else
        complaints.add(place_of_key(table, "given"), "the case has no table \"given\"",
                       "write given = { \"relation.column\" = value }");
    if (const auto* fires = table.find("fires")) {
        if (fires->type == TomlValue::Type::flag)
            one.fires = fires->flag;
        else
            complaints.add(fires->place, "\"fires\" must be true or false",
                           "leave it out when the rule must be unsettled");
    }
    return one;
}

void read_cases(const TomlValue& table, Rule& rule, RuleComplaints& complaints) {
    const TomlValue* cases = table.find("case");
    if (cases != nullptr && cases->type == TomlValue::Type::list) {
        for (const TomlValue& one : cases->items) {
            if (one.type == TomlValue::Type::table)
                rule.cases.push_back(case_of(one, complaints));
            else
                complaints.add(one.place, "a case must be a table", "write [[rule.case]]");
        }
    } else if (cases != nullptr) {
        complaints.add(cases->place, "\"case\" must be a list of tables", "write [[rule.case]]");
    }
    const auto has = [&](bool fires) {
        return std::any_of(rule.cases.begin(), rule.cases.end(), [&](const RuleCase& c) { return c.fires == fires; });
    };
    if (!has(true))
        complaints.add(rule.place, "the rule has no case in which it fires",
                       "add [[rule.case]] with given and fires = true");
    if (!has(false))
        complaints.add(rule.place, "the rule has no case in which it stays silent",
                       "add [[rule.case]] with given and fires = false");
}

}  // namespace

void RuleComplaints::add(const SourcePlace& place, std::string message, std::string hint) {
    list_.push_back({place, std::move(message), std::move(hint)});
}

void RuleComplaints::throw_if_any() {
    if (list_.empty()) return;
    std::stable_sort(list_.begin(), list_.end(), [](const Complaint& a, const Complaint& b) {
        return std::pair(a.place.line, a.place.column) < std::pair(b.place.line, b.place.column);
    });
    if (list_.size() > most_complaints) list_.erase(list_.begin() + most_complaints, list_.end());
    throw InputRefused(std::move(list_));
}

SourcePlace place_of_key(const TomlValue& table, std::string_view key) {
    const TomlValue* value = table.find(key);
    return value == nullptr ? table.place : value->place;
}

SourcePlace place_inside(const TomlValue& text, std::size_t offset) {
    SourcePlace place = text.place;
    const std::size_t quote = place.column > 0 ? static_cast<std::size_t>(place.column) - 1 : 0;
    const std::string_view rest = std::string_view(place.line_text).substr(std::min(quote, place.line_text.size()));
    const bool one_line =
        !rest.starts_with("\"\"\"") && !rest.starts_with("'''") && rest.substr(0, 1).find_first_of("\"'") == 0;
    if (one_line && rest.substr(1).starts_with(text.text)) place.column += static_cast<int>(offset) + 1;
    return place;
}

namespace {

// A rule that is switched off names itself and the reason, nothing else.
void read_off(const TomlValue& table, Rule& rule, RuleComplaints& complaints) {
    rule.off = SwitchedOff{text_of(table, "off", complaints), table.find("off")->place};
    for (std::size_t i = 0; i < table.members.size(); ++i) {
        const auto& key = table.members[i].first;
        if (key == "id" || key == "off" || i >= table.member_places.size()) continue;
        complaints.add(table.member_places[i], fmt::format("a rule that is switched off has no key \"{}\"", shown(key)),
                       "leave only id and off, or take off away");
    }
}

}  // namespace

Rule rule_of(const TomlValue& table, RuleComplaints& complaints) {
    Rule rule;
    rule.place = table.place;
    if (table.find("off") == nullptr) check_keys(table, rule_keys, "rule", complaints);
    rule.id = text_of(table, "id", complaints);
    if (!rule.id.empty())
        if (const auto trouble = slug_complaint(rule.id))
            complaints.add(place_inside(*table.find("id"), 0),
                           fmt::format("the id \"{}\" {}", shown(rule.id), *trouble));
    if (table.find("off") != nullptr) {
        read_off(table, rule, complaints);
        return rule;
    }
    rule.asks = text_of(table, "asks", complaints);
    rule.when = text_of(table, "when", complaints);
    read_word(table, "effect", rule.effect, complaints);
    read_word(table, "unknown", rule.unknown, complaints);
    rule.says = text_of(table, "says", complaints);
    if (table.find("says_unknown") != nullptr) rule.says_unknown = text_of(table, "says_unknown", complaints);
    rule.basis = text_of(table, "basis", complaints);
    if (!rule.basis.empty() && !is_basis(rule.basis))
        complaints.add(place_inside(*table.find("basis"), 0), fmt::format("\"{}\" is no basis", shown(rule.basis)),
                       "write \"physics\", \"common practice\" or \"published: <source>\"");
    read_cases(table, rule, complaints);
    return rule;
}

}  // namespace tapbook
