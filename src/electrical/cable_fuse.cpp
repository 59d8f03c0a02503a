// The fuse of a cable. Rule in the header; ratings of blade and bolt-down fuses as sold, common practice.
#include "electrical/cable_fuse.h"

#include <algorithm>
#include <iterator>

namespace tapbook {

static_assert(table_is_sound<FuseVerdict>());

namespace {

constexpr Amps ratings[] = {
    amps(1),   amps(2),   amps(3),   amps(4),   amps(5),   amps(7.5), amps(10),  amps(15), amps(20),
    amps(25),  amps(30),  amps(35),  amps(40),  amps(50),  amps(60),  amps(70),  amps(80), amps(100),
    amps(125), amps(150), amps(175), amps(200), amps(225), amps(250), amps(300),
};

const Amps* smallest_from(Amps current) {
    return std::ranges::lower_bound(ratings, current);
}

}  // namespace

std::span<const Amps> listed_fuse_ratings() {
    return ratings;
}

CableFuse fuse_for(const Ampacity& cable, Amps current, const CableConditions& conditions) {
    CableFuse answer{cable, current, FuseVerdict::fits, std::nullopt, std::nullopt};
    const Amps* const rating = smallest_from(current);
    if (rating != std::end(ratings) && *rating <= cable.allowed) {
        answer.rating = *rating;
        return answer;
    }
    if (current > cable.allowed)
        answer.verdict = FuseVerdict::cable_too_thin;
    else
        answer.verdict = rating == std::end(ratings) ? FuseVerdict::beyond_all_ratings : FuseVerdict::no_rating_between;
    if (rating != std::end(ratings)) answer.thicker_size = thinnest_for(*rating, conditions);
    return answer;
}

bool may_blow(const CableFuse& fuse, std::optional<Amps> most_current) {
    return fuse.rating && most_current && *fuse.rating < *most_current;
}

}  // namespace tapbook
