// What does CBC, the branch-and-cut solver of the COIN-OR project, say to a question about coverage?
#pragma once

#include "solver/solver.h"

namespace tapbook {

// Optimal, stopped by time with the best found and a bound, or infeasible.
SearchAnswer search_with_cbc(const CoverQuestion& question);

}  // namespace tapbook
