// See part.h.
#include "trade/part.h"

#include "trade/decimal.h"
#include "trade/fields_read.h"

namespace tapbook {
namespace {

// "4000:75000" is 75 W into 4 ohm.
std::optional<LoadPower> load_power(const std::string& pair) {
    const auto colon = pair.find(':');
    if (colon == std::string::npos) return std::nullopt;
    const auto load = scaled(std::string_view(pair).substr(0, colon), 0);
    const auto power = scaled(std::string_view(pair).substr(colon + 1), 0);
    if (!std::holds_alternative<std::int64_t>(load) || !std::holds_alternative<std::int64_t>(power))
        return std::nullopt;
    return LoadPower{milliohms(std::get<std::int64_t>(load)), milliwatts(std::get<std::int64_t>(power))};
}

std::optional<SpeakerLevelInput> speaker_input_of(const Values& v) {
    SpeakerLevelInput input;
    input.input_min = quantity_field(v, "speaker_input_min_mv", rms_millivolts);
    input.input_max = quantity_field(v, "speaker_input_max_mv", rms_millivolts);
    if (!input.input_min && !input.input_max) return std::nullopt;
    input.reference = word_field<Reference>(v, "speaker_input_reference").value_or(Reference::unknown);
    input.negatives = word_field<Negatives>(v, "speaker_input_negatives").value_or(Negatives::unknown);
    input.dc_tolerance = quantity_field(v, "speaker_input_dc_mv", dc_millivolts);
    input.makes_turn_on = flag_field(v, "speaker_input_turn_on");
    return input;
}

}  // namespace

Converter converter_of(const Values& v) {
    Converter part{text_field(v, "path"), text_field(v, "maker"), text_field(v, "name"), text_field(v, "remarks"), {}};
    ConverterSpec& spec = part.spec;
    spec.topology = word_field<Topology>(v, "topology").value_or(Topology::transformer);
    spec.channels = whole_field(v, "channels");
    spec.adding = word_field<Adding>(v, "adding");
    spec.input_min = quantity_field(v, "input_min_mv", rms_millivolts);
    spec.input_max = quantity_field(v, "input_max_mv", rms_millivolts);
    spec.input_max_at = quantity_field(v, "input_max_mhz", millihertz);
    spec.survives = quantity_field(v, "survives_mv", rms_millivolts);
    spec.input_impedance = quantity_field(v, "input_mohm", milliohms);
    spec.reference = word_field<Reference>(v, "reference").value_or(Reference::unknown);
    spec.negatives = word_field<Negatives>(v, "negatives").value_or(Negatives::unknown);
    spec.common_mode_max = quantity_field(v, "max_common_mode_mv", dc_millivolts);
    spec.dc_difference_max = quantity_field(v, "max_dc_difference_mv", dc_millivolts);
    spec.gain_min = quantity_field(v, "gain_min_milli", thousandths);
    spec.gain_max = quantity_field(v, "gain_max_milli", thousandths);
    spec.output_max = quantity_field(v, "output_max_mv", rms_millivolts);
    spec.output_impedance = quantity_field(v, "output_mohm", milliohms);
    spec.output_shield = word_field<OutputShield>(v, "output_shield");
    spec.low_corner = quantity_field(v, "corner_mhz", millihertz);
    spec.isolates_grounds = flag_field(v, "isolates");
    spec.power_current = quantity_field(v, "supply_ma", milliamps);
    if (spec.power_current) spec.needs_power = *spec.power_current > amps(0);
    spec.standby_current = quantity_field(v, "standby_ma", milliamps);
    spec.least_supply = quantity_field(v, "least_mv", dc_millivolts);
    spec.turn_on = word_field<ConverterTurnOn>(v, "turn_on");
    spec.half_supply_threshold = quantity_field(v, "turn_on_threshold_mv", dc_millivolts);
    spec.signal_threshold = quantity_field(v, "turn_on_threshold_mv", rms_millivolts);
    spec.turn_on_hold = quantity_field(v, "turn_on_hold_ms", milliseconds);
    spec.turn_on_current = quantity_field(v, "turn_on_gives_ma", milliamps);
    spec.watt_rating = quantity_field(v, "watt_rating_mw", milliwatts);
    spec.watt_rating_at = quantity_field(v, "watt_rating_mohm", milliohms);
    spec.watt_rating_kind = word_field<RatingKind>(v, "watt_rating_kind");
    return part;
}

Amplifier amplifier_of(const Values& v) {
    Amplifier part{text_field(v, "path"), text_field(v, "maker"), text_field(v, "name"), text_field(v, "remarks"), {}};
    AmplifierSpec& spec = part.spec;
    spec.channels = whole_field(v, "channels");
    spec.use = word_field<AmplifierUse>(v, "used_for");
    for (const auto& pair : list_field(v, "watts_at"))
        if (const auto row = load_power(pair)) spec.power_per_load.push_back(*row);
    spec.least_load = quantity_field(v, "least_mohm", milliohms);
    spec.least_load_bridged = quantity_field(v, "least_bridged_mohm", milliohms);
    spec.sensitivity_highest_gain = quantity_field(v, "sensitivity_high_gain_mv", rms_millivolts);
    spec.sensitivity_lowest_gain = quantity_field(v, "sensitivity_low_gain_mv", rms_millivolts);
    spec.input_max = quantity_field(v, "input_max_mv", rms_millivolts);
    spec.input_impedance = quantity_field(v, "input_mohm", milliohms);
    spec.shield = word_field<AmplifierShield>(v, "shield").value_or(AmplifierShield::unknown);
    spec.shield_lift = quantity_field(v, "shield_mohm", milliohms);
    spec.speaker_input = speaker_input_of(v);
    spec.turn_on_current = quantity_field(v, "turn_on_ma", milliamps);
    spec.amplifier_class = word_field<AmplifierClass>(v, "amplifier_class");
    spec.efficiency = quantity_field(v, "efficiency_milli", thousandths);
    spec.idle_current = quantity_field(v, "idle_ma", milliamps);
    spec.standby_current = quantity_field(v, "standby_ma", milliamps);
    spec.least_supply = quantity_field(v, "least_mv", dc_millivolts);
    for (const auto& fuse : list_field(v, "fuses")) {
        const auto rating = scaled(fuse, 3);
        if (const auto* milliamps_printed = std::get_if<std::int64_t>(&rating))
            spec.fuses.push_back(milliamps(*milliamps_printed));
    }
    return part;
}

}  // namespace tapbook
