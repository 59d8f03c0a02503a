// A printed power as the power at 1 % distortion, by the ideal clipping model, and the ratings that cannot be.
#include "electrical/rating.h"

#include "electrical/laws.h"

namespace tapbook {

namespace {

Ratio power_over_clipping_point(RatingKind kind, const Supply& supply) {
    switch (kind) {
        case RatingKind::continuous:
            return supply.clip_power_1_percent;
        case RatingKind::at_10_percent:
            return supply.clip_power_10_percent;
        case RatingKind::maximum:
            break;
    }
    return supply.clip_power_square;
}

bool is_unboosted_bridge(const OutputStage& output) {
    return behaves_as(output) == Drive::bridged;
}

// The most a bridge without losses delivers into `load` at the distortion of `kind`.
Watts bridge_limit(RatingKind kind, Ohms load, const Supply& supply) {
    const RmsVolts sine = rms_of_sine(peak_volts(supply.likely.in(dc_volts)));
    return power_in(sine, load) * power_over_clipping_point(kind, supply);
}

}  // namespace

Watts continuous_watts(Watts rated, RatingKind kind, const Supply& supply) {
    if (kind == RatingKind::continuous) return rated;
    return rated * (supply.clip_power_1_percent / power_over_clipping_point(kind, supply));
}

std::optional<ImpossibleRating> impossible_rating(const OutputStage& output, const Supply& supply) {
    if (!is_unboosted_bridge(output) || output.rating_kind == RatingKind::maximum) return std::nullopt;
    if (!output.rated || !output.rated_at) return std::nullopt;
    const Watts limit = bridge_limit(output.rating_kind, *output.rated_at, supply);
    if (*output.rated <= limit) return std::nullopt;
    return ImpossibleRating{limit};
}

bool is_label_only(const OutputStage& output, const Supply& supply) {
    if (!is_unboosted_bridge(output) || output.rating_kind != RatingKind::maximum) return false;
    if (!output.rated || !output.rated_at) return false;
    return *output.rated > bridge_limit(RatingKind::maximum, *output.rated_at, supply);
}

std::optional<RmsVolts> rated_volts(const OutputStage& output, const Supply& supply) {
    if (!output.rated || !output.rated_at) return std::nullopt;
    if (impossible_rating(output, supply) || is_label_only(output, supply)) return std::nullopt;
    return sine_volts(continuous_watts(*output.rated, output.rating_kind, supply), *output.rated_at);
}

}  // namespace tapbook
