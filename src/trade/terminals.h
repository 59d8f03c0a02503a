// What does the terminal number on a relay, switch or wiring diagram mean, and may an amplifier's turn-on lead be taken
// from there? DIN 72552 with its old designations, from public copies of the table, not from the standard itself; what
// it means for turn-on is practice.
#pragma once

#include <cstdint>
#include <span>
#include <string_view>

#include "electrical/electrical.h"

namespace tapbook {

// What a terminal is worth for turning an amplifier on.
enum class TurnOnUse : std::uint8_t {
    yes,       // live while the radio may play, dead with the key off
    no,        // never
    blanking,  // live while cranking only: good for holding the amplifier off meanwhile
    hint,      // says that the engine runs; not a supply
};

template <>
struct NamedValues<TurnOnUse> {
    static constexpr Named<TurnOnUse> all[] = {
        {TurnOnUse::yes, "yes"}, {TurnOnUse::no, "no"}, {TurnOnUse::blanking, "blanking"}, {TurnOnUse::hint, "hint"}};
};

struct Terminal {
    std::string_view number;   // "15a", "B+"
    std::string_view meaning;  // short, no full stop
    TurnOnUse turn_on;
    std::string_view because;        // why it may or may not be used; empty where the meaning says it
    bool from_memory = false;        // nothing could be read to confirm the meaning
    std::string_view formerly = {};  // old designations, a comma between: "16, 54/15"
};

// Every terminal in the order of the table.
std::span<const Terminal> terminals();

// The terminal of this number, or of this old designation; ASCII case is ignored, blanks are not. nullptr for one that
// is not in the table: then nothing is known, and a meter decides.
const Terminal* find_terminal(std::string_view number);

}  // namespace tapbook
