// What can wake the amplifier, and does it carry what it wakes? Sources in the order in which they disturb the vehicle
// least; the sum of the turn-on currents against what the source gives; a relay where that is too little, with the
// current of its own coil.
#pragma once

#include <optional>
#include <span>

#include "electrical/named.h"
#include "electrical/units.h"

namespace tapbook {

// Where the turn-on signal comes from.
enum class TurnOnKind {
    own_input,      // the amplifier wakes by itself on its speaker-level input
    converter,      // made by the converter
    existing_lead,  // a lead that wakes a factory amplifier
    accessory,      // a circuit live from accessory
    ignition,       // a circuit live in run only
    other           // a power circuit whose class is not settled, or is none of these
};

template <>
struct NamedValues<TurnOnKind> {
    static constexpr Named<TurnOnKind> all[] = {
        {TurnOnKind::own_input, "own_input"},         {TurnOnKind::converter, "converter"},
        {TurnOnKind::existing_lead, "existing_lead"}, {TurnOnKind::accessory, "accessory"},
        {TurnOnKind::ignition, "ignition"},           {TurnOnKind::other, "other"}};
};

// Volts to chassis in each position of the key; absent: not read.
struct KeyVolts {
    std::optional<DcVolts> off, accessory, run, crank;
};

// Practice: what a source gives that states no limit.
inline constexpr Amps unknown_source_limit = milliamps(150);

// Practice: the coil of an automotive relay.
inline constexpr Amps relay_coil_low = milliamps(160);
inline constexpr Amps relay_coil_high = milliamps(200);

// Practice: how long music may be too quiet for a part that wakes on the signal.
inline constexpr Seconds quiet_passage = seconds(30);

struct TurnOnCurrent {
    std::optional<Amps> loads;          // sum of what is woken; absent when one of them is not known
    Amps limit = unknown_source_limit;  // of the source
    bool limit_assumed = true;          // nobody stated it
    std::optional<bool> carried;        // the sum lies within the limit; absent without the sum
    bool relay_carried = false;         // the largest coil current lies within the limit
};

// `loads`: the current of every turn-on input on this source, absent where it is not known. An empty list needs no
// current. Equal to the limit is within it.
TurnOnCurrent turn_on_current(std::span<const std::optional<Amps>> loads, std::optional<Amps> gives);

}  // namespace tapbook
