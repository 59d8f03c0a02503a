// Do swatches look like their words? Contrast by the formula of WCAG 2.1 (relative luminance, contrast ratio); palette
// of terminals: the 6 x 6 x 6 cube and 24 greys of the 256-colour convention.
#include "trade/wire_colour_swatch.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <set>

#include "trade/every_wire_colour.h"

namespace tapbook {
namespace {

using enum BaseColour;

// WCAG 2.1, "relative luminance".
double linear(std::uint8_t channel) {
    const double c = channel / 255.0;
    return c <= 0.03928 ? c / 12.92 : std::pow((c + 0.055) / 1.055, 2.4);
}
double luminance(Rgb rgb) {
    return 0.2126 * linear(rgb.red) + 0.7152 * linear(rgb.green) + 0.0722 * linear(rgb.blue);
}

// WCAG 2.1, "contrast ratio", against white.
double contrast_on_white(Hue hue) {
    return 1.05 / (luminance(rgb_of(hue)) + 0.05);
}

int spread(Rgb rgb) {
    return std::max({rgb.red, rgb.green, rgb.blue}) - std::min({rgb.red, rgb.green, rgb.blue});
}

}  // namespace

TEST_CASE("exactly seven usual colours are fainter than 3:1 on white, which is why every swatch has an outline") {
    const Hue faint[] = {{orange}, {yellow}, {white}, {pink}, {tan}, {green, Shade::light}, {blue, Shade::light}};
    for (const Hue& hue : faint) {
        CAPTURE(words(hue));
        CHECK(contrast_on_white(hue) < 3.0);
    }
    for (const BaseColour base : {black, brown, red, green, blue, violet, grey}) {
        CAPTURE(words(Hue{base}));
        CHECK(contrast_on_white({base}) >= 3.0);
    }
}

TEST_CASE("no two hues share a swatch") {
    std::set<std::string> seen;
    for (const Hue& hue : every_hue()) CHECK(seen.insert(hex(rgb_of(hue))).second);
}

TEST_CASE("light forms are lighter and dark forms darker than the plain colour") {
    for (const auto& named : words_of<BaseColour>()) {
        const double plain = luminance(rgb_of({named.value}));
        CHECK(luminance(rgb_of({named.value, Shade::light})) > plain);
        CHECK(luminance(rgb_of({named.value, Shade::dark})) < plain);
    }
}

TEST_CASE("each swatch is led by the channels its word promises") {
    const Rgb r = rgb_of({red}), g = rgb_of({green}), b = rgb_of({blue}), y = rgb_of({yellow}), v = rgb_of({violet});
    CHECK(r.red > r.green + 100);
    CHECK(r.red > r.blue + 100);
    CHECK(g.green > g.red + 50);
    CHECK(g.green > g.blue + 50);
    CHECK(b.blue > b.red + 80);
    CHECK(b.blue > b.green + 50);
    CHECK(y.red > y.blue + 100);
    CHECK(y.green > y.blue + 100);
    CHECK(v.blue > v.green + 50);
    CHECK(v.red > v.green + 30);
    for (const BaseColour base : {black, grey, white, silver}) CHECK(spread(rgb_of({base})) <= 15);
}

TEST_CASE("colours are written in hexadecimal, six small digits") {
    CHECK(hex({0, 0, 0}) == "#000000");
    CHECK(hex({255, 128, 10}) == "#ff800a");
}

TEST_CASE("terminal entries 16 to 255 are the cube and the greys") {
    CHECK(terminal_rgb(16) == Rgb{0, 0, 0});
    CHECK(terminal_rgb(21) == Rgb{0, 0, 255});
    CHECK(terminal_rgb(46) == Rgb{0, 255, 0});
    CHECK(terminal_rgb(196) == Rgb{255, 0, 0});
    CHECK(terminal_rgb(231) == Rgb{255, 255, 255});
    CHECK(terminal_rgb(232) == Rgb{8, 8, 8});
    CHECK(terminal_rgb(255) == Rgb{238, 238, 238});
}

TEST_CASE("the terminal colour is the nearest of the palette, found a second way channel by channel") {
    const auto nearest_step = [](int channel) {
        const int steps[] = {0, 95, 135, 175, 215, 255};
        return static_cast<int>(std::ranges::min_element(steps, {}, [&](int s) { return std::abs(s - channel); }) -
                                steps);
    };
    const auto distance = [](Rgb a, Rgb b) {
        return std::hypot(double(a.red) - b.red, double(a.green) - b.green, double(a.blue) - b.blue);
    };
    for (const Hue& hue : every_hue()) {
        const Rgb wanted = rgb_of(hue);
        const int cube =
            16 + 36 * nearest_step(wanted.red) + 6 * nearest_step(wanted.green) + nearest_step(wanted.blue);
        const int mean = (wanted.red + wanted.green + wanted.blue) / 3;
        const int grey = 232 + std::clamp((mean - 8 + 5) / 10, 0, 23);
        const double best = std::min(distance(wanted, terminal_rgb(cube)), distance(wanted, terminal_rgb(grey)));
        CAPTURE(words(hue));
        CHECK(distance(wanted, terminal_rgb(terminal_256(hue))) == Approx(best).margin(0.5));
    }
}

TEST_CASE("the plain colours keep apart on a 256-colour terminal") {
    std::set<int> seen;
    for (const auto& named : words_of<BaseColour>()) CHECK(seen.insert(terminal_256({named.value})).second);
}

}  // namespace tapbook
