// Do entries' stored fields reach their typed forms, each number with its unit, and does what is absent stay absent?
#include <catch2/catch.hpp>
#include <string>

#include "trade/part.h"
#include "trade/vehicle.h"

using namespace tapbook;

namespace {

Value text(const char* words) {
    return std::string(words);
}
Value number(std::int64_t n) {
    return n;
}

}  // namespace

TEST_CASE("a vehicle's fields reach its typed form") {
    const Vehicle car = vehicle_of({{"path", text("orrery/vel-ostrel/sedan/2012")},
                                    {"make", text("Orrery")},
                                    {"model", text("Vel Ostrel")},
                                    {"body", text("sedan")},
                                    {"first_year", number(2012)},
                                    {"last_year", number(2016)},
                                    {"charging", text("smart_alternator")},
                                    {"battery_sensor", true},
                                    {"has_48v", false},
                                    {"airbag_wait_s", number(600)},
                                    {"hazards", TextList{"battery_in_cabin", "no-such-hazard"}},
                                    {"cautions", TextList{"mind the lever"}}});
    CHECK(car.make == "Orrery");
    CHECK(car.first_year == 2012);
    CHECK(car.last_year == 2016);
    CHECK(car.charging == Charging::smart_alternator);
    CHECK(car.battery_sensor == true);
    CHECK(car.has_48v == false);
    CHECK(car.start_stop == std::nullopt);
    CHECK(car.airbag_wait_s == 600);
    CHECK(car.hazards == std::vector<Hazard>{Hazard::battery_in_cabin});  // a later version's word is passed over
    CHECK(car.cautions == TextList{"mind the lever"});
}

TEST_CASE("an empty list of hazards says that somebody looked, a missing one that nobody did") {
    CHECK(vehicle_of({{"hazards", TextList{}}}).hazards_listed);
    CHECK_FALSE(vehicle_of({}).hazards_listed);
    CHECK(tap_point_of({{"hazards", TextList{}}}).hazards_listed);
    CHECK(tap_point_of({{"hazards", TextList{}}}).hazards.empty());
    CHECK_FALSE(tap_point_of({}).hazards_listed);
}

TEST_CASE("a circuit's numbers come out in the units they went in") {
    const Circuit circuit = circuit_of({{"role", text("line_level")},
                                        {"position", text("rear left")},
                                        {"drive", text("line_differential")},
                                        {"watts_mw", number(18500)},
                                        {"rating", text("at_10_percent")},
                                        {"rating_mohm", number(4000)},
                                        {"rail_mv", number(28000)},
                                        {"output_mohm", number(100000)},
                                        {"line_mv", number(4000)},
                                        {"band_low_mhz", number(40000)},
                                        {"band_high_mhz", number(20000000)},
                                        {"delay_us", number(1500)},
                                        {"fuse_ma", number(7500)},
                                        {"fed_by", text("amplifier")},
                                        {"behind", text("capacitor")},
                                        {"level", text("fixed")},
                                        {"split_bridged", false}});
    CHECK(circuit.role == Role::line_level);
    CHECK(circuit.position == Position::rear_left);
    CHECK(circuit.output.drive == Drive::line_differential);
    CHECK(circuit.output.rated->in(watts) == Approx(18.5));
    CHECK(circuit.output.rating_kind == RatingKind::at_10_percent);
    CHECK(circuit.output.rated_at->in(ohms) == Approx(4));
    CHECK(circuit.output.rail->in(dc_volts) == Approx(28));
    CHECK(circuit.output.output_impedance->in(ohms) == Approx(100));
    CHECK(circuit.output.line_volts->in(rms_volts) == Approx(4));
    CHECK(circuit.band_low->in(hertz) == Approx(40));
    CHECK(circuit.band_high->in(hertz) == Approx(20000));
    CHECK(circuit.delay->in(seconds) == Approx(0.0015));
    CHECK(circuit.fuse->in(amps) == Approx(7.5));
    CHECK(circuit.fed_by == FedBy::amplifier);
    CHECK(circuit.behind == Behind::capacitor);
    CHECK(circuit.level == LevelKind::fixed);
    CHECK(circuit.output.split_is_bridged == false);
}

TEST_CASE("of an empty circuit, system and tap point nothing is known") {
    const Circuit circuit = circuit_of({});
    CHECK(circuit.output.drive == Drive::unknown);
    CHECK(circuit.output.common_stage == Stage::unknown);
    CHECK(circuit.output.rated == std::nullopt);
    CHECK(circuit.band_low == std::nullopt);
    CHECK(circuit.delay == std::nullopt);
    CHECK(circuit.level == std::nullopt);
    const SoundSystem system = sound_system_of({});
    CHECK(system.premium_expected == std::nullopt);
    CHECK(system.volume_set == std::nullopt);
    CHECK(system.tells.empty());
    const TapPoint tap = tap_point_of({});
    CHECK(tap.side == std::nullopt);
    CHECK(tap.gauge == std::nullopt);
    CHECK(tap.minutes == std::nullopt);
}

