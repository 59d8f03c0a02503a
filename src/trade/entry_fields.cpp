// The field tables of vehicles, sound systems, circuits and tap points: see field.h.
#include <algorithm>

#include "trade/field.h"
#include "trade/hazard.h"

namespace tapbook {
namespace {

using K = FieldKind;
constexpr bool required = true;

const Field vehicle_fields[] = {
    {"make", "make", K::name, 0, "", 0, 0, nullptr, required, "who builds the car"},
    {"model", "model", K::name, 0, "", 0, 0, nullptr, required, "what the car is called"},
    {"body", "body", K::name, 0, "", 0, 0, nullptr, required, "shape of the body: sedan, wagon, van"},
    {"first_year", "first_year", K::whole, 0, "model year", 1950, 2079, nullptr, required, "first model year"},
    {"last_year", "last_year", K::whole, 0, "model year", 1950, 2079, nullptr, required, "last model year"},
    {"market", "market", K::name, 0, "", 0, 0, nullptr, false, "where it was sold"},
    {"steering_side", "steering_side", K::word, 0, "", 0, 0, spellings<SteeringSide>, false,
     "side of the steering wheel"},
    {"vin_patterns", "vin_patterns", K::names, 0, "", 0, 0, nullptr, false,
     "VINs of this car, ? for any character; entered by the shop"},
    {"battery_place", "battery_place", K::name, 0, "", 0, 0, nullptr, false, "where the 12 V battery is"},
    {"battery_ah", "battery_mah", K::decimal, 3, "Ah", 1000, 400000, nullptr, false, "capacity of the 12 V battery"},
    {"battery_reserve_min", "battery_reserve_min", K::whole, 0, "min", 5, 600, nullptr, false,
     "reserve capacity in minutes at 25 A, when no Ah are printed", 6},
    {"battery_sensor", "battery_sensor", K::flag, 0, "", 0, 0, nullptr, false,
     "a current sensor sits on the negative post"},
    {"start_stop", "start_stop", K::flag, 0, "", 0, 0, nullptr, false, "the engine stops at standstill"},
    {"charging", "charging", K::word, 0, "", 0, 0, spellings<Charging>, false, "what charges the 12 V battery"},
    {"charging_amps", "charging_ma", K::decimal, 3, "A", 1000, 1000000, nullptr, false, "its rated current"},
    {"has_48v", "has_48v", K::flag, 0, "", 0, 0, nullptr, false, "there is a 48 V circuit"},
    {"high_voltage", "high_voltage", K::flag, 0, "", 0, 0, nullptr, false, "there are orange high-voltage cables"},
    {"airbag_wait_s", "airbag_wait_s", K::whole, 0, "s", 0, 7200, nullptr, false,
     "the vehicle's own waiting time after battery negative is off"},
    {"airbag_wait_source", "airbag_wait_source", K::name, 0, "", 0, 0, nullptr, false, "where that time is written"},
    {"hazards", "hazards", K::word_list, 0, "", 0, 0, spellings<Hazard>, false, "hazards of the whole car"},
    {"cautions", "cautions", K::names, 0, "", 0, 0, nullptr, false, "further cautions in the shop's words"},
    {"remarks", "remarks", K::text, 0, "", 0, 0, nullptr, false, "anything else"},
    {"retired", "retired", K::name, 0, "", 0, 0, nullptr, false, "why this entry is no longer used"},
};

const Field system_fields[] = {
    {"name", "name", K::name, 0, "", 0, 0, nullptr, required, "what people call this sound system"},
    {"premium_expected", "premium_expected", K::flag, 0, "", 0, 0, nullptr, false,
     "a separate amplifier is expected; proves nothing"},
    {"option_code", "option_code", K::name, 0, "", 0, 0, nullptr, false, "the maker's option code"},
    {"tells", "tells", K::names, 0, "", 0, 0, nullptr, false, "how to recognise it: badge, part, reading"},
    {"amplifier_place", "amplifier_place", K::name, 0, "", 0, 0, nullptr, false, "where the separate amplifier is"},
    {"volume_set", "volume_set", K::word, 0, "", 0, 0, spellings<VolumeSet>, false, "which unit sets the volume"},
    {"band_split", "band_split", K::flag, 0, "", 0, 0, nullptr, false, "bass and treble leave on different outputs"},
    {"watches_load", "watches_load", K::flag, 0, "", 0, 0, nullptr, false,
     "mutes or complains when a speaker is missing"},
    {"cuts_bass", "cuts_bass", K::flag, 0, "", 0, 0, nullptr, false, "takes bass away as volume rises"},
    {"noise_cancelling", "noise_cancelling", K::flag, 0, "", 0, 0, nullptr, false, "plays cancelling sound"},
    {"engine_sound", "engine_sound", K::flag, 0, "", 0, 0, nullptr, false, "plays engine sound"},
    {"sound_injected", "sound_injected", K::name, 0, "", 0, 0, nullptr, false, "where such sound enters the signal"},
    {"remarks", "remarks", K::text, 0, "", 0, 0, nullptr, false, "anything else"},
    {"retired", "retired", K::name, 0, "", 0, 0, nullptr, false, "why this entry is no longer used"},
};

const Field circuit_fields[] = {
    {"role", "role", K::word, 0, "", 0, 0, spellings<Role>, required, "what the circuit is for"},
    {"position", "position", K::word, 0, "", 0, 0, spellings<Position>, false, "which speaker it feeds"},
    {"drive", "drive", K::word, 0, "", 0, 0, spellings<Drive>, false, "how its output drives the pair, as expected"},
    {"watts", "watts_mw", K::decimal, 3, "W", 1, 2000000, nullptr, false, "printed power per channel"},
    {"rating", "rating", K::word, 0, "", 0, 0, spellings<RatingKind>, false, "what kind of watts are printed"},
    {"rating_ohms", "rating_mohm", K::decimal, 3, "ohm", 100, 1000000, nullptr, false,
     "the load that rating is stated for"},
    {"rail_volts", "rail_mv", K::decimal, 3, "V", 1000, 200000, nullptr, false, "supply rail of a boosted output"},
    {"output_ohms", "output_mohm", K::decimal, 3, "ohm", 0, 100000000, nullptr, false,
     "output impedance of a line output"},
    {"line_volts", "line_mv", K::decimal, 3, "V RMS", 1, 20000, nullptr, false, "largest clean volts of a line output"},
    {"split_bridged", "split_bridged", K::flag, 0, "", 0, 0, nullptr, false, "a two-rail output is bridged"},
    {"stage", "stage", K::word, 0, "", 0, 0, spellings<Stage>, false, "stage behind a common return"},
    {"band_low_hz", "band_low_mhz", K::decimal, 3, "Hz", 1000, 20000000, nullptr, false,
     "lowest note the circuit carries"},
    {"band_high_hz", "band_high_mhz", K::decimal, 3, "Hz", 1000, 40000000, nullptr, false,
     "highest note the circuit carries"},
    {"fed_by", "fed_by", K::word, 0, "", 0, 0, spellings<FedBy>, false, "which unit drives it"},
    {"behind", "behind", K::word, 0, "", 0, 0, spellings<Behind>, false, "what stands between output and tap"},
    {"level", "level", K::word, 0, "", 0, 0, spellings<LevelKind>, false, "follows the volume control or not"},
    {"delay_us", "delay_us", K::whole, 0, "us", 0, 200000, nullptr, false,
     "delay of this output against the front pair"},
    {"carries", "carries", K::name, 0, "", 0, 0, nullptr, false,
     "what else it carries: chimes, calls, which consumers"},
    {"fuse_amps", "fuse_ma", K::decimal, 3, "A", 500, 300000, nullptr, false, "fuse of a power circuit"},
    {"stays_live_s", "stays_live_s", K::whole, 0, "s", 0, 86400, nullptr, false, "how long it stays live after key off",
     6},
    {"switching", "switching", K::word, 0, "", 0, 0, spellings<Switching>, false,
     "how it is switched: plain, pulsed, monitored (its current is watched) or bus", 6},
    {"protects", "protects", K::word_list, 0, "", 0, 0, spellings<Protects>, false,
     "what it protects; a circuit that protects any of these is never tapped", 6},
    {"gives_ma", "gives_ma", K::whole, 0, "mA", 1, 300000, nullptr, false, "the most that may be taken from it", 6},
    {"remarks", "remarks", K::text, 0, "", 0, 0, nullptr, false, "anything else"},
    {"retired", "retired", K::name, 0, "", 0, 0, nullptr, false, "why this entry is no longer used"},
};

const Field tap_fields[] = {
    {"place", "place", K::name, 0, "", 0, 0, nullptr, required, "where in the car: radio, left rear door"},
    {"connector", "connector", K::name, 0, "", 0, 0, nullptr, false, "the connector's name or look"},
    {"side", "side", K::word, 0, "", 0, 0, spellings<ConnectorSide>, false,
     "which half of the connector the colours belong to"},
    {"view_face", "view_face", K::word, 0, "", 0, 0, spellings<ViewFace>, false, "from where its cavities are counted"},
    {"cavities", "cavities", K::whole, 0, "", 1, 200, nullptr, false, "how many cavities the connector has"},
    {"cavity_rows", "cavity_rows", K::whole, 0, "", 1, 8, nullptr, false,
     "rows of its cavities, numbered along the rows from the top left of that face", 9},
    {"gauge_mm2", "gauge_um2", K::decimal, 3, "mm2", 50, 120000, nullptr, false, "cross-section of the conductors"},
    {"terminal", "terminal", K::name, 0, "", 0, 0, nullptr, false, "the terminal in the cavity"},
    {"plug_in_lead", "plug_in_lead", K::name, 0, "", 0, 0, nullptr, false,
     "a lead that fits between the connector halves"},
    {"panels", "panels", K::names, 0, "", 0, 0, nullptr, false, "what comes off, in order"},
    {"minutes", "minutes", K::whole, 0, "min", 0, 600, nullptr, false, "time to get there"},
    {"reachable_in_place", "reachable_in_place", K::flag, 0, "", 0, 0, nullptr, false, "the part can stay where it is"},
    {"hazards", "hazards", K::word_list, 0, "", 0, 0, spellings<Hazard>, false,
     "hazards on the way; an empty list says: looked, none"},
    {"remarks", "remarks", K::text, 0, "", 0, 0, nullptr, false, "anything else"},
    {"retired", "retired", K::name, 0, "", 0, 0, nullptr, false, "why this entry is no longer used"},
};

}  // namespace

std::span<const Field> part_fields(EntryKind kind);  // part_fields.cpp

std::span<const Field> fields_of(EntryKind kind) {
    switch (kind) {
        case EntryKind::vehicle:
            return vehicle_fields;
        case EntryKind::system:
            return system_fields;
        case EntryKind::circuit:
            return circuit_fields;
        case EntryKind::tap:
            return tap_fields;
        case EntryKind::converter:
        case EntryKind::amplifier:
            return part_fields(kind);
    }
    return {};
}

const Field* find_field(std::span<const Field> fields, std::string_view name) {
    const auto found = std::find_if(fields.begin(), fields.end(), [&](const Field& f) { return f.name == name; });
    return found == fields.end() ? nullptr : &*found;
}

}  // namespace tapbook
