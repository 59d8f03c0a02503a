// The level of one chain tap -> converter -> amplifier, as text and JSON. Names as in the advice.
#include <fmt/format.h>

#include "report/calculations.h"
#include "report/json.h"

namespace tapbook {
namespace {

std::string volts(const std::optional<RmsVolts>& value) {
    return value ? fmt::format("{:.3f} V", value->in(rms_volts)) : std::string("not known");
}

std::string_view place_words(ClipPlace place, Topology topology) {
    if (topology == Topology::direct) return "the amplifier's speaker-level input";
    switch (place) {
        case ClipPlace::converter_input:
            return "the converter's input";
        case ClipPlace::converter_output:
            return "the converter's output, at its smallest gain";
        case ClipPlace::amplifier_input:
            return "the amplifier's input, with both gains at their lowest";
    }
    return "";
}

std::string headroom_words(const Gain& headroom) {
    const auto value = headroom.in(decibels);
    return fmt::format("{:+.1f} dB{}", value, value < 0 ? ", the tap overdrives it there: STOP" : "");
}

std::string drive_words(const Gain& margin) {
    const auto value = margin.in(decibels);
    return value < 0 ? fmt::format("{:+.1f} dB: the least this tap may give does not drive it", value)
                     : fmt::format("{:+.1f} dB over the least input", value);
}

void print_input(Paper& paper, const LevelAnswer& answer) {
    const auto& clean = answer.request.clean;
    paper.line(0, "tap, clean     ",
               fmt::format("{} low, {} likely, {} high, across the pair", volts(clean.low), volts(clean.likely),
                           volts(clean.high)));
    paper.line(0, "input limit    ",
               answer.limit_at_lowest
                   ? fmt::format("{} at {:g} Hz", volts(answer.limit_at_lowest), answer.request.lowest.in(hertz))
                   : std::string("not known: the largest input, or for a transformer the note it "
                                 "holds at, is missing"));
    paper.line(0, "headroom       ", answer.headroom ? headroom_words(*answer.headroom) : std::string("not known"));
    paper.line(
        0, "drive margin   ",
        answer.drive_margin ? drive_words(*answer.drive_margin) : std::string("not known: no least input was given"));
}

void print_output(Paper& paper, const LevelAnswer& answer) {
    if (answer.corner_loss)
        paper.line(0, "low corner     ",
                   fmt::format("costs {:.2f} dB at {:g} Hz", answer.corner_loss->in(decibels),
                               answer.request.lowest.in(hertz)));
    if (answer.topology == Topology::direct) return;
    if (!answer.chain.output_open) {
        paper.line(0, "output         ", "not known: no gain was given");
        return;
    }
    paper.line(0, "output         ",
               fmt::format("{} open at the largest gain; {}", volts(answer.chain.output_open),
                           answer.chain.output ? volts(answer.chain.output) + " into the amplifier"
                                               : "into the amplifier not known: its input ohms or the converter's "
                                                 "output ohms are missing"));
}

void print_power(Paper& paper, const LevelAnswer& answer) {
    if (!answer.chain.shortfall) return;
    const auto short_by = answer.chain.shortfall->in(decibels);
    const std::string of =
        answer.rated && answer.chain.reachable
            ? fmt::format("{:.0f} W of {:g} W", answer.chain.reachable->in(watts), answer.rated->in(watts))
            : std::string();
    if (short_by > 0)
        paper.line(0, "amplifier      ",
                   fmt::format("{:.1f} dB short of rated power{}{}", short_by, of.empty() ? "" : ": ", of));
    else
        paper.line(0, "amplifier      ", fmt::format("driven to rated power{}{}", of.empty() ? "" : ", ", of));
}

void print_clip(Paper& paper, const LevelAnswer& answer) {
    if (!answer.first_clip) {
        paper.line(0, "clips first    ", "not known: no limit was given");
        return;
    }
    paper.line(0, "clips first    ",
               fmt::format("{}, from {} at the tap{}", place_words(answer.first_clip->place, answer.topology),
                           volts(answer.first_clip->tap),
                           answer.clips.value_or(false) ? ": this tap goes higher" : ", which this tap does not reach"),
               answer.clips.value_or(false) ? Weight::strong : Weight::plain);
}

}  // namespace

std::string level_text(const LevelAnswer& answer, const Screen& screen) {
    Paper paper(screen);
    print_input(paper, answer);
    print_output(paper, answer);
    print_power(paper, answer);
    print_clip(paper, answer);
    return paper.take();
}

std::string level_json(const LevelAnswer& answer) {
    const auto& chain = answer.chain;
    Json json;
    json.begin_object()
        .member_in("limit_at_lowest_v", answer.limit_at_lowest, rms_volts)
        .member_in("headroom_db", answer.headroom, decibels)
        .member_in("drive_margin_db", answer.drive_margin, decibels)
        .member_in("corner_loss_db", answer.corner_loss, decibels)
        .member_in("output_open_rms_v", chain.output_open, rms_volts)
        .member_in("output_rms_v", chain.output, rms_volts)
        .member_in("shortfall_db", chain.shortfall, decibels)
        .member_in("reachable_w", chain.reachable, watts)
        .member_in("overload_v", chain.overload_volts, rms_volts)
        .member_in("overload_limit_v", chain.overload_limit, rms_volts);
    json.member("overloaded", chain.overloaded)
        .member("clips_first",
                answer.first_clip ? std::optional(std::string(word_of(answer.first_clip->place))) : std::nullopt)
        .member_in("clips_from_tap_v", answer.first_clip ? std::optional(answer.first_clip->tap) : std::nullopt,
                   rms_volts)
        .member("clips", answer.clips)
        .end_object();
    return json_answer("calc.level", json.take());
}

}  // namespace tapbook
