// What does the amplifier take and give? Its data as printed; there is no standard for input sensitivity, so it is
// data.
#pragma once

#include <optional>
#include <vector>

#include "electrical/converter.h"
#include "electrical/named.h"
#include "electrical/units.h"

namespace tapbook {

enum class AmplifierUse { sub, full_range };

template <>
struct NamedValues<AmplifierUse> {
    static constexpr Named<AmplifierUse> all[] = {{AmplifierUse::sub, "sub"}, {AmplifierUse::full_range, "full_range"}};
};

// What the shield of the line input is tied to.
enum class AmplifierShield { chassis, lifted, differential, unknown };

template <>
struct NamedValues<AmplifierShield> {
    static constexpr Named<AmplifierShield> all[] = {{AmplifierShield::chassis, "chassis"},
                                                     {AmplifierShield::lifted, "lifted"},
                                                     {AmplifierShield::differential, "differential"},
                                                     {AmplifierShield::unknown, "unknown"}};
};

enum class AmplifierClass { ab, d };

template <>
struct NamedValues<AmplifierClass> {
    static constexpr Named<AmplifierClass> all[] = {{AmplifierClass::ab, "ab"}, {AmplifierClass::d, "d"}};
};

struct LoadPower {
    Ohms load;
    Watts power;
};

struct SpeakerLevelInput {
    std::optional<RmsVolts> input_min;
    std::optional<RmsVolts> input_max;
    Reference reference = Reference::unknown;
    Negatives negatives = Negatives::unknown;
    std::optional<DcVolts> dc_tolerance;
    std::optional<bool> makes_turn_on;
};

struct AmplifierSpec {
    std::optional<int> channels;
    std::optional<AmplifierUse> use;
    std::vector<LoadPower> power_per_load;  // as printed, one per load
    std::optional<Ohms> least_load;
    std::optional<Ohms> least_load_bridged;
    std::optional<RmsVolts> sensitivity_highest_gain;  // volts for rated power, gain control fully up
    std::optional<RmsVolts> sensitivity_lowest_gain;   // and fully down
    std::optional<RmsVolts> input_max;
    std::optional<Ohms> input_impedance;
    AmplifierShield shield = AmplifierShield::unknown;
    std::optional<Ohms> shield_lift;  // when lifted, by how much
    std::optional<SpeakerLevelInput> speaker_input;
    std::optional<Amps> turn_on_current;  // what its turn-on input draws
    std::optional<AmplifierClass> amplifier_class;
    std::optional<Ratio> efficiency;
    std::optional<Amps> idle_current;
    std::optional<Amps> standby_current;
    std::optional<DcVolts> least_supply;
    std::vector<Amps> fuses;
};

// Rated power at `load`: exactly the printed row, absent when that load is not printed. Without a load: the 4 ohm row
// (the reference load of CTA-2006), else the first row; absent when nothing is printed.
std::optional<Watts> rated_power(const AmplifierSpec& amplifier, std::optional<Ohms> load = std::nullopt);

// The amplifier's own speaker-level input as a part of topology `direct`, so that the same checks judge it; absent when
// it has none. Its d.c. tolerance counts for each conductor and for their difference. It adds no gain stage and has no
// output of its own: its reach is settled by its range alone (see reach of LevelChain).
std::optional<ConverterSpec> speaker_input_as_converter(const AmplifierSpec& amplifier);

}  // namespace tapbook
