// One pass over the lines; the first that is not of the known form ends it.
#include "rules/shipped_lines.h"

#include <algorithm>

namespace tapbook {
namespace {

constexpr std::string_view rule_head = "[[rule]]";
constexpr std::string_view case_head = "[[rule.case]]";

struct Line {
    std::string_view key, value;
};

// key = "value", nothing behind it and nothing inside that TOML would read otherwise.
std::optional<Line> line_of(std::string_view text) {
    constexpr std::string_view joint = " = \"";
    const auto at = text.find(joint);
    if (at == std::string_view::npos || !text.ends_with('"')) return std::nullopt;
    const auto from = at + joint.size();
    if (text.size() <= from) return std::nullopt;
    const auto value = text.substr(from, text.size() - from - 1);
    const auto holds = [&](char c) { return value.find(c) != std::string_view::npos; };
    if (value.empty() || holds('"') || holds('\\') || holds('\t') || holds('\r')) return std::nullopt;
    return Line{text.substr(0, at), value};
}

bool is_line_of_case(std::string_view text) {
    return (text.starts_with("given = {") && text.ends_with('}')) || text == "fires = true" || text == "fires = false";
}

template <class Enum>
bool set_word(Enum& target, std::string_view word) {
    const auto value = parse_word<Enum>(word);
    if (value) target = *value;
    return value.has_value();
}

bool set_text(std::string& target, std::string_view text) {
    if (!target.empty()) return false;  // twice
    target = text;
    return true;
}

// The rule that is being read, and which words it has.
struct Reading {
    Rule rule;
    bool has_effect = false, has_unknown = false;

    bool take(const Line& line) {
        if (line.key == "id") return set_text(rule.id, line.value);
        if (line.key == "asks") return set_text(rule.asks, line.value);
        if (line.key == "when") return set_text(rule.when, line.value);
        if (line.key == "says") return set_text(rule.says, line.value);
        if (line.key == "basis") return set_text(rule.basis, line.value);
        if (line.key == "says_unknown") {
            if (rule.says_unknown) return false;
            rule.says_unknown = line.value;
            return true;
        }
        if (line.key == "effect" && !has_effect) return has_effect = set_word(rule.effect, line.value);
        if (line.key == "unknown" && !has_unknown) return has_unknown = set_word(rule.unknown, line.value);
        return false;
    }

    bool is_whole() const {
        return has_effect && has_unknown && !rule.id.empty() && !rule.asks.empty() && !rule.when.empty() &&
               !rule.says.empty() && !rule.basis.empty();
    }
};

}  // namespace

std::optional<std::vector<Rule>> rules_in_plain_lines(std::string_view text, std::string_view file) {
    std::vector<Rule> rules;
    std::optional<Reading> reading;
    bool in_case = false;
    const auto finish = [&] {
        if (reading && !reading->is_whole()) return false;
        if (reading) rules.push_back(std::move(reading->rule));
        return true;
    };
    for (int number = 1; !text.empty(); ++number) {
        const auto end = std::min(text.find('\n'), text.size());
        const auto line = text.substr(0, end);
        text.remove_prefix(std::min(end + 1, text.size()));
        if (line.empty() || line.starts_with('#')) continue;
        if (line == rule_head) {
            if (!finish()) return std::nullopt;
            reading.emplace();
            reading->rule.place = {std::string(file), number, 1, std::string(line)};
            in_case = false;
        } else if (line == case_head && reading) {
            in_case = true;
        } else if (in_case) {
            if (!is_line_of_case(line)) return std::nullopt;
        } else {
            const auto one = line_of(line);
            if (!one || !reading || !reading->take(*one)) return std::nullopt;
        }
    }
    if (!finish()) return std::nullopt;
    return rules;
}

}  // namespace tapbook
