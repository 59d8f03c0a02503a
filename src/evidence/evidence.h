// The door of this folder: notes in, standings out. No store, file, clock, locale or stream.
#pragma once

#include "evidence/audit.h"
#include "evidence/entry_checks.h"
#include "evidence/grade.h"
#include "evidence/ledger_checks.h"
#include "evidence/line.h"
#include "evidence/next_step.h"
#include "evidence/note_reference.h"
#include "evidence/pair_standing.h"
#include "evidence/points.h"
#include "evidence/premium_standing.h"
#include "evidence/questions.h"
#include "evidence/reckoning.h"
#include "evidence/standing.h"
#include "evidence/switched_standing.h"
#include "evidence/vote.h"
#include "evidence/year_split.h"
