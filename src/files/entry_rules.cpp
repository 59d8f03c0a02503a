// See entry_rules.h.
#include "files/entry_rules.h"

#include <fmt/format.h>

namespace tapbook {
namespace {

// Complains when both numbers are there and the first is the larger.
void in_order(const Values& values, const TomlValue& table, const Field& low, const Field& high,
              Complaints& complaints) {
    const auto* least = find_value<std::int64_t>(values, low.stored);
    const auto* most = find_value<std::int64_t>(values, high.stored);
    if (least == nullptr || most == nullptr || *least <= *most) return;
    complaints.add(place_of(table, high.name),
                   fmt::format("{} {} is below {} {}", high.name, unscaled(*most, high.digits), low.name,
                               unscaled(*least, low.digits)),
                   "swap them or correct one");
}

void in_order(EntryKind kind, const Values& values, const TomlValue& table, std::string_view low, std::string_view high,
              Complaints& complaints) {
    in_order(values, table, *find_field(fields_of(kind), low), *find_field(fields_of(kind), high), complaints);
}

// Each VIN pattern with the place of what is wrong in it.
void check_vin_patterns(const TomlValue& table, Complaints& complaints) {
    const TomlValue* list = table.find("vin_patterns");
    if (list == nullptr) return;
    for (const auto& item : list->items) {
        if (item.type != TomlValue::Type::text) continue;  // told already
        const auto read = parse_vin_pattern(item.text);
        if (const auto* refusal = std::get_if<VinRefusal>(&read))
            complaints.add(item.place, fmt::format("VIN pattern \"{}\": {}", item.text, refusal->message()),
                           fmt::format("write all {} characters, ? for each that may be anything", vin_length));
    }
}

}  // namespace

void check_vehicle(const Values& values, const TomlValue& table, Complaints& complaints) {
    const auto first = whole_field(values, "first_year"), last = whole_field(values, "last_year");
    if (first && last && *last < *first)
        complaints.add(place_of(table, "last_year"), fmt::format("last_year {} is before first_year {}", *last, *first),
                       "swap them or correct one");
    if (values.contains("airbag_wait_s") && table.find("airbag_wait_source") == nullptr)
        complaints.add(place_of(table, "airbag_wait_s"), "airbag_wait_s without airbag_wait_source",
                       "say where the waiting time is written, or leave it out");
    check_vin_patterns(table, complaints);
}

void check_circuit(const Values& values, const TomlValue& table, Complaints& complaints) {
    in_order(EntryKind::circuit, values, table, "band_low_hz", "band_high_hz", complaints);
    const OutputStage output = circuit_of(values).output;
    if (const auto impossible = impossible_rating(output))
        complaints.add(
            place_of(table, "watts"),
            fmt::format("{} W {} into {} ohm is impossible for a {} output: 14.4 V gives at most {:.2f} W",
                        unscaled(std::get<std::int64_t>(values.at("watts_mw")), 3), word_of(output.rating_kind),
                        unscaled(std::get<std::int64_t>(values.at("rating_mohm")), 3), word_of(output.drive),
                        impossible->limit.in(watts)),
            "a printed \"50 W\" is usually rating = \"maximum\"; a boosted output has drive = \"boosted_bridged\" or "
            "\"boosted_split\"");
    if (output.rated && table.find("rating") == nullptr)
        complaints.add(place_of(table, "watts"), "watts without rating",
                       "say what kind of watts: continuous, at_10_percent or maximum");
    if (output.rated && table.find("rating_ohms") == nullptr)
        complaints.add(place_of(table, "watts"), "watts without rating_ohms",
                       "say the load the watts are stated for, usually 4");
}

void check_part(EntryKind kind, const Values& values, const TomlValue& table, Complaints& complaints) {
    if (kind == EntryKind::converter) {
        in_order(kind, values, table, "input_min_v", "input_max_v", complaints);
        in_order(kind, values, table, "input_max_v", "survives_v", complaints);
        in_order(kind, values, table, "gain_min", "gain_max", complaints);
        if (word_field<Topology>(values, "topology") == Topology::direct)
            complaints.add(place_of(table, "topology"), "topology \"direct\" is the amplifier's own input, not a part",
                           "describe it in the [[amplifier]] table by speaker_input_max_v");
    } else {
        in_order(kind, values, table, "sensitivity_high_gain_v", "sensitivity_low_gain_v", complaints);
        in_order(kind, values, table, "speaker_input_min_v", "speaker_input_max_v", complaints);
    }
}

void check_note_fields(const Values& values, const TomlValue& table, Complaints& complaints) {
    for (const auto& complaint : check_note(values)) {
        if (complaint.severity != EntrySeverity::refused) continue;
        complaints.add(place_of(table, complaint.field), complaint.text);
    }
}

}  // namespace tapbook
