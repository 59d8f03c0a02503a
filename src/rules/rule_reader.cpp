// A rule file: its [[rule]] tables, each checked against the columns by compiling its condition in a sandbox.
#include "rules/rule_reader.h"

#include <fmt/format.h>

#include <map>
#include <optional>

#include "rules/columns.h"
#include "rules/mismatched_types.h"
#include "rules/rule_fields.h"
#include "rules/says.h"

namespace tapbook {
namespace {

std::string refusal_hint(const sqlite::RefusedExpression& refused) {
    switch (refused.reason()) {
        case sqlite::Refusal::unknown_column:
            return nearest_column_hint(refused.name());
        case sqlite::Refusal::ambiguous_column:
            return "write relation.column";
        case sqlite::Refusal::unknown_function:
        case sqlite::Refusal::forbidden_function: {
            std::string all;
            for (const auto name : sqlite::allowed_functions())
                all += fmt::format("{}{}", all.empty() ? "" : " ", name);
            return fmt::format("allowed are {}", all);
        }
        case sqlite::Refusal::syntax_error:
        case sqlite::Refusal::unbalanced_parenthesis:
        case sqlite::Refusal::second_statement:
        case sqlite::Refusal::second_value:
        case sqlite::Refusal::comment:
        case sqlite::Refusal::parameter:
        case sqlite::Refusal::subquery:
        case sqlite::Refusal::not_deterministic:
        case sqlite::Refusal::aggregate:
        case sqlite::Refusal::window:
        case sqlite::Refusal::wrong_arguments:
        case sqlite::Refusal::too_long:
        case sqlite::Refusal::too_deep:
            break;
    }
    return "a condition is one SQL expression over the columns that `tapbook rules columns` lists";
}

void check_condition(const TomlValue& when, sqlite::Sandbox& sandbox, RuleComplaints& complaints) {
    try {
        if (sandbox.compile(when.text).reads().empty())
            complaints.add(place_inside(when, 0), "the condition reads no column",
                           "it would always say the same; off = \"why\" switches a rule off");
        if (const auto mismatch = mismatched_types(when.text))
            complaints.add(place_inside(when, mismatch->offset), mismatch->message, mismatch->hint);
    } catch (const sqlite::RefusedExpression& refused) {
        complaints.add(place_inside(when, refused.offset().value_or(1) - 1),
                       fmt::format("the condition is refused: {}", shown(refused.what())), refusal_hint(refused));
    }
}

void check_sentence(const TomlValue* sentence, RuleComplaints& complaints) {
    if (sentence == nullptr || sentence->type != TomlValue::Type::text) return;
    if (const auto trouble = says_trouble(sentence->text))
        complaints.add(place_inside(*sentence, trouble->offset), trouble->message, trouble->hint);
}

void check_root(const TomlValue& root, RuleComplaints& complaints) {
    for (std::size_t i = 0; i < root.members.size(); ++i) {
        if (root.members[i].first == "rule") continue;
        complaints.add(root.member_places[i], fmt::format("a rule file has no \"{}\"", shown(root.members[i].first)),
                       "it holds [[rule]] tables only");
    }
}

}  // namespace

std::vector<Rule> read_rules(std::string_view toml_text, const std::string& file_name, Conditions conditions) {
    const TomlValue root = read_toml(toml_text, file_name);
    RuleComplaints complaints;
    check_root(root, complaints);
    std::vector<Rule> rules;
    std::map<std::string, int> lines;
    std::optional<sqlite::Sandbox> sandbox;
    if (conditions == Conditions::checked) sandbox.emplace(column_relations());
    const std::vector<TomlValue> none;
    const TomlValue* tables = root.find("rule");
    if (tables != nullptr && tables->type != TomlValue::Type::list) {
        complaints.add(tables->place, "\"rule\" must be a list of tables", "write [[rule]]");
        tables = nullptr;
    }
    for (const TomlValue& table : tables == nullptr ? none : tables->items) {
        if (table.type != TomlValue::Type::table) {
            complaints.add(table.place, "a rule must be a table", "write [[rule]]");
            continue;
        }
        Rule rule = rule_of(table, complaints);
        if (!rule.off && !rule.when.empty() && sandbox) check_condition(*table.find("when"), *sandbox, complaints);
        check_sentence(table.find("says"), complaints);
        check_sentence(table.find("says_unknown"), complaints);
        if (const auto [first, fresh] = lines.emplace(rule.id, rule.place.line); !fresh && !rule.id.empty())
            complaints.add(place_of_key(table, "id"), fmt::format("the id \"{}\" stands twice", rule.id),
                           fmt::format("the first rule of that name is on line {}", first->second));
        rules.push_back(std::move(rule));
    }
    complaints.throw_if_any();
    return rules;
}

}  // namespace tapbook
