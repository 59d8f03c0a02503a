// How wide is a text, and how does it fit into a box of the drawing? By a table of glyph widths, each the larger of two
// common sans-serif faces, so that the estimate is generous whatever face the reader's machine has.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace tapbook {

inline constexpr double drawing_font = 11.0;
inline constexpr double drawing_line = 13.0;  // from baseline to baseline

enum class DrawnWeight { plain, strong };

// What may stand in the drawing: whole UTF-8 characters, no control, direction-changing or invisible ones (left out),
// no broken bytes, and at most two combining marks on a letter; runs of spaces are one space.
std::string clean_words(std::string_view text);

// In points at `font` points. REQUIRES: clean_words() wrote `text`.
double words_width(std::string_view text, double font = drawing_font, DrawnWeight weight = DrawnWeight::plain);

// `text` as it is when it is at most `room` wide, else cut and closed with an ellipsis; empty where not even that fits.
std::string fitted_words(std::string_view text, double room, double font = drawing_font,
                         DrawnWeight weight = DrawnWeight::plain);

// At most `count` lines, each at most `room` wide, broken at spaces, or within a word that is wider than a line. What
// is left over is cut with an ellipsis.
std::vector<std::string> wrapped_words(std::string_view text, double room, int count,
                                       DrawnWeight weight = DrawnWeight::plain);

// Characters whose width the table knows: for others a renderer is told the width to keep.
bool has_known_width(std::string_view text);

// "&" and the other four written as entities, for text and attributes.
std::string xml_escaped(std::string_view text);

// Adds the clean words of `text`, escaped, to `out`: clean_words() and xml_escaped() in one, without copies of what
// neither of them changes.
void add_xml_words(std::string& out, std::string_view text);

}  // namespace tapbook
