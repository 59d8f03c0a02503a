// What do a sandbox and its expressions share? The in-memory database, its relations, and the judge that SQLite asks
// about every name while an expression is compiled (https://www.sqlite.org/c3ref/set_authorizer.html). Inside sqlite/
// only.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <unordered_map>
#include <utility>
#include <vector>

#include "sqlite/database.h"
#include "sqlite/sandbox.h"

namespace tapbook::sqlite {

// One bit per relation, in their order.
using RelationSet = std::uint64_t;

class Judge {
  public:
    struct Denial {
        Refusal reason;
        std::string name;
    };

    explicit Judge(const std::vector<Relation>& relations) : relations_(relations) {}

    void begin();
    void end() { compiling_ = false; }

    // SQLITE_OK or SQLITE_DENY, as SQLite's authorizer. Outside begin() and end() only our own SQL is compiled: all is
    // well.
    int answer(int action, const char* first, const char* second);

    const std::optional<Denial>& denial() const { return denial_; }
    RelationSet relations_read() const;
    std::vector<ColumnRead> reads() const;  // once each, in the order of the relations and their columns

  private:
    int deny(Refusal reason, std::string name);
    int answer_read(std::string_view relation, std::string_view column);

    const std::vector<Relation>& relations_;
    bool compiling_ = false;
    int selects_ = 0;
    std::optional<Denial> denial_;
    std::vector<std::pair<std::size_t, std::size_t>> reads_;  // relation, column
};

struct Sandbox::State {
    State(std::vector<Relation> relations, std::int64_t step_budget);
    State(const State&) = delete;
    State& operator=(const State&) = delete;

    // Relations whose name, or the name of one of whose columns, equals `name` in lower case.
    RelationSet mentioned_by(std::string_view name) const;
    std::size_t index_of(std::string_view relation) const;
    void refill_budget() { steps_left = step_budget; }
    void lift_budget();  // for our own changes

    const std::vector<Relation> relations;
    const std::int64_t step_budget;
    std::int64_t steps_left;
    Judge judge;
    Database database;
    std::vector<Statement> setters;        // one for each relation; finalized before the database closes
    std::vector<std::vector<Value>> rows;  // what the tables hold, so that an equal row costs no SQL
    std::unordered_map<std::string, RelationSet> by_relation_name;
    std::unordered_map<std::string, RelationSet> by_column_name;

  private:
    void create_tables();
    void limit_connection();
};

}  // namespace tapbook::sqlite
