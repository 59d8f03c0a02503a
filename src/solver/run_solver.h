// How is the solver run, and what when it is not there, hangs or answers nonsense? Each of these is an answer of its
// own (SearchEnd); the planner then goes on with what it found itself.
#pragma once

#include <string>

#include "shelf/shelf.h"

namespace tapbook {

// Asks the solver `program` (a path; no shell, no search along PATH). It is killed when it has not answered a second
// after the time it was given. Never throws for what the solver does.
SearchAnswer ask_solver(const std::string& program, const CoverModel& model, double within_seconds);

// The same as the planner's other search.
OtherSearch solver_search(std::string program);

// Where `tapbook-solve` is installed: in the folder of the running program, else in the first folder of PATH that has
// it. Without any, the place where it should be: asking it then says that there is none.
std::string installed_solver();

}  // namespace tapbook
