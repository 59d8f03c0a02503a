// A dark line below, the insulation above it, the stripes as slanted dashes along it: the outline and the hatching stay
// when the page is printed in grey.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "report/drawing_layout.h"
#include "trade/trade.h"

namespace tapbook {

namespace {

constexpr double outline_width = 7, insulation_width = 5.4, stripe_every = 9, stripe_length = 3.2;
constexpr const char* ink = "#22272e";

std::string path_of(const std::vector<DrawnPoint>& points) {
    std::string out;
    for (const auto& point : points) out += fmt::format("{}{:.1f} {:.1f}", out.empty() ? "M" : "L", point.x, point.y);
    return out;
}

std::string stroked(const std::string& path, std::string_view colour, double width, std::string_view more = "") {
    return fmt::format("<path d=\"{}\" fill=\"none\" stroke=\"{}\" stroke-width=\"{:.1f}\"{}/>\n", path, colour, width,
                       more);
}

// One dash across the conductor at `along` from a towards b, leaning forward.
std::string dash(DrawnPoint a, DrawnPoint b, double along) {
    const double half = insulation_width / 2, lean = 2.2;
    const bool level = a.y == b.y;
    const double way = level ? (b.x > a.x ? 1 : -1) : (b.y > a.y ? 1 : -1);
    const auto at = [&](double forward, double across) {
        const double f = way * (along + forward);
        return level ? DrawnPoint{a.x + f, a.y + across} : DrawnPoint{a.x + across, a.y + f};
    };
    return path_of(
               {at(lean, -half), at(lean + stripe_length, -half), at(stripe_length - lean, half), at(-lean, half)}) +
           "Z";
}

// The dashes of stripe `index` of `count` on the whole conductor.
std::string dashes(const std::vector<DrawnPoint>& points, std::size_t index, std::size_t count) {
    std::string out;
    const double every = stripe_every * static_cast<double>(count);
    for (std::size_t i = 1; i < points.size(); ++i) {
        const DrawnPoint a = points[i - 1], b = points[i];
        const double length = std::abs(b.x - a.x) + std::abs(b.y - a.y);
        for (double along = 5 + stripe_every * static_cast<double>(index); along + 9 < length; along += every)
            out += dash(a, b, along);
    }
    return out;
}

std::string coloured(const PlacedConductor& conductor) {
    const std::string path = path_of(conductor.points);
    const auto all = hues(*conductor.colour);
    std::string out = stroked(path, ink, outline_width) + stroked(path, hex(rgb_of(all.front())), insulation_width);
    for (std::size_t i = 1; i < all.size(); ++i)
        if (const auto marks = dashes(conductor.points, i - 1, all.size() - 1); !marks.empty())
            out += fmt::format("<path d=\"{}\" fill=\"{}\" stroke=\"{}\" stroke-width=\"0.3\"/>\n", marks,
                               hex(rgb_of(all[i])), ink);
    return out;
}

}  // namespace

std::string conductor_svg(const PlacedConductor& conductor) {
    const std::string path = path_of(conductor.points);
    switch (conductor.kind) {
        case PlacedConductorKind::coloured:
            return coloured(conductor);
        case PlacedConductorKind::unknown:
            return stroked(path, ink, outline_width) + stroked(path, "#ffffff", insulation_width) +
                   stroked(path, ink, 1, " stroke-dasharray=\"4 4\"");
        case PlacedConductorKind::screened:
            return stroked(path, ink, outline_width) + stroked(path, "#ffffff", insulation_width) +
                   stroked(path, ink, 1.8);
        case PlacedConductorKind::plain:
            return stroked(path, ink, 1.6);
        case PlacedConductorKind::heavy:
            return stroked(path, ink, 4.5);
    }
    return {};
}

}  // namespace tapbook
