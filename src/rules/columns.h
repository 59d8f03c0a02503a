// What can a rule read? One table: relation, name, type, unit, meaning, and how a candidate gives the value. It makes
// the sandbox, fills it, checks the cases and is printed for whoever writes a rule.
#pragma once

#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "rules/candidate.h"
#include "sqlite/sqlite.h"

namespace tapbook {

struct Column {
    std::string_view
        relation;  // vehicle system circuit tap signal job converter level amplifier turn_on feed load plan
    std::string_view name;
    std::string_view type;                   // INTEGER, REAL or TEXT
    std::string_view unit;                   // "V", "Hz", ..., "yes/no" (1 or 0), "count", "word", "text"
    std::string_view meaning;                // a noun phrase that fits "... is not known"
    sqlite::Value (*get)(const Candidate&);  // NULL when not known
    bool needs_amplifier = false;            // a rule that reads it is left out while no amplifier is chosen
    bool needs_tap = false;                  // of the part, but held against the tap
};

// All columns, relation by relation.
std::span<const Column> columns();

// The column "relation.name", or nullptr.
const Column* find_column(std::string_view full_name);

// The column of that relation and name, or nullptr.
const Column* find_column(std::string_view relation, std::string_view name);

// The columns of one relation; empty for an unknown one.
std::span<const Column> columns_of(std::string_view relation);

// Its place in columns(), from 0. REQUIRES: it lies there.
std::size_t index_of(const Column& column);

// "relation.name".
std::string full_name(const Column& column);

// May a rule read this relation when the tap alone is judged?
bool is_of_tap(std::string_view relation);

// Does it hang on the part and the amplifier alone: the same at every tap of one job that has as many pairs?
bool is_of_part_alone(const Column& column);

// Is it one of the relations of the whole install: turn_on, feed, load, plan? A rule that reads one of them is asked
// for what it is about only.
bool is_of_install(std::string_view relation);

// The relations in order, as the sandbox wants them.
std::vector<sqlite::Relation> column_relations();

// A value as people read it: "9.6 V", "yes", "bridged", "unknown".
std::string shown_value(const Column& column, const sqlite::Value& value);

}  // namespace tapbook
