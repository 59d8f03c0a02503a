// How does one conductor look in a line of text? An outlined swatch, its stripes drawn diagonally; the word and the
// code always stand beside it.
#pragma once

#include <optional>
#include <string>

#include "trade/trade.h"

namespace tapbook {

// 30 by 12 units. Without a colour: white with a dashed outline.
std::string swatch_svg(const std::optional<WireColour>& colour);

}  // namespace tapbook
