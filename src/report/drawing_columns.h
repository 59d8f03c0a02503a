// How wide are the columns and how high the rows? Gaps as wide as the words on their conductors, the rest shared by the
// boxes; ports of every column share one band of the page, so that each conductor between columns runs straight.
#pragma once

#include "report/drawing_composer.h"

namespace tapbook {

struct DrawingColumns {
    DrawnRect connector, converter, amplifier, speakers;  // converter.width is 0 without a converter
    double ports_top = 0, ports_height = 0;
    double face_top = 0, face_height = 0;
    double turn_on_top = 0, feed_top = 0;  // the two rows below
};

inline constexpr double conductor_pitch = 14;  // between the two conductors of a pair
inline constexpr double turn_on_height = 45, feed_height = 58;

DrawingColumns columns_of(const InstallDrawing& drawing, DrawingComposer& page);

// Between the connector and what its pairs go to.
DrawnRect pairs_gap(const DrawingColumns& columns);

// The middle of slot `index` of `count` within the band of the ports.
double slot_middle(const DrawingColumns& columns, std::size_t index, std::size_t count);

void place_connector(const InstallDrawing& drawing, const DrawingColumns& columns, DrawingComposer& page);
void place_converter(const InstallDrawing& drawing, const DrawingColumns& columns, DrawingComposer& page);
void place_amplifier(const InstallDrawing& drawing, const DrawingColumns& columns, DrawingComposer& page);
// Turn-on, battery, fuse, feed and ground.
void place_supply(const InstallDrawing& drawing, const DrawingColumns& columns, DrawingComposer& page);

// What is written on a conductor: its code, else `instead`.
std::string conductor_words(const DrawnConductor& conductor);

}  // namespace tapbook
