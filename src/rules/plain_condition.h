// Can a condition be answered without SQLite, and what does it say? The plain kind can: columns, numbers and texts,
// compared by = <> < <= > >= IS IN BETWEEN, reckoned with by + - * / coalesce min max, joined by AND OR NOT; numbers
// only with numbers and texts only with texts, so that no conversion is ever asked for. It says what SQLite would say
// (https://www.sqlite.org/lang_expr.html); whatever is not plain is left to the sandbox.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "rules/candidate_values.h"

namespace tapbook {

class PlainCondition {
  public:
    enum class Operation {
        column,
        whole,
        real,
        text,
        both,      // AND
        either,    // OR
        negation,  // NOT
        equal,
        unequal,
        less,
        at_most,
        more,
        at_least,
        same,     // IS
        unknown,  // IS NULL
        plus,
        minus,
        times,
        divided,
        one_of,       // IN: the first operand among the others
        first_known,  // coalesce
        least,        // min
        greatest,     // max
    };

    struct Node {
        Operation operation;
        std::size_t first_operand = 0, operands = 0;  // a run of operands_
        const Column* column = nullptr;
        std::size_t place = 0;    // of the column in columns()
        bool is_of_part = false;  // a column that the part changes
        std::int64_t whole = 0;
        double real = 0;
        std::string text = {};
    };

    // Absent when `when` is not of the plain kind, or not sound: the sandbox knows why.
    static std::optional<PlainCondition> read(std::string_view when);

    // Every column it names, once, in the order of the table.
    const std::vector<const Column*>& reads() const { return reads_; }

    // True fires, false is silent, absent is unsettled.
    std::optional<bool> truth(CandidateValues& values) const;

    // What it says whichever part is held against the tap; `open` when that depends on the part.
    enum class Foreseen { fires, silent, unsettled, open };
    Foreseen foreseen(CandidateValues& values) const;

  private:
    friend class PlainConditionReader;
    std::vector<Node> nodes_;  // operands before what uses them, the root last
    std::vector<std::size_t> operands_;
    std::vector<const Column*> reads_;
};

}  // namespace tapbook
