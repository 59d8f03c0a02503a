// The field tables of converters and amplifiers: what a part is. What it costs and how many lie on the shelf is the
// shop's own business and lives in the terms (stock file), never here.
#include "trade/field.h"

namespace tapbook {
namespace {

using K = FieldKind;
constexpr bool required = true;

const Field converter_fields[] = {
    {"maker", "maker", K::name, 0, "", 0, 0, nullptr, false, "who makes it"},
    {"name", "name", K::name, 0, "", 0, 0, nullptr, required, "what is printed on it"},
    {"topology", "topology", K::word, 0, "", 0, 0, spellings<Topology>, required, "how it works"},
    {"channels", "channels", K::whole, 0, "", 1, 16, nullptr, false, "pairs it takes"},
    {"adding", "adding", K::word, 0, "", 0, 0, spellings<Adding>, false, "how it joins several channels"},
    {"input_min_v", "input_min_mv", K::decimal, 3, "V RMS", 1, 200000, nullptr, false,
     "least input for its stated output"},
    {"input_max_v", "input_max_mv", K::decimal, 3, "V RMS", 1, 200000, nullptr, false, "largest clean input"},
    {"input_max_hz", "input_max_mhz", K::decimal, 3, "Hz", 1000, 20000000, nullptr, false,
     "the note at which that maximum holds"},
    {"survives_v", "survives_mv", K::decimal, 3, "V RMS", 1, 400000, nullptr, false, "input it survives, clipped"},
    {"input_ohms", "input_mohm", K::decimal, 3, "ohm", 1000, 10000000000, nullptr, false, "input impedance"},
    {"reference", "reference", K::word, 0, "", 0, 0, spellings<Reference>, false, "what its input is referred to"},
    {"negatives", "negatives", K::word, 0, "", 0, 0, spellings<Negatives>, false, "are the minus inputs joined inside"},
    {"max_common_mode_v", "max_common_mode_mv", K::decimal, 3, "V", 0, 500000, nullptr, false,
     "largest volts of both conductors against chassis"},
    {"max_dc_difference_v", "max_dc_difference_mv", K::decimal, 3, "V", 0, 500000, nullptr, false,
     "largest d.c. across the pair"},
    {"gain_min", "gain_min_milli", K::decimal, 3, "V/V", 1, 1000000, nullptr, false, "smallest gain"},
    {"gain_max", "gain_max_milli", K::decimal, 3, "V/V", 1, 1000000, nullptr, false, "largest gain"},
    {"output_max_v", "output_max_mv", K::decimal, 3, "V RMS", 1, 50000, nullptr, false, "largest clean output"},
    {"output_ohms", "output_mohm", K::decimal, 3, "ohm", 0, 1000000000, nullptr, false, "output impedance"},
    {"output_shield", "output_shield", K::word, 0, "", 0, 0, spellings<OutputShield>, false,
     "what the output's shield is tied to"},
    {"corner_hz", "corner_mhz", K::decimal, 3, "Hz", 0, 20000000, nullptr, false, "low corner (3 dB)"},
    {"isolates", "isolates", K::flag, 0, "", 0, 0, nullptr, false, "input and output grounds are apart"},
    {"supply_ma", "supply_ma", K::whole, 0, "mA", 0, 20000, nullptr, false, "current it needs; 0: none"},
    {"standby_ma", "standby_ma", K::whole, 0, "mA", 0, 20000, nullptr, false, "current asleep"},
    {"least_volts", "least_mv", K::decimal, 3, "V", 1000, 30000, nullptr, false, "supply at which it drops out"},
    {"turn_on", "turn_on", K::word, 0, "", 0, 0, spellings<ConverterTurnOn>, false,
     "turn-on it makes for the amplifier"},
    {"turn_on_threshold_v", "turn_on_threshold_mv", K::decimal, 3, "V", 1, 30000, nullptr, false,
     "what it needs to sense"},
    {"turn_on_hold_s", "turn_on_hold_ms", K::decimal, 3, "s", 0, 3600000, nullptr, false,
     "how long it stays on without signal"},
    {"turn_on_gives_ma", "turn_on_gives_ma", K::whole, 0, "mA", 0, 20000, nullptr, false, "turn-on current it gives"},
    {"watt_rating", "watt_rating_mw", K::decimal, 3, "W", 1, 5000000, nullptr, false,
     "input rating in watts, when that is all that is printed"},
    {"watt_rating_ohms", "watt_rating_mohm", K::decimal, 3, "ohm", 100, 1000000, nullptr, false,
     "the load it is stated for; 4 ohm unless given"},
    {"watt_rating_kind", "watt_rating_kind", K::word, 0, "", 0, 0, spellings<RatingKind>, false, "what kind of watts"},
    {"remarks", "remarks", K::text, 0, "", 0, 0, nullptr, false, "anything else"},
    {"retired", "retired", K::name, 0, "", 0, 0, nullptr, false, "why this entry is no longer used"},
};

const Field amplifier_fields[] = {
    {"maker", "maker", K::name, 0, "", 0, 0, nullptr, false, "who makes it"},
    {"name", "name", K::name, 0, "", 0, 0, nullptr, required, "what is printed on it"},
    {"channels", "channels", K::whole, 0, "", 1, 16, nullptr, required, "channels"},
    {"use", "used_for", K::word, 0, "", 0, 0, spellings<AmplifierUse>, required, "what it drives"},
    {"watts_at", "watts_at", K::loads, 0, "ohm:W", 0, 0, nullptr, false,
     "continuous watts per load, \"4:75\" is 75 W into 4 ohm"},
    {"least_ohms", "least_mohm", K::decimal, 3, "ohm", 100, 100000, nullptr, false, "least load of a single channel"},
    {"least_ohms_bridged", "least_bridged_mohm", K::decimal, 3, "ohm", 100, 100000, nullptr, false,
     "least load bridged"},
    {"sensitivity_high_gain_v", "sensitivity_high_gain_mv", K::decimal, 3, "V RMS", 1, 50000, nullptr, false,
     "volts for rated power at highest gain"},
    {"sensitivity_low_gain_v", "sensitivity_low_gain_mv", K::decimal, 3, "V RMS", 1, 50000, nullptr, false,
     "volts for rated power at lowest gain"},
    {"input_max_v", "input_max_mv", K::decimal, 3, "V RMS", 1, 50000, nullptr, false, "largest line input"},
    {"input_ohms", "input_mohm", K::decimal, 3, "ohm", 1000, 10000000000, nullptr, false, "line input impedance"},
    {"shield", "shield", K::word, 0, "", 0, 0, spellings<AmplifierShield>, false,
     "what the line input's shield is tied to"},
    {"shield_ohms", "shield_mohm", K::decimal, 3, "ohm", 0, 100000000, nullptr, false, "resistance of a lifted shield"},
    {"speaker_input_min_v", "speaker_input_min_mv", K::decimal, 3, "V RMS", 1, 200000, nullptr, false,
     "speaker-level input: volts for rated power at highest gain"},
    {"speaker_input_max_v", "speaker_input_max_mv", K::decimal, 3, "V RMS", 1, 200000, nullptr, false,
     "speaker-level input: largest volts"},
    {"speaker_input_reference", "speaker_input_reference", K::word, 0, "", 0, 0, spellings<Reference>, false,
     "what it is referred to"},
    {"speaker_input_negatives", "speaker_input_negatives", K::word, 0, "", 0, 0, spellings<Negatives>, false,
     "are its minus inputs joined inside"},
    {"speaker_input_dc_v", "speaker_input_dc_mv", K::decimal, 3, "V", 0, 500000, nullptr, false,
     "largest d.c. it stands, of a conductor and across the pair"},
    {"speaker_input_turn_on", "speaker_input_turn_on", K::flag, 0, "", 0, 0, nullptr, false,
     "it wakes the amplifier by itself"},
    {"turn_on_ma", "turn_on_ma", K::whole, 0, "mA", 0, 20000, nullptr, false, "current of its turn-on input"},
    {"class", "amplifier_class", K::word, 0, "", 0, 0, spellings<AmplifierClass>, false, "ab or d"},
    {"efficiency", "efficiency_milli", K::decimal, 3, "", 100, 1000, nullptr, false, "at full power, 0.8 is 80 %"},
    {"idle_ma", "idle_ma", K::whole, 0, "mA", 0, 20000, nullptr, false, "current awake, silent"},
    {"standby_ma", "standby_ma", K::whole, 0, "mA", 0, 20000, nullptr, false, "current asleep"},
    {"least_volts", "least_mv", K::decimal, 3, "V", 1000, 30000, nullptr, false, "supply at which it drops out"},
    {"fuses", "fuses", K::names, 0, "A", 0, 0, nullptr, false, "its own fuses, as printed"},
    {"remarks", "remarks", K::text, 0, "", 0, 0, nullptr, false, "anything else"},
    {"retired", "retired", K::name, 0, "", 0, 0, nullptr, false, "why this entry is no longer used"},
};

}  // namespace

std::span<const Field> part_fields(EntryKind kind);
std::span<const Field> part_fields(EntryKind kind) {
    return kind == EntryKind::converter ? std::span<const Field>(converter_fields)
                                        : std::span<const Field>(amplifier_fields);
}

}  // namespace tapbook
