// What do the columns hold for the candidate that is judged now? Each is asked for when a rule first reads it, and once
// at most: of some hundred columns a rule reads two.
#pragma once

#include <cstdint>
#include <string_view>
#include <vector>

#include "rules/columns.h"

namespace tapbook {

class CandidateValues {
  public:
    CandidateValues();

    // From now on the columns of `candidate`. REQUIRES: it outlives the last question about it.
    void look_at(const Candidate& candidate);

    // From now on those of another part, held against the same tap: what was asked of vehicle, system, circuit, tap,
    // signal and job stays. REQUIRES: as look_at(), and the candidate before had the same of these.
    void look_at_part(const Candidate& candidate);

    // From now on nothing is known but what give() says.
    void forget();
    void give(const Column& column, sqlite::Value value);

    // The value as its STRICT table would hold it: a whole number in a REAL column is a real, NaN is NULL.
    // REQUIRES: a column of the one table.
    const sqlite::Value& of(const Column& column) { return at(index_of(column)); }

    // The same by its place in columns().
    const sqlite::Value& at(std::size_t place) {
        Held& held = held_[place];
        if (held.of_look != look_of(held)) ask(place);
        return held.value;
    }

    // The row of one relation, as the sandbox takes it.
    std::vector<sqlite::Value> row(std::string_view relation);

  private:
    struct Held {
        sqlite::Value value;
        std::uint64_t of_look = 0;
        bool is_of_tap = false;
    };
    void ask(std::size_t place);
    std::uint64_t look_of(const Held& held) const { return held.is_of_tap ? look_of_tap_ : look_; }

    const Candidate* candidate_ = nullptr;
    std::uint64_t look_ = 0, look_of_tap_ = 0;
    std::vector<Held> held_;  // one for each column, in the order of the table
};

}  // namespace tapbook
