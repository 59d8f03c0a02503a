// A rectangle in the base colour and slanted bands across it: one band group for each stripe, outlined so that it stays
// in grey print.
#include "report/swatch_svg.h"

#include <fmt/format.h>

#include <string_view>
#include <vector>

namespace tapbook {
namespace {

constexpr const char* ink = "#22272e";
constexpr double width = 30, height = 12, lean = 5, band = 4.2;

// The outline of one band whose middle is at `at`, from the lower left to the upper right.
std::string outline(double at) {
    return fmt::format("<path d=\"M{:.1f} {:.1f}L{:.1f} 0.5H{:.1f}L{:.1f} {:.1f}z\" ", at - lean / 2 - band / 2,
                       height - 0.5, at + lean / 2 - band / 2, at + lean / 2 + band / 2, at - lean / 2 + band / 2,
                       height - 0.5);
}

std::vector<std::string> outlines(std::size_t bands) {
    std::vector<std::string> all;
    for (std::size_t i = 0; i < bands; ++i)
        all.push_back(outline(width * (static_cast<double>(i) + 0.5) / static_cast<double>(bands)));
    return all;
}

// Where the bands lie hangs on the number of stripes alone, so it is written down once.
const std::vector<std::string>& bands_across(std::size_t stripes) {
    static const std::vector<std::string> none, one = outlines(3), several = outlines(4);
    return stripes == 0 ? none : stripes == 1 ? one : several;
}

}  // namespace

std::string swatch_svg(const std::optional<WireColour>& colour) {
    static const std::string opening = fmt::format(
        "<svg class=\"swatch\" width=\"{0:.0f}\" height=\"{1:.0f}\" "
        "viewBox=\"0 0 {0:.0f} {1:.0f}\" aria-hidden=\"true\">",
        width, height);
    std::string out = opening;
    constexpr std::string_view frame = "<rect x=\"0.5\" y=\"0.5\" width=\"29\" height=\"11\"";
    if (!colour)
        return out + fmt::format("{} fill=\"#ffffff\" stroke=\"{}\" stroke-dasharray=\"2 2\"/></svg>", frame, ink);
    const auto all = hues(*colour);
    out += fmt::format("{} fill=\"{}\"/>", frame, hex(rgb_of(all.front())));
    const auto& bands = bands_across(all.size() - 1);
    for (std::size_t i = 0; i < bands.size(); ++i)
        out += fmt::format("{}fill=\"{}\" stroke=\"{}\" stroke-width=\"0.6\"/>", bands[i],
                           hex(rgb_of(all[1 + i % (all.size() - 1)])), ink);
    return out + fmt::format("{} fill=\"none\" stroke=\"{}\"/></svg>", frame, ink);
}

}  // namespace tapbook
