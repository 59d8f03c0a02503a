// What does the text of an expression say before SQLite reads it? Its tokens, cut as SQLite cuts them
// (https://www.sqlite.org/lang_expr.html, tokenize.c), and the refusals that SQLite itself would not give. Inside
// sqlite/ only.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace tapbook::sqlite {

struct Token {
    enum class Kind { word, quoted_name, text, number, symbol };
    Kind kind;
    std::string_view text;  // with its quotes
    std::size_t offset;     // of its first byte, from 0
    std::string name;       // lower case (ASCII), unquoted: of words, quoted names and symbols
};

class ExpressionText {
  public:
    // Throws RefusedExpression for an empty or too long text, an open quote, a zero byte, comments, ';', parameters,
    // unpaired or too deeply nested parentheses, a comma outside them, subqueries, min(x), max(x), OVER and FILTER.
    // REQUIRES: `expression` outlives this.
    explicit ExpressionText(std::string_view expression);

    const std::vector<Token>& tokens() const { return tokens_; }
    std::size_t size() const { return expression_.size(); }

    // The expression for SQLite. A bare 0 becomes +0, the same value: else the parser turns "0 AND anything" into 0
    // before it looks whether anything exists.
    const std::string& sql() const { return sql_; }

    // 1-based byte in the expression of byte `offset` (from 0) of sql(); one past its end when that lies beyond.
    std::size_t place_of(std::size_t offset) const;

    // 1-based byte of the first token with this name; absent when there is none.
    std::optional<std::size_t> place_of_name(std::string_view name) const;

  private:
    void check_parentheses() const;
    void check_words() const;
    void write_sql();

    std::string_view expression_;
    std::vector<Token> tokens_;
    std::string sql_;
    std::vector<std::size_t> inserted_;  // places in sql_ of the added '+'
};

}  // namespace tapbook::sqlite
