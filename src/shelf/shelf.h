// The door of this folder: what to keep on the shelf. Demand, coverage and levels; values in, values out. No store,
// file, clock or process.
#pragma once

#include "shelf/cover_model.h"
#include "shelf/plan_ask.h"
#include "shelf/planning.h"
#include "shelf/shelf_input.h"
#include "shelf/shelf_plan.h"
#include "shelf/small_parts.h"
