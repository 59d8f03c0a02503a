// How is each end of a tap's range found? The parts of predict_signal, used by this folder only: three ends, each with
// its volts (absent when not known) and its reason.
#pragma once

#include <span>
#include <vector>

#include "electrical/signal.h"

namespace tapbook {

struct End {
    std::optional<RmsVolts> volts;
    Reason reason;
};

struct Ends {
    End low, likely, high;
};

// An end without volts; the reason's numbers are left for the caller.
End absent_end(Why why);

// Clean ends from the rating, the swing or the line level, without any reading.
Ends clean_without_reading(const OutputStage& output, const Supply& supply);

// Clean ends from complete readings: least low, median, greatest high. REQUIRES readings is not empty.
Ends clean_from_readings(const OutputStage& output, std::span<const ToneReading> readings, const Supply& supply);

// Ends of the saturated output beside the clean ones; never below them.
Ends clipped_ends(const OutputStage& output, const Ends& clean, const Supply& supply);

// Bias on each conductor to chassis.
DcRange bias_range(const OutputStage& output, const Supply& supply);

// Largest predicted d.c. between the conductors; absent for digital.
std::optional<DcVolts> largest_offset(const OutputStage& output, const Supply& supply);

}  // namespace tapbook
