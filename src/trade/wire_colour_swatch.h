// How is a colour shown on a screen or on paper? Calm values of our own, chosen so that each looks like its word; never
// shown without an outline and the word beside it: on white, several of them are fainter than 3:1.
#pragma once

#include <cstdint>
#include <string>

#include "trade/wire_colour.h"

namespace tapbook {

// 8-bit sRGB.
struct Rgb {
    std::uint8_t red;
    std::uint8_t green;
    std::uint8_t blue;

    friend constexpr bool operator==(const Rgb&, const Rgb&) = default;
};

// The swatch of `hue`; light and dark forms are the plain one mixed with white and with black.
Rgb rgb_of(Hue hue);

// "#2c5caa", for SVG and HTML.
std::string hex(Rgb rgb);

// The nearest entry of the 256-colour terminal palette, 16 to 255 (the first 16 differ from terminal to terminal), by
// the distance in red, green and blue; the lower number of two equally near.
int terminal_256(Hue hue);

// What the palette entry looks like: 16 to 231 a cube of steps 0, 95, 135, 175, 215, 255, then 24 greys from 8 in steps
// of 10. REQUIRES 16 <= entry <= 255.
Rgb terminal_rgb(int entry);

}  // namespace tapbook
