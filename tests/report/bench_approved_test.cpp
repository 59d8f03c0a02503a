// Do the bench answers (level, fuse, hold-up, corner, terminal, cavity) still read as they were accepted?
#include <catch2/catch.hpp>

#include "approved.h"
#include "report/report.h"

using namespace tapbook;
using approval::approve;

namespace {

constexpr Screen wide{Colours::none, 100}, narrow{Colours::none, 60};

LevelAnswer level(double high, const AmplifierSpec* amplifier) {
    ConverterSpec part;
    part.input_min = rms_volts(1);
    part.input_max = rms_volts(15);
    part.input_max_at = hertz(40);
    part.gain_min = part.gain_max = ratio(0.1);
    part.low_corner = hertz(12);
    part.output_impedance = ohms(1000);
    return calculate_level({{rms_volts(7), rms_volts(9), rms_volts(high)}, hertz(30), std::nullopt, 1}, part,
                           amplifier);
}

AmplifierSpec amplifier() {
    AmplifierSpec amplifier;
    amplifier.power_per_load = {{ohms(4), watts(300)}};
    amplifier.sensitivity_highest_gain = rms_volts(1);
    amplifier.sensitivity_lowest_gain = rms_volts(5);
    amplifier.input_impedance = ohms(10000);
    return amplifier;
}

FuseAnswer fuse(std::string name, Awg size, Amps current, const CableConditions& conditions) {
    FuseAnswer answer{std::move(name), false, fuse_for(*ampacity(size, conditions), current, conditions), {},
                      false,           {}};
    if (answer.fuse.rating) answer.blades = blades_rated(*answer.fuse.rating);
    return answer;
}

HoldUpAnswer hold(const Draw& draw, Ohms resistance) {
    return {hold_up(farads(1), resistance, draw, dc_volts(14.4), dc_volts(12.6)), farads(1), draw, dc_volts(14.4),
            dc_volts(12.6)};
}

}  // namespace

TEST_CASE("a level reads as approved: enough, too much, and with nothing known") {
    const AmplifierSpec amp = amplifier();
    approve("level-fits-100", level_text(level(9.6, &amp), wide));
    approve("level-fits-60", level_text(level(9.6, &amp), narrow));
    approve("level-clips-100", level_text(level(12, nullptr), wide));
    approve("level-json", level_json(level(9.6, &amp)));
    const LevelAnswer nothing = calculate_level({{}, hertz(30), std::nullopt, 1}, {}, nullptr);
    approve("level-nothing-100", level_text(nothing, wide));
    approve("level-nothing-json", level_json(nothing));
}

TEST_CASE("a fuse reads as approved: found, with watts, and for a cable too thin") {
    const CableConditions known{Metal::copper, Insulation::rated_105, CablePlace::elsewhere};
    const CableConditions hot_clad{Metal::copper_clad, Insulation::rated_90, CablePlace::engine_space};
    approve("fuse-found-100", fuse_text(fuse("4 AWG", Awg{4}, amps(72.5), known), wide));
    approve("fuse-found-60", fuse_text(fuse("4 AWG", Awg{4}, amps(72.5), known), narrow));
    approve("fuse-json", fuse_json(fuse("4 AWG", Awg{4}, amps(29), {})));
    FuseAnswer watts_given = fuse("5 AWG", Awg{5}, supply_current(watts(500), ratio(0.8), dc_volts(13.8)), {});
    watts_given.draw = LoadPowerDraw{watts(500), dc_volts(13.8), ratio(0.8), ratio(0.7), amps(51.76)};
    watts_given.may_blow = may_blow(watts_given.fuse, amps(51.76));
    approve("fuse-watts-100", fuse_text(watts_given, wide));
    FuseAnswer marked = fuse("SAE 8", Awg{8}, amps(30), hot_clad);
    marked.area_from_memory = true;
    approve("fuse-unconfirmed-100", fuse_text(marked, wide));
    approve("fuse-too-thin-100", fuse_text(fuse("8 AWG", Awg{8}, amps(72.5), {}), wide));
    approve("fuse-between-100", fuse_text(fuse("8 AWG", Awg{8}, amps(55), {}), wide));
    approve("fuse-beyond-100",
            fuse_text(fuse("4/0 AWG", Awg{-3}, amps(320), {Metal::copper, Insulation::rated_200, {}}), wide));
    approve("fuse-too-thin-json", fuse_json(fuse("8 AWG", Awg{8}, amps(72.5), {})));
}

TEST_CASE("a hold-up reads as approved, at constant amps and watts") {
    approve("holdup-amps-100", hold_up_text(hold(amps(100), ohms(0)), wide));
    approve("holdup-watts-60", hold_up_text(hold(watts(1000), milliohms(2)), narrow));
    approve("holdup-collapses-100", hold_up_text(hold(watts(1500), milliohms(50)), wide));
    approve("holdup-json", hold_up_json(hold(amps(100), milliohms(2))));
}

TEST_CASE("a corner reads as approved, both ways") {
    const Hertz corner = coupling_corner(ohms(4), microfarads(1000));
    const CornerAnswer with_note{ohms(4), microfarads(1000), corner,
                                 {},      hertz(40),         first_order_loss(hertz(40), corner)};
    approve("corner-note-100", corner_text(with_note, wide));
    approve("corner-json", corner_json(with_note));
    const Farads exact = coupling_capacitor(ohms(10000), hertz(40)), bought = next_standard_capacitor(exact);
    const CornerAnswer wanted{
        ohms(10000), exact, hertz(40), StandardCapacitor{bought, coupling_corner(ohms(10000), bought)}, {}, {}};
    approve("corner-wanted-100", corner_text(wanted, wide));
    approve("corner-wanted-json", corner_json(wanted));
}

TEST_CASE("every terminal and every cavity reads as approved") {
    std::string text, json;
    for (const auto& terminal : terminals()) {
        text += terminal_text(terminal, wide) + "\n";
        json += terminal_json(terminal);
    }
    approve("terminals-100", text);
    approve("terminals-json", json);
    text.clear();
    json.clear();
    for (const auto& cavity : radio_cavities()) {
        text += cavity_text(cavity, wide) + "\n";
        json += cavity_json(cavity);
    }
    approve("cavities-100", text);
    approve("cavities-json", json);
}
