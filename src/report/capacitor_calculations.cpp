// A capacitor across the supply, and a capacitor in the way of the bass; text and JSON.
#include <fmt/format.h>

#include "report/calculations.h"
#include "report/json.h"

namespace tapbook {
namespace {

std::string draw_words(const Draw& draw) {
    if (const Amps* current = std::get_if<Amps>(&draw)) return fmt::format("{:g} A", current->in(amps));
    return fmt::format("{:g} W (constant power)", std::get<Watts>(draw).in(watts));
}

std::string capacitor_words(Farads capacitance) {
    return fmt::format("{:.4g} uF", capacitance.in(microfarads));
}

}  // namespace

std::string hold_up_text(const HoldUpAnswer& answer, const Screen& screen) {
    const HoldUp& held = answer.hold_up;
    Paper paper(screen);
    paper.line(0, "holds    ",
               fmt::format("{:.1f} ms: {:g} F carrying {} from {:g} V down to {:g} V", held.time.in(milliseconds),
                           answer.capacitance.in(farads), draw_words(answer.draw), answer.from.in(dc_volts),
                           answer.to.in(dc_volts)),
               Weight::strong);
    if (!held.step)
        paper.line(0, "at once  ", "its own resistance takes all its volts: it cannot give that much");
    else if (*held.step > dc_volts(0))
        paper.line(0, "at once  ", fmt::format("{:.2f} V are lost in its own resistance", held.step->in(dc_volts)));
    paper.line(0, "beside   ",
               fmt::format("a bass note of {:g} s is {:.0f} ms: {:.4g} F would carry that", held.note.in(seconds),
                           held.note.in(milliseconds), held.needed.in(farads)));
    paper.line(0, "         ",
               "A capacitor does not mend a weak supply: it smooths milliseconds, and the alternator has to fill it "
               "again. A battery, cable or alternator too small for the load stays too small.");
    paper.caution(0, "before you connect",
                  "Charge it through a resistor or test lamp, never straight to the battery; fuse its cable like any "
                  "other. The vehicle's own instructions, local codes and licensed practice come first.");
    return paper.take();
}

std::string hold_up_json(const HoldUpAnswer& answer) {
    const HoldUp& held = answer.hold_up;
    Json json;
    json.begin_object()
        .member_number("hold_ms", held.time.in(milliseconds))
        .member_in("step_v", held.step, dc_volts)
        .member_number("note_s", held.note.in(seconds))
        .member_number("needed_f", held.needed.in(farads))
        .end_object();
    return json_answer("calc.holdup", json.take());
}

std::string corner_text(const CornerAnswer& answer, const Screen& screen) {
    Paper paper(screen);
    paper.line(0, "corner     ",
               fmt::format("{:.4g} Hz (3.0 dB down) with {} into {:g} ohm", answer.corner.in(hertz),
                           capacitor_words(answer.capacitance), answer.load.in(ohms)));
    if (answer.standard)
        paper.line(0, "to buy     ",
                   fmt::format("{}, the next of series E6: corner {:.4g} Hz",
                               capacitor_words(answer.standard->capacitance), answer.standard->corner.in(hertz)));
    if (answer.note && answer.loss)
        paper.line(0, "loss       ",
                   fmt::format("{:.2f} dB at {:g} Hz", answer.loss->in(decibels), answer.note->in(hertz)));
    return paper.take();
}

std::string corner_json(const CornerAnswer& answer) {
    const auto standard = answer.standard;
    Json json;
    json.begin_object()
        .member_number("corner_hz", answer.corner.in(hertz))
        .member_number("microfarads", answer.capacitance.in(microfarads), 6)
        .member_number("ohms", answer.load.in(ohms))
        .member_in("standard_microfarads", standard ? std::optional(standard->capacitance) : std::nullopt, microfarads,
                   6)
        .member_in("standard_corner_hz", standard ? std::optional(standard->corner) : std::nullopt, hertz)
        .member_in("hz", answer.note, hertz)
        .member_in("loss_db", answer.loss, decibels)
        .end_object();
    return json_answer("calc.corner", json.take());
}

}  // namespace tapbook
