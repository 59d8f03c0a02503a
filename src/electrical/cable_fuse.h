// Which fuse protects a cable and still carries the load? The smallest listed rating at or above the full current and
// at or below the cable's ampacity: the fuse is there for the cable. Rule: a protector opens before the rating of the
// wire is exceeded (FAA AC 43.13-1B 11-48); 33 CFR 183.455 would allow 150 %, which is not used.
#pragma once

#include <optional>
#include <span>

#include "electrical/ampacity.h"

namespace tapbook {

// Ratings one can buy, rising: 1 A to 300 A.
std::span<const Amps> listed_fuse_ratings();

// Along the cable from the battery post: what the trade keeps to (18 in), and the published rule of 33 CFR 183.455
// (7 in, where a fuse at the post itself is impractical).
inline constexpr Metres fuse_within_trade = millimetres(450);
inline constexpr Metres fuse_within_published = millimetres(177.8);

enum class FuseVerdict {
    fits,
    cable_too_thin,      // the load alone is more than the cable carries
    no_rating_between,   // the cable carries the load, but no listed rating lies between the two
    beyond_all_ratings,  // the load is more than the largest listed rating
};

template <>
struct NamedValues<FuseVerdict> {
    static constexpr Named<FuseVerdict> all[] = {{FuseVerdict::fits, "fits"},
                                                 {FuseVerdict::cable_too_thin, "cable_too_thin"},
                                                 {FuseVerdict::no_rating_between, "no_rating_between"},
                                                 {FuseVerdict::beyond_all_ratings, "beyond_all_ratings"}};
};

struct CableFuse {
    Ampacity cable;
    Amps current;  // full current of the load
    FuseVerdict verdict;
    std::optional<Amps> rating;       // set when it fits
    std::optional<Awg> thicker_size;  // the thinnest row that has a fuse for this load; absent when it fits or none has
};

// REQUIRES current above zero, and conditions as they were for `cable`.
CableFuse fuse_for(const Ampacity& cable, Amps current, const CableConditions& conditions);

// Is there a fuse, and is it below `most_current`, the current of a load that draws more than was planned for? False
// where either is absent.
bool may_blow(const CableFuse& fuse, std::optional<Amps> most_current);

}  // namespace tapbook
