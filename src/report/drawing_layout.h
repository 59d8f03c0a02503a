// Where on the page does each thing stand? Everything the drawing shows as rectangles, texts and conductors with their
// places, so that the laws (nothing overlaps, no text leaves its room, no two nets share a segment) can be checked on
// numbers. All lengths in points, from the top left of the page.
#pragma once

#include <string>
#include <utility>
#include <vector>

#include "report/drawing.h"
#include "report/drawing_words.h"

namespace tapbook {

struct DrawnRect {
    double left = 0, top = 0, width = 0, height = 0;

    double right() const { return left + width; }
    double bottom() const { return top + height; }
    double middle_x() const { return left + width / 2; }
    double middle_y() const { return top + height / 2; }
};

struct DrawnPoint {
    double x = 0, y = 0;
};

// part: a component; speaker: a component with a cone; tag: words on a conductor; meter: an expected reading.
enum class PlacedKind { part, speaker, tag, meter };

struct PlacedBox {
    PlacedKind kind;
    DrawnRect at;
    std::string whole;  // all of its words, also those that had to be cut
};

// The text begins at room.left and stands on `baseline`.
struct PlacedText {
    DrawnRect room;
    double baseline;
    std::string text;
    double font = drawing_font;
    DrawnWeight weight = DrawnWeight::plain;
};

enum class CavityMark { none, positive, negative };

struct PlacedCavity {
    DrawnRect at;
    DrawnCavity place;
    CavityMark mark;
};

// coloured: insulation with stripes; unknown: colour not known; screened: a signal line; plain: any cable of our own
// choice; heavy: the feed and the ground.
enum class PlacedConductorKind { coloured, unknown, screened, plain, heavy };

struct PlacedConductor {
    PlacedConductorKind kind;
    std::string net;
    std::vector<DrawnPoint> points;  // each segment horizontal or vertical
    std::optional<WireColour> colour = std::nullopt;
};

enum class SymbolKind { ground, fuse, battery };

struct PlacedSymbol {
    SymbolKind kind;
    DrawnRect at;  // symbol_width by symbol_height
};

inline constexpr double symbol_width = 24, symbol_height = 20;

struct DrawingLayout {
    double width, height;
    std::vector<PlacedBox> boxes;
    std::vector<PlacedText> texts;
    std::vector<PlacedCavity> cavities;
    std::vector<PlacedConductor> conductors;
    std::vector<PlacedSymbol> symbols = {};
    std::vector<DrawnPoint> cautions;  // tips of the warning triangles, 9 wide and 9 high below the tip
};

inline constexpr double drawing_margin = 26;

// REQUIRES as install_drawing_svg().
DrawingLayout lay_out(const InstallDrawing& drawing, DrawingPage page);

// The drawn page. Writes places and decides none.
std::string write_svg(const DrawingLayout& layout);

// One conductor with its outline and its stripes as diagonal hatching.
std::string conductor_svg(const PlacedConductor& conductor);

std::string symbol_svg(const PlacedSymbol& symbol);

}  // namespace tapbook
