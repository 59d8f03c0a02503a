// The door of this folder: notes in, standings out. No store, file, clock, locale or stream.
#pragma once

#include "evidence/bass_cut.h"
#include "evidence/entry_checks.h"
#include "evidence/grade.h"
#include "evidence/line.h"
#include "evidence/note_reference.h"
#include "evidence/pair_standing.h"
#include "evidence/points.h"
#include "evidence/premium_standing.h"
#include "evidence/standing.h"
#include "evidence/switched_standing.h"
#include "evidence/vote.h"
