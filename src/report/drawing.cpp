// The page from its parts: title, columns, supply, one line of legend.
#include "report/drawing.h"

#include <stdexcept>

#include "report/drawing_columns.h"

namespace tapbook {

namespace {

constexpr std::size_t most = 8;
constexpr double title_font = 15, code_room = 120, legend_gap = 7;

void refuse_too_many(const InstallDrawing& drawing) {
    if (drawing.pairs.empty() || drawing.pairs.size() > most)
        throw std::invalid_argument("the drawing shows 1 to 8 pairs");
    if (drawing.lines.size() > most) throw std::invalid_argument("the drawing shows at most 8 lines");
    if (drawing.channels.empty() || drawing.channels.size() > most)
        throw std::invalid_argument("the drawing shows 1 to 8 channels");
}

void place_title(const InstallDrawing& drawing, DrawingComposer& page) {
    const double width = page.right() - drawing_margin;
    page.text(drawing.title, {drawing_margin, drawing_margin - 4, width - code_room - 10, 20}, title_font,
              DrawnWeight::strong);
    page.label(drawing.code, {page.right() - code_room, drawing_margin - 4, code_room, 20}, Side::right);
}

// Below the last row; the paper ends under it, so that a small plan leaves no blank third.
void place_legend(const DrawingColumns& columns, DrawingComposer& page) {
    const double top = columns.feed_top + feed_height + legend_gap;
    const double width = page.right() - drawing_margin;
    page.text(
        "Hatching: stripe colours. Rounded box on a line: what the meter should read there. Filled cavity: +, "
        "barred cavity: \u2212.",
        {drawing_margin, top, width, drawing_line}, drawing_font, DrawnWeight::plain);
    page.layout().height = top + drawing_line + drawing_margin - legend_gap;
}

}  // namespace

DrawingLayout lay_out(const InstallDrawing& drawing, DrawingPage size) {
    refuse_too_many(drawing);
    DrawingComposer page(size);
    const DrawingColumns columns = columns_of(drawing, page);
    place_title(drawing, page);
    place_connector(drawing, columns, page);
    place_converter(drawing, columns, page);
    place_amplifier(drawing, columns, page);
    place_supply(drawing, columns, page);
    place_legend(columns, page);
    return page.layout();
}

std::string install_drawing_svg(const InstallDrawing& drawing, DrawingPage page) {
    return write_svg(lay_out(drawing, page));
}

}  // namespace tapbook
