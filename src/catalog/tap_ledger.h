// How are the notes of one place, and the grades of several, read inside a transaction? For the files of this folder
// only.
#pragma once

#include <map>
#include <set>
#include <string>
#include <vector>

#include "catalog/state.h"

namespace tapbook {

TapLedger ledger_of(Catalog::State& state, std::string_view path);

// What the notes that count say together.
NotedStanding standing_of_ledger(const TapLedger& ledger, NoteKind kind);

// The grade of each path (of its first question), over all years.
std::map<std::string, Grade> grades_at(sqlite::Database& database, const std::set<std::string>& paths);

// Where two readings of the same paths differ.
std::vector<AddReport::GradeMove> moves_between(const std::map<std::string, Grade>& before,
                                                const std::map<std::string, Grade>& after);

}  // namespace tapbook