TEST_CASE("a tap point's and a system's fields reach their typed forms") {
    const TapPoint tap = tap_point_of({{"place", text("radio")},
                                       {"side", text("body")},
                                       {"view_face", text("mating_side")},
                                       {"gauge_um2", number(750)},
                                       {"cavities", number(20)},
                                       {"minutes", number(15)},
                                       {"reachable_in_place", false},
                                       {"panels", TextList{"trim strip", "radio"}}});
    CHECK(tap.side == ConnectorSide::body);
    CHECK(tap.view_face == ViewFace::mating_side);
    CHECK(tap.gauge->in(square_millimetres) == Approx(0.75));
    CHECK(tap.cavities == 20);
    CHECK(tap.minutes == 15);
    CHECK(tap.reachable_in_place == false);
    CHECK(tap.panels == TextList{"trim strip", "radio"});
    const SoundSystem system = sound_system_of({{"name", text("eight")},
                                                {"premium_expected", true},
                                                {"volume_set", text("amplifier")},
                                                {"tells", TextList{"badge"}}});
    CHECK(system.premium_expected == true);
    CHECK(system.volume_set == VolumeSet::amplifier);
    CHECK(system.tells == TextList{"badge"});
}

TEST_CASE("a converter's fields reach its typed form") {
    const Converter part = converter_of({{"path", text("wendric-plain-two")},
                                         {"topology", text("transformer")},
                                         {"channels", number(2)},
                                         {"input_max_mv", number(12000)},
                                         {"input_max_mhz", number(30000)},
                                         {"input_mohm", number(2000000)},
                                         {"reference", text("floating")},
                                         {"gain_min_milli", number(50)},
                                         {"turn_on_hold_ms", number(1500)},
                                         {"supply_ma", number(0)},
                                         {"isolates", true}});
    CHECK(part.path == "wendric-plain-two");
    CHECK(part.spec.topology == Topology::transformer);
    CHECK(part.spec.channels == 2);
    CHECK(part.spec.input_max->in(rms_volts) == Approx(12));
    CHECK(part.spec.input_max_at->in(hertz) == Approx(30));
    CHECK(part.spec.input_impedance->in(ohms) == Approx(2000));
    CHECK(part.spec.reference == Reference::floating);
    CHECK(part.spec.negatives == Negatives::unknown);
    CHECK(part.spec.gain_min->in(ratio) == Approx(0.05));
    CHECK(part.spec.turn_on_hold->in(seconds) == Approx(1.5));
    CHECK(part.spec.isolates_grounds == true);
}

TEST_CASE("a converter that draws no current needs none, and one whose current is not known may need some") {
    CHECK(converter_of({{"supply_ma", number(0)}}).spec.needs_power == false);
    CHECK(converter_of({{"supply_ma", number(150)}}).spec.needs_power == true);
    CHECK(converter_of({}).spec.needs_power == std::nullopt);
}

TEST_CASE("an amplifier's fields reach its typed form, its watts load by load") {
    const Amplifier part = amplifier_of({{"path", text("corvane-four")},
                                         {"channels", number(4)},
                                         {"used_for", text("full_range")},
                                         {"watts_at", TextList{"4000:75000", "2000:110000"}},
                                         {"sensitivity_high_gain_mv", number(200)},
                                         {"input_max_mv", number(6000)},
                                         {"efficiency_milli", number(800)},
                                         {"shield", text("lifted")},
                                         {"shield_mohm", number(220000)}});
    CHECK(part.spec.use == AmplifierUse::full_range);
    REQUIRE(part.spec.power_per_load.size() == 2);
    CHECK(part.spec.power_per_load[1].load.in(ohms) == Approx(2));
    CHECK(part.spec.power_per_load[1].power.in(watts) == Approx(110));
    CHECK(part.spec.sensitivity_highest_gain->in(rms_volts) == Approx(0.2));
    CHECK(part.spec.efficiency->in(ratio) == Approx(0.8));
    CHECK(part.spec.shield == AmplifierShield::lifted);
    CHECK(part.spec.shield_lift->in(ohms) == Approx(220));
    CHECK(part.spec.speaker_input == std::nullopt);
}

TEST_CASE("a pair of load and watts that cannot be read is passed over, the others stay") {
    const auto part = amplifier_of({{"watts_at", TextList{"4000", "4000:", ":75000", "4:7,5", "x:y", "2000:110000"}}});
    REQUIRE(part.spec.power_per_load.size() == 1);
    CHECK(part.spec.power_per_load[0].load.in(ohms) == Approx(2));
}

TEST_CASE("an amplifier has a speaker-level input when its range is known") {
    const auto part = amplifier_of({{"speaker_input_max_mv", number(10000)},
                                    {"speaker_input_dc_mv", number(16000)},
                                    {"speaker_input_turn_on", true}});
    REQUIRE(part.spec.speaker_input.has_value());
    CHECK(part.spec.speaker_input->input_max->in(rms_volts) == Approx(10));
    CHECK(part.spec.speaker_input->input_min == std::nullopt);
    CHECK(part.spec.speaker_input->dc_tolerance->in(dc_volts) == Approx(16));
    CHECK(part.spec.speaker_input->makes_turn_on == true);
    CHECK(part.spec.speaker_input->reference == Reference::unknown);
}
