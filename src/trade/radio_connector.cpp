// The table of cavities.
#include "trade/radio_connector.h"

#include <algorithm>

namespace tapbook {
namespace {

using enum RadioBlock;
using enum SpeakerSign;

constexpr RadioCavity all_cavities[] = {
    {.name = "A1", .block = a, .number = 1, .function = "speed-dependent volume", .optional_use = true},
    {.name = "A2", .block = a, .number = 2, .function = "telephone mute", .optional_use = true},
    {.name = "A3", .block = a, .number = 3, .function = "reversing light or not defined", .optional_use = true},
    {.name = "A4",
     .block = a,
     .number = 4,
     .function = "permanent battery supply",
     .role = Role::constant_power,
     .sometimes_swapped_with = "A7"},
    // 150 to 300 mA by source: plan with the least.
    {.name = "A5",
     .block = a,
     .number = 5,
     .function = "aerial and remote output",
     .role = Role::turn_on_lead,
     .limit = milliamps(150)},
    {.name = "A6",
     .block = a,
     .number = 6,
     .function = "illumination, live with the lights",
     .role = Role::illumination},
    {.name = "A7",
     .block = a,
     .number = 7,
     .function = "supply switched by the ignition key",
     .role = Role::switched_power,
     .sometimes_swapped_with = "A4"},
    {.name = "A8", .block = a, .number = 8, .function = "ground", .role = Role::ground},
    {"B1", b, 1, "right rear +", Role::speaker, Position::rear_right, positive},
    {"B2", b, 2, "right rear -", Role::speaker, Position::rear_right, negative},
    {"B3", b, 3, "right front +", Role::speaker, Position::front_right, positive},
    {"B4", b, 4, "right front -", Role::speaker, Position::front_right, negative},
    {"B5", b, 5, "left front +", Role::speaker, Position::front_left, positive},
    {"B6", b, 6, "left front -", Role::speaker, Position::front_left, negative},
    {"B7", b, 7, "left rear +", Role::speaker, Position::rear_left, positive},
    {"B8", b, 8, "left rear -", Role::speaker, Position::rear_left, negative},
    {"C1", c, 1, "line output, left rear", Role::line_level, Position::rear_left},
    {"C2", c, 2, "line output, right rear", Role::line_level, Position::rear_right},
    {"C3", c, 3, "line output, common", Role::line_level},
    {"C4", c, 4, "line output, left front", Role::line_level, Position::front_left},
    {"C5", c, 5, "line output, right front", Role::line_level, Position::front_right},
    {.name = "C6",
     .block = c,
     .number = 6,
     .function = "switched supply output",
     .role = Role::switched_power,
     .limit = milliamps(150)},
    {"C13", c, 13, "disc changer"},
    {"C14", c, 14, "disc changer"},
    {"C15", c, 15, "disc changer"},
    {"C16", c, 16, "disc changer"},
    {"C17", c, 17, "disc changer"},
    {"C18", c, 18, "disc changer"},
    {"C19", c, 19, "disc changer"},
    {"C20", c, 20, "disc changer"},
};

char capital(char letter) {
    return letter >= 'a' && letter <= 'z' ? static_cast<char>(letter - 'a' + 'A') : letter;
}

template <class Condition>
const RadioCavity* first_where(Condition condition) {
    const auto found = std::ranges::find_if(all_cavities, condition);
    return found != std::end(all_cavities) ? &*found : nullptr;
}

}  // namespace

std::span<const RadioCavity> radio_cavities() {
    return all_cavities;
}

const RadioCavity* find_radio_cavity(std::string_view name) {
    return first_where(
        [&](const RadioCavity& cavity) { return std::ranges::equal(cavity.name, name, {}, capital, capital); });
}

const RadioCavity* speaker_cavity(Position speaker, SpeakerSign sign) {
    return first_where([&](const RadioCavity& cavity) { return cavity.speaker == speaker && cavity.sign == sign; });
}

}  // namespace tapbook
