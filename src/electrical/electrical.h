// The door of this folder: everything the layers above may use. Pure values and functions; no store, clock, locale,
// stream or file, and no knowledge of colours, vehicles or shops.
#pragma once

#include "electrical/adding.h"            // IWYU pragma: export
#include "electrical/ampacity.h"          // IWYU pragma: export
#include "electrical/amplifier.h"         // IWYU pragma: export
#include "electrical/battery_drain.h"     // IWYU pragma: export
#include "electrical/cable_fuse.h"        // IWYU pragma: export
#include "electrical/charging_reserve.h"  // IWYU pragma: export
#include "electrical/conductor.h"         // IWYU pragma: export
#include "electrical/converter.h"         // IWYU pragma: export
#include "electrical/corner.h"            // IWYU pragma: export
#include "electrical/coupling.h"          // IWYU pragma: export
#include "electrical/feed.h"              // IWYU pragma: export
#include "electrical/feed_network.h"      // IWYU pragma: export
#include "electrical/feed_report.h"       // IWYU pragma: export
#include "electrical/feed_size.h"         // IWYU pragma: export
#include "electrical/hold_up.h"           // IWYU pragma: export
#include "electrical/laws.h"              // IWYU pragma: export
#include "electrical/level_answer.h"      // IWYU pragma: export
#include "electrical/level_chain.h"       // IWYU pragma: export
#include "electrical/meter.h"             // IWYU pragma: export
#include "electrical/named.h"             // IWYU pragma: export
#include "electrical/output_load.h"       // IWYU pragma: export
#include "electrical/output_stage.h"      // IWYU pragma: export
#include "electrical/quantity.h"          // IWYU pragma: export
#include "electrical/rating.h"            // IWYU pragma: export
#include "electrical/return_path.h"       // IWYU pragma: export
#include "electrical/signal.h"            // IWYU pragma: export
#include "electrical/supply.h"            // IWYU pragma: export
#include "electrical/supply_current.h"    // IWYU pragma: export
#include "electrical/swing.h"             // IWYU pragma: export
#include "electrical/tone_reading.h"      // IWYU pragma: export
#include "electrical/turn_on.h"           // IWYU pragma: export
#include "electrical/units.h"             // IWYU pragma: export
