// The table of terminals.
#include "trade/terminals.h"

#include <algorithm>

namespace tapbook {
namespace {

using enum TurnOnUse;

constexpr Terminal all_terminals[] = {
    {"15", "switched positive after the ignition switch", yes, "live in run; check accessory and cranking with a meter",
     false, "16, 54/15"},
    {"15a", "output of the ballast resistor", no, "less than battery voltage"},
    {"30", "direct from battery positive", no, "constant: the amplifier would never sleep without a switch of its own",
     false, "30/51"},
    {"30a", "from the second battery or the 12 V/24 V relay", no, "may be 24 V"},
    {"31", "ground, direct to battery negative", no, ""},
    {"31b", "ground through a switch or relay", no, "switches the ground side"},
    {"49", "flasher unit, input", no, ""},
    {"49a", "flasher unit, output", no, "pulses"},
    {"50", "starter control", blanking, "live while cranking only"},
    {"51", "d.c. at the alternator's rectifier", no, ""},
    {"54", "brake lights", no, ""},
    {"55", "fog lights", no, ""},
    {"56", "headlights", no, ""},
    {"56a", "high beam", no, ""},
    {"56b", "low beam", no, ""},
    {"57", "parking lights", no, ""},
    {"58", "side, tail and instrument lights", no, "illumination: live with the lights, dimmed in some cars"},
    {"61", "charge indicator", hint, "says that the engine runs"},
    {"75", "accessories: radio, lighter", yes, "live in accessory; check cranking with a meter", true},
    {"85", "relay coil, end", no, "belongs to the coil"},
    {"86", "relay coil, start", no, "belongs to the coil"},
    {"87", "relay output, closed when the relay is on", no, "live when that relay is: depends on what drives its coil"},
    {"87a", "relay output, closed when the relay is off", no, "live when that relay is off", true},
    {"B+", "battery positive", no, "constant"},
    {"B-", "battery negative", no, ""},
    {"D+", "dynamo or alternator positive", no, ""},
    {"D-", "dynamo or alternator negative", no, ""},
    {"DF", "dynamo or alternator field", no, ""},
};

char small(char c) {
    return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
}

bool same_word(std::string_view a, std::string_view b) {
    return std::ranges::equal(a, b, {}, small, small);
}

// Is `word` one of the words of `list`, which have ", " between them?
bool lists(std::string_view list, std::string_view word) {
    constexpr std::string_view between = ", ";
    while (!list.empty()) {
        const auto end = std::min(list.find(between), list.size());
        if (same_word(list.substr(0, end), word)) return true;
        list.remove_prefix(std::min(end + between.size(), list.size()));
    }
    return false;
}

}  // namespace

std::span<const Terminal> terminals() {
    return all_terminals;
}

const Terminal* find_terminal(std::string_view number) {
    const auto named =
        std::ranges::find_if(all_terminals, [&](const Terminal& t) { return same_word(t.number, number); });
    if (named != std::end(all_terminals)) return &*named;
    const auto old = std::ranges::find_if(all_terminals, [&](const Terminal& t) { return lists(t.formerly, number); });
    return old != std::end(all_terminals) ? &*old : nullptr;
}

}  // namespace tapbook
