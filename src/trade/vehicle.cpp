// See vehicle.h.
#include "trade/vehicle.h"

#include "trade/fields_read.h"

namespace tapbook {
namespace {

std::vector<Hazard> hazards_of(const Values& values) {
    std::vector<Hazard> hazards;
    for (const auto& word : list_field(values, "hazards"))
        if (const auto hazard = parse_word<Hazard>(word)) hazards.push_back(*hazard);
    return hazards;
}

}  // namespace

Vehicle vehicle_of(const Values& v) {
    Vehicle car;
    car.path = text_field(v, "path");
    car.make = text_field(v, "make");
    car.model = text_field(v, "model");
    car.body = text_field(v, "body");
    car.first_year = whole_field(v, "first_year").value_or(0);
    car.last_year = whole_field(v, "last_year").value_or(0);
    car.battery_sensor = flag_field(v, "battery_sensor");
    car.start_stop = flag_field(v, "start_stop");
    car.has_48v = flag_field(v, "has_48v");
    car.high_voltage = flag_field(v, "high_voltage");
    car.charging = word_field<Charging>(v, "charging");
    car.charging_current = quantity_field(v, "charging_ma", milliamps);
    car.battery_capacity = quantity_field(v, "battery_mah", milliamp_hours);
    car.battery_reserve_minutes = whole_field(v, "battery_reserve_min");
    car.airbag_wait_s = whole_field(v, "airbag_wait_s");
    car.airbag_wait_source = text_field(v, "airbag_wait_source");
    car.battery_place = text_field(v, "battery_place");
    car.hazards_listed = v.contains("hazards");
    car.hazards = hazards_of(v);
    car.cautions = list_field(v, "cautions");
    car.remarks = text_field(v, "remarks");
    return car;
}

SoundSystem sound_system_of(const Values& v) {
    SoundSystem system;
    system.path = text_field(v, "path");
    system.name = text_field(v, "name");
    system.option_code = text_field(v, "option_code");
    system.amplifier_place = text_field(v, "amplifier_place");
    system.sound_injected = text_field(v, "sound_injected");
    system.remarks = text_field(v, "remarks");
    system.tells = list_field(v, "tells");
    system.premium_expected = flag_field(v, "premium_expected");
    system.band_split = flag_field(v, "band_split");
    system.watches_load = flag_field(v, "watches_load");
    system.cuts_bass = flag_field(v, "cuts_bass");
    system.noise_cancelling = flag_field(v, "noise_cancelling");
    system.engine_sound = flag_field(v, "engine_sound");
    system.volume_set = word_field<VolumeSet>(v, "volume_set");
    return system;
}

Circuit circuit_of(const Values& v) {
    Circuit circuit;
    circuit.path = text_field(v, "path");
    circuit.carries = text_field(v, "carries");
    circuit.remarks = text_field(v, "remarks");
    circuit.role = word_field<Role>(v, "role").value_or(Role::speaker);
    circuit.position = word_field<Position>(v, "position");
    circuit.output.drive = word_field<Drive>(v, "drive").value_or(Drive::unknown);
    circuit.output.rail = quantity_field(v, "rail_mv", dc_millivolts);
    circuit.output.split_is_bridged = flag_field(v, "split_bridged");
    circuit.output.common_stage = word_field<Stage>(v, "stage").value_or(Stage::unknown);
    circuit.output.rated = quantity_field(v, "watts_mw", milliwatts);
    circuit.output.rating_kind = word_field<RatingKind>(v, "rating").value_or(RatingKind::continuous);
    circuit.output.rated_at = quantity_field(v, "rating_mohm", milliohms);
    circuit.output.line_volts = quantity_field(v, "line_mv", rms_millivolts);
    circuit.output.output_impedance = quantity_field(v, "output_mohm", milliohms);
    circuit.band_low = quantity_field(v, "band_low_mhz", millihertz);
    circuit.band_high = quantity_field(v, "band_high_mhz", millihertz);
    circuit.fed_by = word_field<FedBy>(v, "fed_by");
    circuit.behind = word_field<Behind>(v, "behind");
    circuit.level = word_field<LevelKind>(v, "level");
    if (const auto delay = whole_field(v, "delay_us")) circuit.delay = seconds(*delay) * 1e-6;
    circuit.fuse = quantity_field(v, "fuse_ma", milliamps);
    circuit.stays_live = quantity_field(v, "stays_live_s", seconds);
    circuit.switching = word_field<Switching>(v, "switching");
    for (const auto& word : list_field(v, "protects"))
        if (const auto protects = parse_word<Protects>(word)) circuit.protects.push_back(*protects);
    circuit.gives = quantity_field(v, "gives_ma", milliamps);
    return circuit;
}

TapPoint tap_point_of(const Values& v) {
    TapPoint tap;
    tap.path = text_field(v, "path");
    tap.place = text_field(v, "place");
    tap.connector = text_field(v, "connector");
    tap.terminal = text_field(v, "terminal");
    tap.plug_in_lead = text_field(v, "plug_in_lead");
    tap.remarks = text_field(v, "remarks");
    tap.side = word_field<ConnectorSide>(v, "side");
    tap.view_face = word_field<ViewFace>(v, "view_face");
    tap.gauge = quantity_field(v, "gauge_um2", thousandths_of_square_millimetre);
    tap.cavities = whole_field(v, "cavities");
    tap.cavity_rows = whole_field(v, "cavity_rows");
    tap.minutes = whole_field(v, "minutes");
    tap.reachable_in_place = flag_field(v, "reachable_in_place");
    tap.panels = list_field(v, "panels");
    tap.hazards_listed = v.contains("hazards");
    tap.hazards = hazards_of(v);
    return tap;
}

}  // namespace tapbook
