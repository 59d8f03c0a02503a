// Does the condition of a rule hold for the values at hand? Asked of the plain reader first, of SQLite in the sandbox
// where it is not plain; the answer is the same either way.
#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "rules/plain_condition.h"
#include "rules/rule_book.h"
#include "sqlite/sqlite.h"

namespace tapbook {

class Condition {
  public:
    // Every column it names, once, in the order of the table.
    const std::vector<const Column*>& reads() const { return plain_ ? plain_->reads() : reads_; }
    bool is_plain() const { return plain_.has_value(); }

    // True fires, false is silent, absent is unsettled. Throws sqlite::Error when the sandbox cannot compute it.
    std::optional<bool> truth(CandidateValues& values);

  private:
    friend class ConditionReader;
    std::optional<PlainCondition> plain_;
    std::optional<sqlite::Expression> expression_;
    sqlite::Sandbox* sandbox_ = nullptr;  // of the reader
    std::vector<const Column*> reads_;
    std::vector<std::string_view> relations_;  // of reads_, once each
};

// REQUIRES: outlives the conditions it read and stays in its place.
class ConditionReader {
  public:
    explicit ConditionReader(Answering how) : how_(how) {}
    ConditionReader(const ConditionReader&) = delete;
    ConditionReader& operator=(const ConditionReader&) = delete;

    // Throws sqlite::RefusedExpression for what is neither plain nor allowed in the sandbox.
    Condition read(std::string_view when);

  private:
    Answering how_;
    std::optional<sqlite::Sandbox> sandbox_;  // made for the first condition that needs it
};

}  // namespace tapbook
