// How does a phone find the sheet again? A QR symbol (ISO/IEC 18004, level M) as one SVG path.
#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace tapbook {

// The symbol without its quiet zone at least `least_mm` wide, in a square with the four light modules around it that
// the standard asks for. Capitals, digits and " $%*+-./:" make it small. Absent when the text is too long for any
// symbol.
std::optional<std::string> qr_symbol_svg(std::string_view text, double least_mm);

}  // namespace tapbook
