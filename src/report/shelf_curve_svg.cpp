// The coverage curve: models along the bottom, share of the jobs upwards, the number that is kept marked. Presentation
// attributes only; grey print loses nothing.
#include <fmt/format.h>

#include <algorithm>

#include "report/shelf_words.h"

namespace tapbook {
namespace {

constexpr double left = 70, top = 60, width = 540, height = 300;
constexpr std::size_t most_labelled = 12;  // points with their share beside them

double across(int models, int most) {
    return left + (most == 0 ? 0 : width * models / most);
}

double upwards(double share) {
    return top + height * (1 - std::clamp(share, 0.0, 1.0));
}

std::string text_at(double x, double y, std::string_view anchor, std::string_view words) {
    return fmt::format("<text x=\"{:.1f}\" y=\"{:.1f}\" text-anchor=\"{}\">{}</text>\n", x, y, anchor, words);
}

std::string grid() {
    std::string text;
    for (int percent = 0; percent <= 100; percent += 20) {
        const double y = upwards(percent / 100.0);
        text += fmt::format("<path d=\"M{:.1f} {:.1f}H{:.1f}\" stroke=\"#bbb\" stroke-width=\"1\"/>\n", left, y,
                            left + width);
        text += text_at(left - 10, y + 5, "end", fmt::format("{} %", percent));
    }
    return text;
}

std::string path_of(const std::vector<CurvePoint>& curve, double CurvePoint::*share) {
    std::string line;
    for (const CurvePoint& point : curve)
        line += fmt::format("{}{:.1f} {:.1f}", line.empty() ? "M" : "L", across(point.models, curve.back().models),
                            upwards(point.*share));
    return line;
}

std::string lines(const std::vector<CurvePoint>& curve) {
    if (curve.empty()) return {};
    const bool all_proved = std::ranges::all_of(curve, &CurvePoint::proved);
    std::string text = fmt::format("<path d=\"{}\" fill=\"none\" stroke=\"#000\" stroke-width=\"2\"/>\n",
                                   path_of(curve, &CurvePoint::covered_share));
    if (!all_proved)
        text +=
            fmt::format("<path d=\"{}\" fill=\"none\" stroke=\"#000\" stroke-width=\"1\" stroke-dasharray=\"6 4\"/>\n",
                        path_of(curve, &CurvePoint::bound_share));
    return text;
}

std::string points(const std::vector<CurvePoint>& curve) {
    std::string text;
    const std::size_t every = (curve.size() + most_labelled - 1) / std::max<std::size_t>(1, most_labelled);
    for (std::size_t i = 0; i < curve.size(); ++i) {
        const CurvePoint& point = curve[i];
        const double x = across(point.models, curve.back().models), y = upwards(point.covered_share);
        text += fmt::format("<circle cx=\"{:.1f}\" cy=\"{:.1f}\" r=\"4\" fill=\"{}\" stroke=\"#000\"/>\n", x, y,
                            point.proved ? "#000" : "#fff");
        if (i % std::max<std::size_t>(1, every) != 0) continue;
        text += text_at(x, top + height + 22, "middle", fmt::format("{}", point.models));
        // Below and to the right of the point, where neither the line nor the mark runs; the last one has the frame
        // there.
        const bool is_last = i + 1 == curve.size();
        if (point.models > 0)
            text += text_at(is_last ? x : x + 7, y + 20, is_last ? "end" : "start", share_words(point.covered_share));
    }
    return text;
}

// A thin line up from the number that is kept.
std::string kept_mark(const ShelfPlan& plan) {
    const int kept = static_cast<int>(plan.models.size());
    if (plan.curve.empty() || kept > plan.curve.back().models || kept == 0) return {};
    const double x = across(kept, plan.curve.back().models);
    return fmt::format(
               "<path d=\"M{:.1f} {:.1f}V{:.1f}\" stroke=\"#000\" stroke-width=\"1\" "
               "stroke-dasharray=\"2 3\"/>\n",
               x, top, top + height) +
           text_at(x, top - 8, "middle", "kept");
}

}  // namespace

std::string shelf_curve_svg(const ShelfAnswer& answer) {
    const auto& curve = answer.plan.curve;
    const bool all_proved = std::ranges::all_of(curve, &CurvePoint::proved);
    std::string text = fmt::format(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {0:.0f} {1:.0f}\" width=\"{0:.0f}\" "
        "height=\"{1:.0f}\" "
        "font-family=\"sans-serif\" font-size=\"14\" fill=\"#000\">\n<title>Share of the jobs that so many models "
        "cover</title>\n<rect width=\"100%\" height=\"100%\" fill=\"#fff\"/>\n",
        left + width + 40, top + height + 75);
    text += text_at(left - 50, 24, "start",
                    fmt::format("Share of the jobs that so many models cover{}", answer.practice ? " (practice)" : ""));
    text += grid() + kept_mark(answer.plan) + lines(curve) + points(curve);
    text += text_at(left + width / 2, top + height + 52, "middle",
                    all_proved ? "models kept" : "models kept; hollow: not proved, dashed: no choice covers more");
    return text + "</svg>\n";
}

}  // namespace tapbook
