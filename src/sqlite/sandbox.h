// How is one expression that somebody else wrote evaluated over known columns, and which columns does it read? An
// in-memory database holds one STRICT table of one row per relation. SQLite itself reads the expression, under an
// authorizer that allows one SELECT, the relations' own columns and a short list of functions; what SQLite lets pass
// (comments, an unbalanced parenthesis, a word lost behind "0 AND") is refused by looking at the text first.
//
//     Sandbox sandbox({{"signal", {{"volts", "REAL"}}}, {"converter", {{"limit_volts", "REAL"}}}});
//     Expression over = sandbox.compile("signal.volts > converter.limit_volts");
//     sandbox.set("signal", {9.6});        // converter.limit_volts is still NULL:
//     over.truth();                        // absent, unsettled
#pragma once

#include <cstddef>
#include <cstdint>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "sqlite/refused_expression.h"
#include "sqlite/value.h"

namespace tapbook::sqlite {

inline constexpr std::size_t most_expression_bytes = 4096;
inline constexpr std::size_t most_expression_depth = 50;
inline constexpr std::int64_t default_step_budget = 1'000'000;

struct Relation {
    struct Column {
        std::string name;
        std::string type;  // INTEGER, REAL or TEXT
    };
    std::string name;
    std::vector<Column> columns;
};

struct ColumnRead {
    std::string relation;
    std::string column;
    friend bool operator==(const ColumnRead&, const ColumnRead&) = default;
};

// Functions an expression may call: deterministic, scalar, in byte order.
std::span<const std::string_view> allowed_functions();

// A compiled expression. It keeps what it needs of its sandbox alive.
class Expression {
  public:
    ~Expression();
    Expression(Expression&&) noexcept;
    Expression& operator=(Expression&&) noexcept;

    // Every column it names, once, in the order of the relations and of their columns.
    const std::vector<ColumnRead>& reads() const;

    // The statement SQLite runs for it: FROM names only the relations it reads.
    std::string sql() const;

    // Its value on the rows as they are now. Throws Error when it cannot be computed (an integer overflow, a text
    // longer than a million bytes) and with is_interrupted() when it takes more steps of SQLite's machine than the
    // budget (to within a tenth of it, at most 1000).
    Value value();

    // The value as a condition in SQL's three-valued logic: absent for NULL ("unsettled"), false for zero, else true.
    // A text counts as the number it starts with. Throws as value().
    std::optional<bool> truth();

  private:
    friend class Sandbox;
    struct State;
    explicit Expression(std::unique_ptr<State> state);
    std::unique_ptr<State> state_;
};

class Sandbox {
  public:
    // Every cell starts as NULL. Throws std::invalid_argument when a name is not [a-z_][a-z0-9_]*, is rowid, oid or
    // _rowid_, stands twice, a type is another, or a relation has no columns or more than 200. At most 60 relations.
    explicit Sandbox(const std::vector<Relation>& relations, std::int64_t step_budget = default_step_budget);
    ~Sandbox();
    Sandbox(Sandbox&&) noexcept;
    Sandbox& operator=(Sandbox&&) noexcept;

    // Throws RefusedExpression. A column is named relation.column, or alone where only one relation has it.
    Expression compile(std::string_view expression);

    // Replaces the row of `relation` by `values` in the order of its columns; a row equal to the last one costs next to
    // nothing. A whole real is taken for an INTEGER
    // column and an integer for a REAL one; any other type is an Error with is_constraint(), and then the old row
    // stays. Throws std::invalid_argument for an unknown relation or another number of values.
    void set(std::string_view relation, const std::vector<Value>& values);

    // Makes every cell of `relation` NULL: nothing is known of it.
    void clear(std::string_view relation);

    struct State;  // shared with the expressions; inside sqlite/ only

  private:
    std::shared_ptr<State> state_;
};

}  // namespace tapbook::sqlite
