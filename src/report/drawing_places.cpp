// Connector with its face, converter, amplifier and speakers, and the straight conductors between them.
#include <fmt/format.h>

#include <algorithm>

#include "report/drawing_columns.h"

namespace tapbook {

namespace {

constexpr double half_pitch = conductor_pitch / 2, gap_slack = 8, sign_width = 12, slot_with_words = 58;
constexpr double widest_code = 0.56;  // of the gap between connector and target
constexpr const char* plus = "+";
constexpr const char* minus = "\u2212";

DrawnRect row_at(double left, double width, double middle) {
    return {left, middle - drawing_line / 2, width, drawing_line};
}

DrawnRect header_of(const DrawnRect& box, double bottom) {
    return {box.left + box_padding, box.top + box_padding, box.width - 2 * box_padding, bottom - box.top - box_padding};
}

CavityMark mark_of(const InstallDrawing& drawing, DrawnCavity place) {
    for (const auto& pair : drawing.pairs) {
        if (pair.positive.place == place) return CavityMark::positive;
        if (pair.negative.place == place) return CavityMark::negative;
    }
    return CavityMark::none;
}

void place_face(const InstallDrawing& drawing, const DrawingColumns& columns, DrawingComposer& page) {
    const int rows = drawing.connector.rows, count = drawing.connector.columns;
    if (rows <= 0 || count <= 0) return;
    const double room = columns.connector.width - 2 * box_padding;
    const double width = std::min(room / count, 16.0), height = (columns.face_height - 8) / rows;
    const double left = columns.connector.middle_x() - width * count / 2, top = columns.face_top + 4;
    for (int row = 1; row <= rows; ++row)
        for (int column = 1; column <= count; ++column) {
            const DrawnRect at{left + width * (column - 1), top + height * (row - 1), width, height};
            page.layout().cavities.push_back({at, {row, column}, mark_of(drawing, {row, column})});
        }
}

void place_pair_conductor(const DrawnPair& pair, std::size_t index, bool positive, double y,
                          const DrawingColumns& columns, double end, DrawingComposer& page) {
    const DrawnConductor& conductor = positive ? pair.positive : pair.negative;
    const double start = columns.connector.right();
    const double gap = end - start;
    page.conductor(conductor.colour ? PlacedConductorKind::coloured : PlacedConductorKind::unknown,
                   fmt::format("pair {} {}", index, positive ? plus : minus), {{start, y}, {end, y}}, conductor.colour);
    page.tag(PlacedKind::tag, conductor_words(conductor), {start + gap_slack, y}, tag_height, gap * widest_code);
    const double inside = columns.connector.width - 2 * box_padding;
    page.label(fmt::format("{} {}", conductor.cavity, positive ? plus : minus),
               row_at(start - box_padding - inside * 0.36, inside * 0.36, y), Side::right);
}

void sign_labels(const DrawnRect& box, double middle, Side side, DrawingComposer& page) {
    const double left = side == Side::left ? box.left + box_padding - 2 : box.right() - box_padding + 2 - sign_width;
    page.label(plus, row_at(left, sign_width, middle - half_pitch), side);
    page.label(minus, row_at(left, sign_width, middle + half_pitch), side);
}

// What the codes of the two conductors leave of `gap`.
double room_of_reading(const DrawnPair& pair, double gap) {
    const double codes = std::max(tag_width(conductor_words(pair.positive)), tag_width(conductor_words(pair.negative)));
    return gap - std::min(codes, gap * widest_code) - 3 * gap_slack;
}

// The colours in words above and below the pair, where the slots are high enough.
void place_colour_words(const DrawnPair& pair, double middle, const DrawingColumns& columns, double end,
                        std::size_t count, DrawingComposer& page) {
    if (columns.ports_height / static_cast<double>(count) < slot_with_words) return;
    const double left = columns.connector.right() + gap_slack, away = half_pitch + drawing_line + 1;
    const auto place = [&](const DrawnConductor& conductor, double y) {
        if (conductor.colour) page.label(words(*conductor.colour), row_at(left, end - left - gap_slack, y), Side::left);
    };
    place(pair.positive, middle - away);
    place(pair.negative, middle + away);
}

void place_pairs(const InstallDrawing& drawing, const DrawingColumns& columns, DrawingComposer& page) {
    const DrawnRect& target = drawing.converter ? columns.converter : columns.amplifier;
    const double inside = columns.connector.width - 2 * box_padding;
    for (std::size_t i = 0; i < drawing.pairs.size(); ++i) {
        const DrawnPair& pair = drawing.pairs[i];
        const double middle = slot_middle(columns, i, drawing.pairs.size());
        place_pair_conductor(pair, i, true, middle - half_pitch, columns, target.left, page);
        place_pair_conductor(pair, i, false, middle + half_pitch, columns, target.left, page);
        place_colour_words(pair, middle, columns, target.left, drawing.pairs.size(), page);
        page.label(pair.name, row_at(columns.connector.left + box_padding, inside * 0.62, middle), Side::left);
        sign_labels(target, middle, Side::left, page);
        page.label(pair.input, row_at(target.left + box_padding + sign_width, target.width / 2 - 24, middle),
                   Side::left);
        const double room = room_of_reading(pair, target.left - columns.connector.right());
        const double width = std::min(tag_width(pair.expected), room);
        page.tag(PlacedKind::meter, pair.expected, {target.left - gap_slack - width, middle}, meter_height, room);
    }
}

void place_lines(const InstallDrawing& drawing, const DrawingColumns& columns, DrawingComposer& page) {
    const DrawnRect &from = columns.converter, &to = columns.amplifier;
    for (std::size_t i = 0; i < drawing.lines.size(); ++i) {
        const DrawnLine& line = drawing.lines[i];
        const double y = slot_middle(columns, i, drawing.lines.size()), gap = to.left - from.right();
        page.conductor(PlacedConductorKind::screened, fmt::format("line {}", i), {{from.right(), y}, {to.left, y}});
        page.label(line.output, row_at(from.middle_x() + 4, from.width / 2 - box_padding - 4, y), Side::right);
        page.label(line.input, row_at(to.left + box_padding, to.width / 2 - box_padding - 4, y), Side::left);
        const double width = std::min(tag_width(line.expected), gap - 2 * gap_slack);
        page.tag(PlacedKind::meter, line.expected, {from.right() + (gap - width) / 2, y}, tag_height + 2,
                 gap - 2 * gap_slack);
    }
}

void place_speaker(const DrawnChannel& channel, double middle, const DrawnRect& column, DrawingComposer& page) {
    constexpr double height = 29, cone = 18;
    const DrawnRect at{column.left, middle - height / 2, column.width, height};
    const DrawnBox words{0, channel.speaker, {channel.remark}};
    page.box(PlacedKind::speaker, at, words);
    const double left = at.left + cone, width = at.width - cone - 4;
    const std::string remark = clean_words(channel.remark);
    page.label(channel.speaker, row_at(left, width, remark.empty() ? middle : middle - drawing_line / 2), Side::left);
    page.label(remark, row_at(left, width, middle + drawing_line / 2), Side::left);
}

void place_channels(const InstallDrawing& drawing, const DrawingColumns& columns, DrawingComposer& page) {
    const DrawnRect &from = columns.amplifier, &to = columns.speakers;
    const double gap = to.left - from.right();
    for (std::size_t i = 0; i < drawing.channels.size(); ++i) {
        const DrawnChannel& channel = drawing.channels[i];
        const double middle = slot_middle(columns, i, drawing.channels.size());
        for (const bool positive : {true, false}) {
            const double y = positive ? middle - half_pitch : middle + half_pitch;
            page.conductor(PlacedConductorKind::plain, fmt::format("channel {} {}", i, positive ? plus : minus),
                           {{from.right(), y}, {to.left, y}});
        }
        sign_labels(from, middle, Side::right, page);
        page.label(channel.output, row_at(from.middle_x() + 4, from.width / 2 - box_padding - sign_width - 4, middle),
                   Side::right);
        const double width = std::min(tag_width(channel.expected), gap - 2 * gap_slack);
        page.tag(PlacedKind::meter, channel.expected, {from.right() + (gap - width) / 2, middle}, meter_height,
                 gap - 2 * gap_slack);
        place_speaker(channel, middle, to, page);
    }
}

}  // namespace

void place_connector(const InstallDrawing& drawing, const DrawingColumns& columns, DrawingComposer& page) {
    const DrawnBox& words = drawing.connector.box;
    page.box(PlacedKind::part, columns.connector, words);
    const DrawnRect header = header_of(columns.connector, columns.face_top);
    page.lines({words.step, words.name, words.remarks},
               {header.left, header.top, header.width, header.height - drawing_line});
    page.lines({0, "", {}, words.cautions}, header_of(pairs_gap(columns), columns.ports_top - gap_slack));
    if (!clean_words(drawing.connector.seen_from).empty())
        page.label("view: " + drawing.connector.seen_from,
                   row_at(header.left, header.width, header.bottom() - drawing_line / 2), Side::left);
    place_face(drawing, columns, page);
    place_pairs(drawing, columns, page);
}

void place_converter(const InstallDrawing& drawing, const DrawingColumns& columns, DrawingComposer& page) {
    if (!drawing.converter) return;
    page.box(PlacedKind::part, columns.converter, *drawing.converter);
    page.lines(*drawing.converter, header_of(columns.converter, columns.ports_top - gap_slack));
    place_lines(drawing, columns, page);
}

void place_amplifier(const InstallDrawing& drawing, const DrawingColumns& columns, DrawingComposer& page) {
    page.box(PlacedKind::part, columns.amplifier, drawing.amplifier);
    page.lines(drawing.amplifier, header_of(columns.amplifier, columns.ports_top - gap_slack));
    place_channels(drawing, columns, page);
}

}  // namespace tapbook
