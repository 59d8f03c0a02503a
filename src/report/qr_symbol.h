// How does a phone find the sheet, or the phone page, again? A QR symbol (ISO/IEC 18004, level M) as one SVG path, or
// in the characters of a terminal.
#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace tapbook {

// The symbol without its quiet zone at least `least_mm` wide, in a square with the four light modules around it that
// the standard asks for. Capitals, digits and " $%*+-./:" make it small. Absent when the text is too long for any
// symbol.
std::optional<std::string> qr_symbol_svg(std::string_view text, double least_mm,
                                         std::string_view label = "QR code of this job");

// The same for a terminal, two rows of modules in one line of half blocks, each line with its line feed. With colours
// it is black on white whatever the terminal's own are; without them the light modules are drawn, as a dark screen
// needs.
enum class QrInk { black_on_white, screen };
std::optional<std::string> qr_symbol_lines(std::string_view text, QrInk ink);

}  // namespace tapbook
