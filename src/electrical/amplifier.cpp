// The amplifier's rated power at a load, and its own speaker-level input seen as a converter.
#include "electrical/amplifier.h"

#include <algorithm>

namespace tapbook {

static_assert(table_is_sound<AmplifierUse>());
static_assert(table_is_sound<AmplifierShield>());
static_assert(table_is_sound<AmplifierClass>());

namespace {

std::optional<bool> isolates(Reference reference) {
    switch (reference) {
        case Reference::floating:
        case Reference::differential:
            return true;
        case Reference::chassis:
            return false;
        case Reference::unknown:
            break;
    }
    return std::nullopt;
}

}  // namespace

std::optional<Watts> rated_power(const AmplifierSpec& amplifier, std::optional<Ohms> load) {
    const auto& rows = amplifier.power_per_load;
    const Ohms wanted = load.value_or(ohms(4));
    const auto row = std::find_if(rows.begin(), rows.end(), [&](const LoadPower& r) { return r.load == wanted; });
    if (row != rows.end()) return row->power;
    if (load || rows.empty()) return std::nullopt;
    return rows.front().power;
}

std::optional<ConverterSpec> speaker_input_as_converter(const AmplifierSpec& amplifier) {
    if (!amplifier.speaker_input) return std::nullopt;
    const SpeakerLevelInput& input = *amplifier.speaker_input;
    ConverterSpec direct;
    direct.topology = Topology::direct;
    direct.channels = amplifier.channels;
    direct.input_min = input.input_min;
    direct.input_max = input.input_max;
    direct.reference = input.reference;
    direct.negatives = input.negatives;
    direct.common_mode_max = input.dc_tolerance;
    direct.dc_difference_max = input.dc_tolerance;
    direct.output_shield = OutputShield::isolated;  // there is no line lead whose shield could be a path
    direct.isolates_grounds = isolates(input.reference);
    direct.needs_power = false;
    direct.least_supply = amplifier.least_supply;
    if (input.makes_turn_on == false) direct.turn_on = ConverterTurnOn::none;
    return direct;
}

}  // namespace tapbook
