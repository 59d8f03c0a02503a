// The one table of the words for each refusal.
#include "sqlite/refused_expression.h"

#include <utility>

namespace tapbook::sqlite {
namespace {

struct Words {
    Refusal reason;
    std::string_view words;
};

constexpr Words table[] = {
    {Refusal::syntax_error, "syntax error"},
    {Refusal::unbalanced_parenthesis, "parenthesis without its partner"},
    {Refusal::second_statement, "second statement"},
    {Refusal::second_value, "more than one value"},
    {Refusal::comment, "comment inside the expression"},
    {Refusal::parameter, "parameter"},
    {Refusal::subquery, "subquery"},
    {Refusal::unknown_column, "unknown column"},
    {Refusal::ambiguous_column, "column of several relations"},
    {Refusal::unknown_function, "unknown function"},
    {Refusal::forbidden_function, "function not allowed here"},
    {Refusal::not_deterministic, "function that changes from call to call"},
    {Refusal::aggregate, "aggregate function"},
    {Refusal::window, "window function"},
    {Refusal::wrong_arguments, "wrong number of arguments"},
    {Refusal::too_long, "expression too long"},
    {Refusal::too_deep, "expression nested too deeply"},
};

constexpr bool table_is_sound() {
    for (std::size_t i = 0; i < std::size(table); ++i) {
        if (table[i].reason != static_cast<Refusal>(i)) return false;
    }
    return std::size(table) == static_cast<std::size_t>(Refusal::too_deep) + 1;
}
static_assert(table_is_sound());

std::string sentence(Refusal reason, const std::string& name, const std::string& detail) {
    std::string text(words(reason));
    if (!name.empty()) text += ": " + name;
    if (!detail.empty()) text += (name.empty() ? ": " : ", ") + detail;
    return text;
}

}  // namespace

std::string_view words(Refusal reason) {
    return table[static_cast<std::size_t>(reason)].words;
}

RefusedExpression::RefusedExpression(Refusal reason, std::string name, std::optional<std::size_t> offset,
                                     const std::string& detail)
    : std::runtime_error(sentence(reason, name, detail)), reason_(reason), name_(std::move(name)), offset_(offset) {}

}  // namespace tapbook::sqlite
