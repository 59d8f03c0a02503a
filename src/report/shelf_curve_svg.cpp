// The coverage curve: models along the bottom, share of the jobs upwards. Presentation attributes only; grey print
// loses nothing.
#include <fmt/format.h>

#include <algorithm>

#include "report/shelf_report.h"

namespace tapbook {
namespace {

constexpr double left = 60, top = 30, width = 520, height = 300;

double across(int models, int most) {
    return left + (most == 0 ? 0 : width * models / most);
}

double upwards(double share) {
    return top + height * (1 - std::clamp(share, 0.0, 1.0));
}

std::string grid() {
    std::string text;
    for (int percent = 0; percent <= 100; percent += 20) {
        const double y = upwards(percent / 100.0);
        text += fmt::format("<path d=\"M{:.1f} {:.1f}H{:.1f}\" stroke=\"#bbb\" stroke-width=\"1\"/>\n", left, y,
                            left + width);
        text +=
            fmt::format("<text x=\"{:.1f}\" y=\"{:.1f}\" text-anchor=\"end\">{} %</text>\n", left - 8, y + 5, percent);
    }
    return text;
}

}  // namespace

std::string shelf_curve_svg(const ShelfAnswer& answer) {
    const auto& curve = answer.plan.curve;
    const int most = curve.empty() ? 0 : curve.back().models;
    std::string text = fmt::format(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {0:.0f} {1:.0f}\" width=\"{0:.0f}\" "
        "height=\"{1:.0f}\" "
        "font-family=\"sans-serif\" font-size=\"14\" fill=\"#000\">\n<title>Share of the jobs that so many models "
        "cover</title>\n<rect width=\"100%\" height=\"100%\" fill=\"#fff\"/>\n",
        left + width + 30, top + height + 70);
    text += grid();
    std::string line;
    for (const CurvePoint& point : curve) {
        const double x = across(point.models, most), y = upwards(point.covered_share);
        line += fmt::format("{}{:.1f} {:.1f}", line.empty() ? "M" : "L", x, y);
        text += fmt::format("<circle cx=\"{:.1f}\" cy=\"{:.1f}\" r=\"4\" fill=\"{}\" stroke=\"#000\"/>\n", x, y,
                            point.proved ? "#000" : "#fff");
        text += fmt::format("<text x=\"{:.1f}\" y=\"{:.1f}\" text-anchor=\"middle\">{}</text>\n", x, top + height + 22,
                            point.models);
    }
    if (!line.empty()) text += fmt::format("<path d=\"{}\" fill=\"none\" stroke=\"#000\" stroke-width=\"2\"/>\n", line);
    text += fmt::format(
        "<text x=\"{:.1f}\" y=\"{:.1f}\" text-anchor=\"middle\">models kept (hollow: not proved)</text>\n</svg>\n",
        left + width / 2, top + height + 50);
    return text;
}

}  // namespace tapbook
