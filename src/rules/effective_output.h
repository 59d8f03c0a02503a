// Which output stage counts at a tap: the one the entry expects, or the one the notes show? A noted drive that is
// settled wins; one that is disputed leaves the drive unknown; without a note the entry counts for volts, but nothing
// is taken off its guard: the minus conductor counts as driven until somebody has looked.
#pragma once

#include <optional>

#include "catalog/catalog.h"

namespace tapbook {

enum class DriveSource { noted, expected, disputed, unknown };
template <>
struct NamedValues<DriveSource> {
    static constexpr Named<DriveSource> all[] = {{DriveSource::noted, "noted"},
                                                 {DriveSource::expected, "expected"},
                                                 {DriveSource::disputed, "disputed"},
                                                 {DriveSource::unknown, "unknown"}};
};
static_assert(table_is_sound<DriveSource>());

struct EffectiveOutput {
    OutputStage stage;  // the entry's facts with the drive that counts
    bool minus_is_driven = true;
    DriveSource source = DriveSource::unknown;
    bool differs_from_entry = false;  // a settled note names another drive than the entry
};

// Is the standing settled on a value by a car that somebody looked at (ONE CAR or better)?
bool is_looked_at(const Standing& standing);

EffectiveOutput effective_output(const TapFacts& tap);

// The volts at `tap` down to `lowest`, with the readings of its notes. Where nobody has settled that the minus is
// quiet, the d.c. that is expected to be absent counts as not known.
TapSignal predict_tap(const CarFacts& car, const TapFacts& tap, Hertz lowest);

}  // namespace tapbook
