// Why is an expression not taken into the sandbox? Each reason has its word, the name it is about, and the place.
#pragma once

#include <cstddef>
#include <optional>
#include <stdexcept>
#include <string>
#include <string_view>

namespace tapbook::sqlite {

enum class Refusal {
    syntax_error,
    unbalanced_parenthesis,
    second_statement,
    second_value,
    comment,
    parameter,
    subquery,
    unknown_column,
    ambiguous_column,
    unknown_function,
    forbidden_function,
    not_deterministic,
    aggregate,
    window,
    wrong_arguments,
    too_long,
    too_deep,
};

// "unknown column" and so on, from the one table of these words.
std::string_view words(Refusal reason);

class RefusedExpression : public std::runtime_error {
  public:
    // `name` is the offending word or empty; `offset` counts bytes from 1 at the expression's first, absent when
    // unknown. what() is "unknown column: tap.volt" or, with a `detail`, "syntax error: near ...".
    RefusedExpression(Refusal reason, std::string name, std::optional<std::size_t> offset,
                      const std::string& detail = "");

    Refusal reason() const { return reason_; }
    const std::string& name() const { return name_; }  // without quotes; of a function or rowid in SQLite's spelling
    std::optional<std::size_t> offset() const { return offset_; }

  private:
    Refusal reason_;
    std::string name_;
    std::optional<std::size_t> offset_;
};

}  // namespace tapbook::sqlite
