// The door of this folder: a question about coverage, asked of a solver that is a program of its own.
#pragma once

#include "solver/model_text.h"
#include "solver/run_solver.h"
