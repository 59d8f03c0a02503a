// How does the whole install look on one sheet? A plain value says what is connected to what; the code lays it out from
// left to right (factory connector, converter, amplifier, speakers; turn-on, battery feed and ground below) and writes
// one SVG text of our own calm style. Texts come ready made: nothing is computed here but places on the paper.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "trade/trade.h"

namespace tapbook {

// A cavity of the face as seen: row from the top, column from the left, both from 1.
struct DrawnCavity {
    int row = 1;
    int column = 1;

    friend bool operator==(const DrawnCavity&, const DrawnCavity&) = default;
};

// One conductor of a pair. Without a colour `instead` is written on it ("MIXED"), and it is drawn white and dashed.
struct DrawnConductor {
    std::string cavity;                               // as the catalog names it: "4", "B12"
    std::optional<DrawnCavity> place = std::nullopt;  // marked on the face when it lies on it
    std::optional<WireColour> colour = std::nullopt;
    std::string instead = "?";
};

struct DrawnPair {
    std::string name;  // "front left"
    DrawnConductor positive;
    DrawnConductor negative;
    std::string input;     // where it ends: "in 1"
    std::string expected;  // between the two: "4.1 to 9.2 V"; may be empty, as every `expected` may
};

// Words of one box. Cautions stand in the box of their step (the connector's: to its right, above its conductors), each
// behind a warning triangle.
struct DrawnBox {
    int step = 0;  // number in the order of work; 0 for none
    std::string name;
    std::vector<std::string> remarks = {};
    std::vector<std::string> cautions = {};
};

// No face is drawn when rows or columns is 0.
struct DrawnConnector {
    DrawnBox box;
    std::string seen_from;  // "wire side"
    int rows = 0;
    int columns = 0;
};

// One screened line from the converter to the amplifier.
struct DrawnLine {
    std::string output;
    std::string input;
    std::string expected;
};

struct DrawnChannel {
    std::string output;  // "1"
    std::string speaker;
    std::string remark;  // "4 ohm"
    std::string expected;
};

// Where the turn-on conductor begins: in a box of its own, or at the converter (REQUIRES one); none: there is no such
// conductor, and the box of the source says why.
enum class TurnOnBegins { own_source, converter, none };

struct DrawnTurnOn {
    TurnOnBegins begins = TurnOnBegins::own_source;
    DrawnBox source;
    std::optional<WireColour> colour = std::nullopt;
    std::string expected;
};

struct DrawnFeed {
    DrawnBox battery;
    DrawnBox fuse;      // "60 A fuse", its distance from the battery among the remarks
    std::string cable;  // "21 mm2 copper, 5.2 m"
    std::string expected;
};

struct InstallDrawing {
    std::string title;
    std::string code;  // top right: the short code of the sheet
    DrawnConnector connector;
    std::vector<DrawnPair> pairs;
    std::optional<DrawnBox> converter = std::nullopt;  // without one the pairs go to the amplifier itself
    std::vector<DrawnLine> lines;
    DrawnBox amplifier;
    std::vector<DrawnChannel> channels;
    DrawnTurnOn turn_on;
    DrawnFeed feed;
    DrawnBox ground;
};

enum class DrawingPage { letter, a4 };  // both lying on their long side

// One self-contained SVG document as wide as the page and as high as it needs, at most the page; the same bytes for the
// same value. No text is smaller than 11 points on the page; a
// text with too little room is wrapped, then cut with an ellipsis, and its box tells all of it in a <title>. Control
// and direction-changing characters of any text are left out.
// REQUIRES: 1 to 8 pairs, at most 8 lines, 1 to 8 channels; throws std::invalid_argument otherwise.
std::string install_drawing_svg(const InstallDrawing& drawing, DrawingPage page);

}  // namespace tapbook
