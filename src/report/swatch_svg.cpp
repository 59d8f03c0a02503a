// A rectangle in the base colour and slanted bands across it: one band group for each stripe, outlined so that it stays
// in grey print.
#include "report/swatch_svg.h"

#include <fmt/format.h>

namespace tapbook {
namespace {

constexpr const char* ink = "#22272e";
constexpr double width = 30, height = 12, lean = 5, band = 4.2;

// One band whose middle is at `at`, from the lower left to the upper right.
std::string band_svg(double at, Hue hue) {
    return fmt::format(
        "<path d=\"M{:.1f} {:.1f}L{:.1f} 0.5H{:.1f}L{:.1f} {:.1f}z\" fill=\"{}\" stroke=\"{}\" stroke-width=\"0.6\"/>",
        at - lean / 2 - band / 2, height - 0.5, at + lean / 2 - band / 2, at + lean / 2 + band / 2,
        at - lean / 2 + band / 2, height - 0.5, hex(rgb_of(hue)), ink);
}

}  // namespace

std::string swatch_svg(const std::optional<WireColour>& colour) {
    std::string out = fmt::format(
        "<svg class=\"swatch\" width=\"{0:.0f}\" height=\"{1:.0f}\" "
        "viewBox=\"0 0 {0:.0f} {1:.0f}\" aria-hidden=\"true\">",
        width, height);
    const std::string frame = "<rect x=\"0.5\" y=\"0.5\" width=\"29\" height=\"11\"";
    if (!colour)
        return out + fmt::format("{} fill=\"#ffffff\" stroke=\"{}\" stroke-dasharray=\"2 2\"/></svg>", frame, ink);
    const auto all = hues(*colour);
    out += fmt::format("{} fill=\"{}\"/>", frame, hex(rgb_of(all.front())));
    const std::size_t bands = all.size() == 1 ? 0 : all.size() == 2 ? 3 : 4;
    for (std::size_t i = 0; i < bands; ++i) {
        const double at = width * (static_cast<double>(i) + 0.5) / static_cast<double>(bands);
        out += band_svg(at, all[1 + i % (all.size() - 1)]);
    }
    return out + fmt::format("{} fill=\"none\" stroke=\"{}\"/></svg>", frame, ink);
}

}  // namespace tapbook
