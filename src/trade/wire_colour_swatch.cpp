// The palette and its nearest terminal colours.
#include "trade/wire_colour_swatch.h"

#include <fmt/format.h>

namespace tapbook {
namespace {

Rgb plain_rgb(BaseColour base) {
    switch (base) {
        case BaseColour::black:
            return {34, 34, 36};
        case BaseColour::brown:
            return {117, 74, 44};
        case BaseColour::red:
            return {196, 46, 46};
        case BaseColour::orange:
            return {238, 132, 36};
        case BaseColour::yellow:
            return {242, 210, 58};
        case BaseColour::green:
            return {38, 128, 68};
        case BaseColour::blue:
            return {40, 88, 170};
        case BaseColour::violet:
            return {120, 68, 158};
        case BaseColour::grey:
            return {124, 128, 132};
        case BaseColour::white:
            return {252, 252, 250};
        case BaseColour::pink:
            return {240, 158, 184};
        case BaseColour::gold:
            return {184, 142, 46};
        case BaseColour::turquoise:
            return {42, 168, 168};
        case BaseColour::silver:
            return {190, 196, 202};
        case BaseColour::tan:
            return {208, 176, 134};
    }
    return {0, 0, 0};
}

// `tenths` tenths of the way from `from` to `to`.
std::uint8_t mixed(std::uint8_t from, int to, int tenths) {
    return static_cast<std::uint8_t>(from + (to - from) * tenths / 10);
}

Rgb mixed(Rgb rgb, int to, int tenths) {
    return {mixed(rgb.red, to, tenths), mixed(rgb.green, to, tenths), mixed(rgb.blue, to, tenths)};
}

int squared_distance(Rgb a, Rgb b) {
    const int red = a.red - b.red, green = a.green - b.green, blue = a.blue - b.blue;
    return red * red + green * green + blue * blue;
}

constexpr int first_entry = 16, first_grey = 232, last_entry = 255;

}  // namespace

Rgb rgb_of(Hue hue) {
    const Rgb plain = plain_rgb(hue.base);
    switch (hue.shade) {
        case Shade::plain:
            return plain;
        case Shade::light:
            return mixed(plain, 255, 5);
        case Shade::dark:
            return mixed(plain, 0, 4);
    }
    return plain;
}

std::string hex(Rgb rgb) {
    return fmt::format("#{:02x}{:02x}{:02x}", rgb.red, rgb.green, rgb.blue);
}

Rgb terminal_rgb(int entry) {
    if (entry >= first_grey) {
        const auto grey = static_cast<std::uint8_t>(8 + 10 * (entry - first_grey));
        return {grey, grey, grey};
    }
    constexpr std::uint8_t steps[] = {0, 95, 135, 175, 215, 255};
    const int cube = entry - first_entry;
    return {steps[cube / 36], steps[cube / 6 % 6], steps[cube % 6]};
}

int terminal_256(Hue hue) {
    const Rgb wanted = rgb_of(hue);
    int best = first_entry;
    for (int entry = first_entry + 1; entry <= last_entry; ++entry)
        if (squared_distance(wanted, terminal_rgb(entry)) < squared_distance(wanted, terminal_rgb(best))) best = entry;
    return best;
}

}  // namespace tapbook
