// All conductor colours there are: 37 hues (11 base colours in 3 shades, 4 in one), none repeated on a conductor, so
// 37 + 37 x 36 + 37 x 36 x 35 = 47,989. Few enough to try every one instead of drawing samples.
#pragma once

#include <vector>

#include "trade/trade.h"

namespace tapbook {

inline std::vector<Hue> every_hue() {
    std::vector<Hue> all;
    for (const auto& base : words_of<BaseColour>())
        for (const auto& shade : words_of<Shade>())
            if (shade.value == Shade::plain || has_shades(base.value)) all.push_back({base.value, shade.value});
    return all;
}

inline std::vector<WireColour> every_solid_colour() {
    std::vector<WireColour> all;
    for (const Hue& base : every_hue()) all.push_back({base});
    return all;
}

// `colours` with each possible next stripe.
inline std::vector<WireColour> with_one_more_stripe(const std::vector<WireColour>& colours) {
    std::vector<WireColour> all;
    for (const WireColour& colour : colours)
        for (const Hue& stripe : every_hue()) {
            auto longer = hues(colour);
            longer.push_back(stripe);
            if (const auto striped = wire_colour_of(longer)) all.push_back(*striped);
        }
    return all;
}

inline std::vector<WireColour> every_one_striped_colour() {
    return with_one_more_stripe(every_solid_colour());
}
inline std::vector<WireColour> every_two_striped_colour() {
    return with_one_more_stripe(every_one_striped_colour());
}

inline std::vector<WireColour> every_wire_colour() {
    auto all = every_solid_colour();
    for (const auto& more : {every_one_striped_colour(), every_two_striped_colour()})
        all.insert(all.end(), more.begin(), more.end());
    return all;
}

}  // namespace tapbook
