// Widths from the widest words of each gap, heights from the words of the tallest box.
#include "report/drawing_columns.h"

#include <algorithm>

namespace tapbook {

namespace {

constexpr double title_height = 24, legend_height = 18, rows_gap = 8, lane_gap = 20, slack = 8;
constexpr double widest_slot = 100, pair_slot = 31, face_row = 12, least_gap = 44, most_spare = 16;
constexpr double bare_conductor = 24;      // seen between its code and its reading
constexpr double without_converter = 120;  // the gap grows by what the converter leaves

template <class List, class Width>
double widest(const List& list, Width width) {
    double out = 0;
    for (const auto& item : list) out = std::max(out, width(item));
    return out;
}

double with_slack(double first, double second, double most) {
    return std::clamp(3 * slack + first + second, least_gap, most);
}

void share_width(const InstallDrawing& drawing, DrawingColumns& columns, double left, double right) {
    const double codes = widest(drawing.pairs, [](const DrawnPair& pair) {
        return std::max(tag_width(conductor_words(pair.positive)), tag_width(conductor_words(pair.negative)));
    });
    const auto reading = [](const auto& item) { return tag_width(item.expected); };
    const double pairs = with_slack(codes + bare_conductor, widest(drawing.pairs, reading), 226) +
                         (drawing.converter ? 0 : without_converter);
    const double lines = drawing.converter ? with_slack(0, widest(drawing.lines, reading), 100) : 0;
    const double channels = with_slack(0, widest(drawing.channels, reading), 100);
    const double boxes = right - left - pairs - lines - channels;
    const double unit = boxes / (drawing.converter ? 4.5 : 3.4);
    columns.connector.left = left;
    columns.connector.width = unit * 1.45;
    columns.converter.left = columns.connector.right() + pairs;
    columns.converter.width = drawing.converter ? unit * 1.08 : 0;
    columns.amplifier.left = columns.converter.right() + lines;
    columns.amplifier.width = unit * 1.08;
    columns.speakers.left = columns.amplifier.right() + channels;
    columns.speakers.width = right - columns.speakers.left;
}

// The rows below follow a short upper part, so that blank paper is left in one piece at the foot.
void rise(DrawingColumns& columns, double by) {
    columns.turn_on_top -= by;
    columns.feed_top -= by;
}

}  // namespace

DrawnRect pairs_gap(const DrawingColumns& columns) {
    const double left = columns.connector.right();
    const double right = columns.converter.width > 0 ? columns.converter.left : columns.amplifier.left;
    return {left, columns.connector.top, right - left, columns.connector.height};
}

std::string conductor_words(const DrawnConductor& conductor) {
    return conductor.colour ? code(*conductor.colour) : conductor.instead;
}

DrawingColumns columns_of(const InstallDrawing& drawing, DrawingComposer& page) {
    DrawingColumns columns;
    share_width(drawing, columns, drawing_margin, page.right());
    columns.feed_top = page.bottom() - legend_height - feed_height;
    columns.turn_on_top = columns.feed_top - rows_gap - turn_on_height;
    const double top = drawing_margin + title_height, height = columns.turn_on_top - lane_gap - top;
    for (auto* column : {&columns.connector, &columns.converter, &columns.amplifier, &columns.speakers}) {
        column->top = top;
        column->height = height;
    }
    const bool has_face = drawing.connector.rows > 0 && drawing.connector.columns > 0;
    columns.face_height = has_face ? std::min(drawing.connector.rows, 4) * face_row + 8 : 0;

    const double slots =
        static_cast<double>(std::max({drawing.pairs.size(), drawing.lines.size(), drawing.channels.size()}));
    const double padded = 2 * box_padding;
    const auto words = [&](const DrawnBox& box, const DrawnRect& at) {
        return page.lines_height(box, at.width - padded);
    };
    const DrawnBox& connector = drawing.connector.box;
    double header = words({connector.step, connector.name, connector.remarks}, columns.connector) + drawing_line +
                    columns.face_height;
    header = std::max(header, words({0, "", {}, connector.cautions}, pairs_gap(columns)));
    header = std::max(header, words(drawing.amplifier, columns.amplifier));
    if (drawing.converter) header = std::max(header, words(*drawing.converter, columns.converter));
    const double available = height - padded - slack;
    header = std::min(header, available - slots * pair_slot);
    columns.ports_height = std::min(slots * widest_slot, available - header);
    columns.ports_top = top + box_padding + header + slack;
    columns.face_top = columns.ports_top - slack - columns.face_height;
    const double used = columns.ports_top + columns.ports_height + box_padding - top;
    for (auto* column : {&columns.connector, &columns.converter, &columns.amplifier, &columns.speakers})
        column->height = std::min(height, used);
    rise(columns, std::max(0.0, height - used - most_spare));
    return columns;
}

double slot_middle(const DrawingColumns& columns, std::size_t index, std::size_t count) {
    const double slot = columns.ports_height / static_cast<double>(count);
    return columns.ports_top + slot * (static_cast<double>(index) + 0.5);
}

}  // namespace tapbook
