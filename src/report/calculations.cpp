// See calculations.h.
#include "report/calculations.h"

#include <fmt/format.h>

#include "report/json.h"

namespace tapbook {
namespace {

template <class Quantity, class Unit>
std::string shown_in(const std::optional<Quantity>& value, Unit unit, int digits, std::string_view name) {
    return value ? fmt::format("{:.{}f} {}", value->in(unit), digits, name) : std::string("not known");
}

}  // namespace

std::string swing_text(const Swing& swing, const Screen& screen) {
    Paper paper(screen);
    paper.line(0, "largest clean peak       ", shown_in(swing.peak, peak_volts, 2, "V peak"));
    paper.line(0, "clean across the pair    ", shown_in(swing.clean, rms_volts, 3, "V RMS"));
    paper.line(0, "clean power in the load  ", shown_in(swing.clean_power, watts, 2, "W"));
    paper.line(0, "fully clipped            ",
               shown_in(swing.clipped, rms_volts, 2, "V RMS, to be survived, not used"));
    paper.line(0, "d.c. on each conductor   ", shown_in(swing.dc_each, dc_volts, 2, "V to chassis"));
    return paper.take();
}

std::string swing_json(const Swing& swing) {
    Json json;
    json.begin_object().member_in("peak_v", swing.peak, peak_volts).member_in("clean_rms_v", swing.clean, rms_volts);
    json.member_in("clipped_rms_v", swing.clipped, rms_volts)
        .member_in("clean_w", swing.clean_power, watts)
        .member_in("dc_each_v", swing.dc_each, dc_volts);
    json.end_object();
    return json_answer("calc.swing", json.take());
}

std::string wire_text(const WireAnswer& answer, const Screen& screen) {
    Paper paper(screen);
    paper.line(0, "resistance  ",
               fmt::format("{:.4f} mohm/m{}", answer.cable.per_metre.in(milliohms_per_metre),
                           answer.cable.computed ? ", computed (size not in the printed table)" : ""));
    paper.line(0, "drop        ",
               fmt::format("{:.3f} V over {:g} m at {:g} A, this length only: {:.2f} % of {:g} V",
                           answer.drop.in(dc_volts), answer.length.in(metres), answer.current.in(amps),
                           (answer.drop / answer.supply).in(percent), answer.supply.in(dc_volts)));
    paper.line(0, "            ", "the way back through chassis or cable comes on top");
    return paper.take();
}

std::string wire_json(const WireAnswer& answer) {
    Json json;
    json.begin_object()
        .member_number("ohm_per_m", answer.cable.per_metre.in(ohms_per_metre), 7)
        .member_number("drop_v", answer.drop.in(dc_volts));
    json.member_number("drop_percent", (answer.drop / answer.supply).in(percent))
        .key("computed")
        .flag(answer.cable.computed)
        .end_object();
    return json_answer("calc.wire", json.take());
}

std::string colour_text(const WireColour& colour, const Screen& screen) {
    Paper paper(screen);
    const Conductor one[] = {{"", colour}};
    paper.conductors(0, "", one);
    return paper.take();
}

std::string colour_json(const WireColour& colour) {
    Json json;
    json.begin_object().member("code", code(colour)).member("words", words(colour)).end_object();
    return json_answer("calc.colour", json.take());
}

std::string vin_text(const Vin& vin, const Screen& screen) {
    Paper paper(screen);
    const std::string computed(1, check_digit(vin));
    const auto year = model_year(vin);
    switch (check_verdict(vin)) {
        case CheckVerdict::matches:
            paper.line(0, "check digit", fmt::format("{}, matches", computed));
            break;
        case CheckVerdict::mismatch:
            paper.line(0, "check digit",
                       fmt::format("does not match: position 9 should be {}; read the VIN again", computed));
            break;
        case CheckVerdict::not_used:
            paper.line(0, "check digit", "not used by the maker's region: nothing can be said");
            break;
    }
    paper.line(0, "model year ", year ? std::to_string(*year) : std::string("not coded in this VIN"));
    return paper.take();
}

std::string vin_json(const Vin& vin) {
    const CheckVerdict verdict = check_verdict(vin);
    std::optional<bool> valid;
    if (verdict != CheckVerdict::not_used) valid = verdict == CheckVerdict::matches;
    Json json;
    json.begin_object().member("valid", valid).member("check_digit", std::string(1, check_digit(vin)));
    json.member("model_year", model_year(vin)).end_object();
    return json_answer("calc.vin", json.take());
}

std::string gain_text(RmsVolts target, Watts power, Ohms load, FullScaleLevel tone, const Screen& screen) {
    Paper paper(screen);
    paper.line(0, fmt::format("{:.2f} V RMS ", target.in(rms_volts)),
               fmt::format("at the amplifier's output, for {:g} W into {:g} ohm with a tone at {:g} dBFS",
                           power.in(watts), load.in(ohms), tone.in(dbfs)),
               Weight::strong);
    paper.line(
        2, "-",
        "engine running, speaker disconnected, tone inside the pass band: 40 to 50 Hz for bass, 1 kHz for full range");
    paper.line(2, "-",
               "filters as they will be used, boost off, remote level knob at maximum, radio at its highest clean "
               "volume step");
    paper.line(2, "-", "turn the gain up from its lowest until the meter reads this, no further");
    return paper.take();
}

std::string gain_json(RmsVolts target) {
    Json json;
    json.begin_object().member_number("target_rms_v", target.in(rms_volts)).end_object();
    return json_answer("gain", json.take());
}

}  // namespace tapbook
