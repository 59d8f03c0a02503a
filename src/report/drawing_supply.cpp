// The lower part of the drawing: each net has a lane of its own, turn-on above the feed, the ground to the right of
// both, so that no two of them touch or cross.
#include <algorithm>

#include "report/drawing_columns.h"

namespace tapbook {

namespace {

constexpr double source_width = 215, battery_width = 160, fuse_width = 150, between = 22, tag_gap = 8;
constexpr double symbol_indent = symbol_width + 8;
constexpr double turn_on_share = 0.22, feed_share = 0.5, ground_share = 0.78;  // of the amplifier's lower edge

double at_share(const DrawnRect& box, double share) {
    return box.left + box.width * share;
}

DrawnRect inside_of(const DrawnRect& box, double left) {
    return {box.left + left, box.top + 3, box.width - left - box_padding, box.height - 6};
}

void place_words(const DrawnBox& words, const DrawnRect& at, double left, DrawingComposer& page) {
    page.box(PlacedKind::part, at, words);
    page.lines(words, inside_of(at, left));
}

// In the upper left corner of a box whose words leave room for it.
void place_symbol(SymbolKind kind, const DrawnRect& at, DrawingComposer& page) {
    page.layout().symbols.push_back({kind, {at.left + 4, at.top + 4, symbol_width, symbol_height}});
}

// Tags one behind another on the horizontal conductor from `left` to `right`.
void place_tags(double left, double right, double y, std::string_view words, std::string_view expected,
                DrawingComposer& page) {
    const double reserved = tag_width(expected) > 0 ? tag_width(expected) + tag_gap : 0;
    const double room = right - left - 2 * tag_gap;
    const double end =
        page.tag(PlacedKind::tag, words, {left + tag_gap, y}, tag_height + 2, std::max(room - reserved, room / 2));
    page.tag(PlacedKind::meter, expected, {end + tag_gap, y}, tag_height + 2, right - end - 2 * tag_gap);
}

void place_turn_on(const InstallDrawing& drawing, const DrawingColumns& columns, DrawingComposer& page) {
    const DrawnTurnOn& turn_on = drawing.turn_on;
    if (turn_on.begins == TurnOnBegins::none) {
        place_words(turn_on.source, {drawing_margin, columns.turn_on_top, source_width, turn_on_height}, box_padding,
                    page);
        return;
    }
    const double y = columns.turn_on_top + turn_on_height / 2, bottom = columns.amplifier.bottom();
    const double end = at_share(columns.amplifier, turn_on_share);
    const bool from_converter = turn_on.begins == TurnOnBegins::converter && drawing.converter.has_value();
    const double start = from_converter ? columns.converter.middle_x() : drawing_margin + source_width;
    std::vector<DrawnPoint> points = {{start, y}, {end, y}, {end, bottom}};
    if (from_converter) points.insert(points.begin(), {start, columns.converter.bottom()});
    page.conductor(turn_on.colour ? PlacedConductorKind::coloured : PlacedConductorKind::plain, "turn-on",
                   std::move(points), turn_on.colour);
    if (!from_converter)
        place_words(turn_on.source, {drawing_margin, columns.turn_on_top, source_width, turn_on_height}, box_padding,
                    page);
    const std::string words = turn_on.colour ? "turn-on " + code(*turn_on.colour) : "turn-on";
    place_tags(start, end, y, words, turn_on.expected, page);
}

void place_feed(const InstallDrawing& drawing, const DrawingColumns& columns, DrawingComposer& page) {
    const DrawnRect battery{drawing_margin, columns.feed_top, battery_width, feed_height};
    const DrawnRect fuse{battery.right() + between, columns.feed_top, fuse_width, feed_height};
    const double y = battery.middle_y(), end = at_share(columns.amplifier, feed_share);
    page.conductor(PlacedConductorKind::heavy, "feed before the fuse", {{battery.right(), y}, {fuse.left, y}});
    page.conductor(PlacedConductorKind::heavy, "feed",
                   {{fuse.right(), y}, {end, y}, {end, columns.amplifier.bottom()}});
    place_words(drawing.feed.battery, battery, symbol_indent, page);
    place_words(drawing.feed.fuse, fuse, symbol_indent, page);
    place_symbol(SymbolKind::battery, battery, page);
    place_symbol(SymbolKind::fuse, fuse, page);
    const DrawnPoint beside{fuse.right() + tag_gap, y};
    const double room = end - 3 - beside.x - tag_gap, apart = 11.5;
    page.tag(PlacedKind::tag, drawing.feed.cable, {beside.x, y - apart}, tag_height + 2, room);
    page.tag(PlacedKind::meter, drawing.feed.expected, {beside.x, y + apart}, tag_height + 2, room);
}

void place_ground(const InstallDrawing& drawing, const DrawingColumns& columns, DrawingComposer& page) {
    const double left = at_share(columns.amplifier, feed_share) + 14;
    const double x = at_share(columns.amplifier, ground_share);
    const DrawnRect at{left, columns.turn_on_top, page.right() - left,
                       columns.feed_top + feed_height - columns.turn_on_top};
    page.conductor(PlacedConductorKind::heavy, "ground", {{x, columns.amplifier.bottom()}, {x, at.top}});
    place_words(drawing.ground, at, symbol_indent, page);
    place_symbol(SymbolKind::ground, at, page);
}

}  // namespace

void place_supply(const InstallDrawing& drawing, const DrawingColumns& columns, DrawingComposer& page) {
    place_turn_on(drawing, columns, page);
    place_feed(drawing, columns, page);
    place_ground(drawing, columns, page);
}

}  // namespace tapbook
