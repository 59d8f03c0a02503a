// Checks on the tokens of an expression, and the text handed to SQLite.
#include "sqlite/expression_text.h"

#include <algorithm>

#include "sqlite/expression_tokens.h"
#include "sqlite/refused_expression.h"
#include "sqlite/sandbox.h"

namespace tapbook::sqlite {
namespace {

using Kind = Token::Kind;

[[noreturn]] void refuse(Refusal reason, const Token& token, bool named, const char* detail = "") {
    throw RefusedExpression(reason, named ? token.name : "", token.offset + 1, detail);
}

bool is_symbol(const Token& token, std::string_view symbol) {
    return token.kind == Kind::symbol && token.text == symbol;
}

bool is_word(const Token& token, std::string_view word) {
    return token.kind == Kind::word && token.name == word;
}

bool is_name(const Token& token) {
    return token.kind == Kind::word || token.kind == Kind::quoted_name;
}

// 0, 00, 0x0 and the like.
bool is_whole_zero(const Token& token) {
    if (token.kind != Kind::number) return false;
    const std::string_view digits = std::string_view(token.name).substr(token.name.starts_with("0x") ? 2 : 0);
    return digits.find_first_not_of('0') == std::string_view::npos;
}

// Does the list that opens at `open` hold exactly one value? Parentheses are known to be paired.
bool holds_one_value(const std::vector<Token>& tokens, std::size_t open) {
    std::size_t depth = 0, commas = 0, at = open;
    do {
        if (is_symbol(tokens[at], "(")) ++depth;
        if (is_symbol(tokens[at], ")")) --depth;
        if (is_symbol(tokens[at], ",") && depth == 1) ++commas;
        ++at;
    } while (depth > 0);
    return commas == 0 && at > open + 2;
}

void check_in_list(const std::vector<Token>& tokens, std::size_t in) {
    const bool opens = in + 1 < tokens.size() && is_symbol(tokens[in + 1], "(");
    if (!opens && in + 1 < tokens.size()) refuse(Refusal::subquery, tokens[in], true, "the list needs parentheses");
    if (opens && is_symbol(tokens[in + 2], ")")) refuse(Refusal::syntax_error, tokens[in], true, "the list is empty");
}

}  // namespace

ExpressionText::ExpressionText(std::string_view expression) : expression_(expression) {
    if (expression.size() > most_expression_bytes) {
        throw RefusedExpression(Refusal::too_long, "", most_expression_bytes + 1,
                                "more than " + std::to_string(most_expression_bytes) + " bytes");
    }
    tokens_ = tokens_of(expression);
    if (tokens_.empty()) throw RefusedExpression(Refusal::syntax_error, "", std::nullopt, "the expression is empty");
    check_parentheses();
    check_words();
    write_sql();
}

void ExpressionText::check_parentheses() const {
    std::vector<const Token*> open;
    for (const Token& token : tokens_) {
        if (is_symbol(token, "(")) {
            open.push_back(&token);
            if (open.size() > most_expression_depth) refuse(Refusal::too_deep, token, false);
        } else if (is_symbol(token, ")")) {
            if (open.empty()) refuse(Refusal::unbalanced_parenthesis, token, false);
            open.pop_back();
        } else if (is_symbol(token, ",") && open.empty()) {
            refuse(Refusal::second_value, token, false);
        }
    }
    if (!open.empty()) refuse(Refusal::unbalanced_parenthesis, *open.back(), false);
}

void ExpressionText::check_words() const {
    for (std::size_t i = 0; i < tokens_.size(); ++i) {
        const Token& token = tokens_[i];
        if (!is_name(token)) continue;
        const bool called = i + 1 < tokens_.size() && is_symbol(tokens_[i + 1], "(");
        const bool after_list = i > 0 && is_symbol(tokens_[i - 1], ")");
        if (is_word(token, "select") || is_word(token, "values") || is_word(token, "exists")) {
            refuse(Refusal::subquery, token, false);
        }
        if (is_word(token, "over") && after_list) refuse(Refusal::window, token, false);
        if (is_word(token, "filter") && after_list) refuse(Refusal::aggregate, token, false);
        if (is_word(token, "in")) check_in_list(tokens_, i);
        if ((token.name == "min" || token.name == "max") && called && holds_one_value(tokens_, i + 1)) {
            refuse(Refusal::aggregate, token, true, "it needs two values or more");
        }
    }
}

void ExpressionText::write_sql() {
    std::size_t written = 0;
    for (const Token& token : tokens_) {
        if (!is_whole_zero(token)) continue;
        sql_ += expression_.substr(written, token.offset - written);
        inserted_.push_back(sql_.size());
        sql_ += '+';
        written = token.offset;
    }
    sql_ += expression_.substr(written);
}

std::size_t ExpressionText::place_of(std::size_t offset) const {
    const auto before = std::count_if(inserted_.begin(), inserted_.end(), [&](std::size_t at) { return at < offset; });
    return std::min(offset - static_cast<std::size_t>(before), expression_.size()) + 1;
}

std::optional<std::size_t> ExpressionText::place_of_name(std::string_view name) const {
    const auto is_it = [&](const Token& token) {
        return token.kind != Kind::text && token.kind != Kind::number && token.name == name;
    };
    const auto found = std::find_if(tokens_.begin(), tokens_.end(), is_it);
    return found == tokens_.end() ? std::nullopt : std::optional(found->offset + 1);
}

}  // namespace tapbook::sqlite
