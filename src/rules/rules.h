// The door of this folder: rules as data, candidates judged, findings with their reasons. It never writes to the
// catalog.
#pragma once

#include "rules/advise.h"             // IWYU pragma: export
#include "rules/candidate.h"          // IWYU pragma: export
#include "rules/changes_answer.h"     // IWYU pragma: export
#include "rules/columns.h"            // IWYU pragma: export
#include "rules/effective_output.h"   // IWYU pragma: export
#include "rules/finding.h"            // IWYU pragma: export
#include "rules/install.h"            // IWYU pragma: export
#include "rules/job_plan.h"           // IWYU pragma: export
#include "rules/judge_install.h"      // IWYU pragma: export
#include "rules/planned_job.h"        // IWYU pragma: export
#include "rules/planned_parts.h"      // IWYU pragma: export
#include "rules/predicted_reading.h"  // IWYU pragma: export
#include "rules/ranking.h"            // IWYU pragma: export
#include "rules/reading_answer.h"     // IWYU pragma: export
#include "rules/rule.h"               // IWYU pragma: export
#include "rules/rule_book.h"          // IWYU pragma: export
#include "rules/rule_reader.h"        // IWYU pragma: export
#include "rules/shelf_eligibility.h"  // IWYU pragma: export
#include "rules/taps_answer.h"        // IWYU pragma: export
#include "rules/why_answer.h"         // IWYU pragma: export
