// How far does an output swing from a given supply with a given loss? The bench calculation, and the peak limit that
// every prediction uses. Vpk = Vs - 2 loss (bridge), Vs/2 - loss (single-ended), rail - loss, 2 (rail - loss), rail - 2
// loss.
#pragma once

#include <optional>

#include "electrical/output_stage.h"
#include "electrical/supply.h"

namespace tapbook {

// How a boosted_split output is judged when nobody recorded whether it is bridged.
enum class SplitGuess { not_bridged, bridged };

// Largest undistorted peak across the pair. `supply` feeds unboosted stages, the rail boosted ones; `loss` per
// conducting side. Unknown drives are judged as bridged. Never below zero. Absent for boosted stages without a rail,
// and for digital; for line drives it is the peak of the rated level, absent without one.
std::optional<PeakVolts> peak_limit(const OutputStage& output, DcVolts supply, DcVolts loss, SplitGuess guess);

// The same without any loss: what a saturated output cannot exceed.
std::optional<PeakVolts> lossless_swing(const OutputStage& output, DcVolts supply, SplitGuess guess);

struct Swing {
    std::optional<PeakVolts> peak;
    std::optional<RmsVolts> clean;     // the smaller of peak / sqrt 2 and the rating's volts; line: the rated level
    std::optional<RmsVolts> clipped;   // of the saturated output: equal to the peak
    std::optional<Watts> clean_power;  // of `clean` in the load
    std::optional<DcVolts> dc_each;    // bias on each conductor; absent where it is not known
};

// What `output` delivers into `load` from this one supply with this one loss per side. A rating without its own load is
// taken as stated for `load`; one beyond a square wave from `supply` is a label and ignored. Every field is absent
// for digital; boosted stages without a rail have only what the rating says. REQUIRES load above zero when present.
Swing calculate_swing(const OutputStage& output, std::optional<Ohms> load, DcVolts supply = dc_volts(14.4),
                      DcVolts loss = dc_volts(0.75));

}  // namespace tapbook
