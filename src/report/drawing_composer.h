// How are words and boxes put on the page? Small steps the layout is made of: a column of lines within a room, a tag on
// a conductor, a port label at an edge. Whatever has no room is cut here and nowhere else.
#pragma once

#include "report/drawing_layout.h"

namespace tapbook {

enum class Side { left, right };

class DrawingComposer {
  public:
    explicit DrawingComposer(DrawingPage page);

    void box(PlacedKind kind, const DrawnRect& at, const DrawnBox& words);
    // The words of `box` (step and name, remarks, cautions) from room.top downwards; how far they reach.
    double lines(const DrawnBox& box, const DrawnRect& room);
    // How high lines() is going to be at this width when there is room for everything.
    double lines_height(const DrawnBox& box, double width) const;
    // One line of words at the left or right edge of `room`, its middle at room.middle_y().
    void label(std::string_view words, const DrawnRect& room, Side side);
    // A box as wide as its words (at most `room`) with its left edge at `left`; its right edge, `left` when there are
    // no words.
    double tag(PlacedKind kind, std::string_view words, DrawnPoint left_middle, double height, double room);
    void text(std::string_view words, const DrawnRect& room, double font, DrawnWeight weight);
    void conductor(PlacedConductorKind kind, std::string net, std::vector<DrawnPoint> points,
                   std::optional<WireColour> colour = std::nullopt);

    DrawingLayout& layout() { return layout_; }
    double right() const { return layout_.width - drawing_margin; }
    double bottom() const { return layout_.height - drawing_margin; }

  private:
    DrawingLayout layout_;
};

inline constexpr double box_padding = 7;      // between the edge of a box and its words
inline constexpr double caution_indent = 14;  // room of the triangle
inline constexpr double tag_height = 13;
inline constexpr double meter_height = 22;

// What tag() takes for these words.
double tag_width(std::string_view words);

// "3. Converter name".
std::string headline(const DrawnBox& box);

}  // namespace tapbook
