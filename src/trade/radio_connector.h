// Which cavity of the three blocks of a car radio's ISO connector carries what? Shape by ISO 10487-1. Whether the
// standard assigns the cavities could not be read; the use below is what three public tables agree on. A car may
// differ: a cavity says where to measure, never what was found.
#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <string_view>

#include "trade/position.h"
#include "trade/terms.h"

namespace tapbook {

// Block a: power. Block b: speakers. Block c: line outputs and changer. Told apart by their shape and place; a is
// usually black and b brown, but colours vary.
enum class RadioBlock : std::uint8_t { a, b, c };

template <>
struct NamedValues<RadioBlock> {
    static constexpr Named<RadioBlock> all[] = {{RadioBlock::a, "A"}, {RadioBlock::b, "B"}, {RadioBlock::c, "C"}};
};

enum class SpeakerSign : std::uint8_t { positive, negative };

template <>
struct NamedValues<SpeakerSign> {
    static constexpr Named<SpeakerSign> all[] = {{SpeakerSign::positive, "+"}, {SpeakerSign::negative, "-"}};
};

struct RadioCavity {
    std::string_view name;  // "A4"
    RadioBlock block;
    int number;                                      // within the block, from 1
    std::string_view function;                       // short, no full stop
    std::optional<Role> role = std::nullopt;         // absent where no role of a circuit fits
    std::optional<Position> speaker = std::nullopt;  // of speaker and line outputs
    std::optional<SpeakerSign> sign = std::nullopt;  // block b only
    std::optional<Amps> limit = std::nullopt;        // most that may be drawn; where sources differ, the least
    bool optional_use = false;                       // often empty or used otherwise
    std::string_view sometimes_swapped_with = {};    // the cavity it changes places with in some cars
};

// A1 to A8, B1 to B8, C1 to C6, C13 to C20. C7 to C12 are left out: their use differs from maker to maker.
std::span<const RadioCavity> radio_cavities();

// "A4", "a4"; nullptr for a cavity that is not in the table.
const RadioCavity* find_radio_cavity(std::string_view name);

// The cavity of block b with this speaker's wire; nullptr for a position without one (only the four corners have).
const RadioCavity* speaker_cavity(Position speaker, SpeakerSign sign);

// Why A4 and A7 are metered before use, one sentence to show beside them.
inline constexpr std::string_view swapped_supply_caution =
    "In some cars A4 (constant) and A7 (switched) are swapped: meter both with the key off before connecting.";

}  // namespace tapbook
