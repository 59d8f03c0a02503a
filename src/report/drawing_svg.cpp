// Places into SVG: conductors first, boxes over their ends, then faces and words. Presentation attributes only; each
// number with one decimal, so that the same drawing is the same bytes everywhere.
#include <fmt/format.h>

#include <algorithm>

#include "report/drawing_layout.h"

namespace tapbook {

namespace {

constexpr const char* ink = "#22272e";
constexpr const char* quiet = "#8a929c";

std::string rectangle(const DrawnRect& at, double round, std::string_view fill, std::string_view stroke,
                      double stroke_width) {
    return fmt::format(
        "<rect x=\"{:.1f}\" y=\"{:.1f}\" width=\"{:.1f}\" height=\"{:.1f}\" rx=\"{:.1f}\" fill=\"{}\" "
        "stroke=\"{}\" stroke-width=\"{:.1f}\"",
        at.left, at.top, at.width, at.height, round, fill, stroke, stroke_width);
}

std::string with_title(const std::string& element, const std::string& whole) {
    return whole.empty() ? element + "/>\n" : fmt::format("{}><title>{}</title></rect>\n", element, xml_escaped(whole));
}

std::string cone(const DrawnRect& at) {
    const double x = at.left + 4, y = at.middle_y();
    return fmt::format(
        "<path d=\"M{0:.1f} {1:.1f}h4l6 -6v18l-6 -6h-4Z\" fill=\"#ffffff\" stroke=\"{2}\" "
        "stroke-width=\"1.2\"/>\n",
        x, y - 3, ink);
}

std::string box_svg(const PlacedBox& box) {
    switch (box.kind) {
        case PlacedKind::part:
            return with_title(rectangle(box.at, 5, "#f6f7f9", ink, 1.2), box.whole);
        case PlacedKind::speaker:
            return with_title(rectangle(box.at, 4, "#f6f7f9", ink, 1.0), box.whole) + cone(box.at);
        case PlacedKind::tag:
            return with_title(rectangle(box.at, 1.5, "#ffffff", quiet, 0.6), box.whole);
        case PlacedKind::meter:
            return with_title(rectangle(box.at, box.at.height / 2.6, "#ffffff", ink, 1.4), box.whole);
    }
    return {};
}

std::string cavity_svg(const PlacedCavity& cavity) {
    const bool positive = cavity.mark == CavityMark::positive;
    const bool negative = cavity.mark == CavityMark::negative;
    std::string out = rectangle(cavity.at, 1, positive ? ink : "#ffffff",
                                positive   ? "#ffffff"
                                : negative ? ink
                                           : quiet,
                                negative ? 1.2 : 0.8) +
                      "/>\n";
    if (cavity.mark == CavityMark::none) return out;
    const double x = cavity.at.middle_x(), y = cavity.at.middle_y();
    const double arm = std::min(cavity.at.width, cavity.at.height) * 0.28;
    std::string path = fmt::format("M{:.1f} {:.1f}H{:.1f}", x - arm, y, x + arm);
    if (positive) path += fmt::format("M{:.1f} {:.1f}V{:.1f}", x, y - arm, y + arm);
    return out + fmt::format("<path d=\"{}\" fill=\"none\" stroke=\"{}\" stroke-width=\"1.5\"/>\n", path,
                             positive ? "#ffffff" : ink);
}

std::string caution_svg(DrawnPoint tip) {
    return fmt::format(
        "<path d=\"M{0:.1f} {1:.1f}l5 9h-10Z\" fill=\"{2}\"/>\n"
        "<path d=\"M{0:.1f} {3:.1f}v3.2m0 1v1\" fill=\"none\" stroke=\"#ffffff\" stroke-width=\"1.2\"/>\n",
        tip.x, tip.y, ink, tip.y + 3);
}

std::string text_svg(const PlacedText& text) {
    std::string more;
    if (text.weight == DrawnWeight::strong) more += " font-weight=\"bold\"";
    if (!has_known_width(text.text))
        more += fmt::format(" textLength=\"{:.1f}\" lengthAdjust=\"spacingAndGlyphs\"",
                            words_width(text.text, text.font, text.weight));
    return fmt::format("<text x=\"{:.1f}\" y=\"{:.1f}\" font-size=\"{:.1f}\"{}>{}</text>\n", text.room.left,
                       text.baseline, text.font, more, xml_escaped(text.text));
}

}  // namespace

std::string write_svg(const DrawingLayout& layout) {
    std::string out = fmt::format(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{0:.0f}pt\" height=\"{1:.0f}pt\" viewBox=\"0 0 {0:.0f} "
        "{1:.0f}\" font-family=\"Helvetica, Arial, sans-serif\" fill=\"{2}\" stroke-linejoin=\"round\">\n"
        "<rect width=\"{0:.0f}\" height=\"{1:.0f}\" fill=\"#ffffff\"/>\n",
        layout.width, layout.height, ink);
    for (const auto& conductor : layout.conductors) out += conductor_svg(conductor);
    for (const auto& box : layout.boxes) out += box_svg(box);
    for (const auto& cavity : layout.cavities)
        if (cavity.mark == CavityMark::none) out += cavity_svg(cavity);
    for (const auto& cavity : layout.cavities)
        if (cavity.mark != CavityMark::none) out += cavity_svg(cavity);
    for (const auto& symbol : layout.symbols) out += symbol_svg(symbol);
    for (const auto& tip : layout.cautions) out += caution_svg(tip);
    for (const auto& text : layout.texts) out += text_svg(text);
    return out + "</svg>\n";
}

}  // namespace tapbook
