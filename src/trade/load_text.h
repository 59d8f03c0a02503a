// How is written what hangs on one output? Ohms of voice coils, "+" for in series, "//" for side by side, parentheses:
// "4//4" is 2 ohm, "(4+4)//(4+4)" is 4 ohm. "//" binds tighter than "+".
#pragma once

#include <string>
#include <string_view>
#include <variant>

#include "electrical/electrical.h"

namespace tapbook {

struct LoadTrouble {
    std::size_t offset = 0;  // byte where it stops making sense
    std::string message;     // "\"x\" is no number of ohms"
};

// REQUIRES nothing: any text. Each coil 0.1 to 1000 ohm, at most three decimals, 32 coils and 8 parentheses deep.
std::variant<Ohms, LoadTrouble> parse_load(std::string_view typed);

}  // namespace tapbook
