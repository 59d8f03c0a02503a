// A cable's ampacity with its conditions, its fuse, where the fuse goes and what it looks like; text and JSON.
#include <fmt/format.h>

#include "report/calculations.h"
#include "report/json.h"

namespace tapbook {
namespace {

std::string amps_words(Amps current) {
    return fmt::format("{:.4g} A", current.in(amps));
}

std::string conditions_words(const Ampacity& cable) {
    const bool hot = cable.place == CablePlace::engine_space;
    std::string text = fmt::format("{} C insulation, {}, {}", word_of(cable.column),
                                   cable.metal == Metal::copper ? "copper" : "copper-clad aluminium",
                                   hot ? "in an engine space (50 C)" : "30 C around it");
    if (cable.rounded_down)
        text += fmt::format(", counted as {} AWG, the next thinner size of the table", awg_text(cable.row));
    return text;
}

std::string load_words(const FuseAnswer& answer) {
    std::string text = amps_words(answer.fuse.current);
    if (!answer.draw) return text;
    const auto& draw = *answer.draw;
    text += fmt::format(": {:g} W at {:g} V and an efficiency of {:.2f}", draw.output.in(watts),
                        draw.supply.in(dc_volts), draw.efficiency.in(ratio));
    if (draw.least_efficiency && draw.most_current)
        text += fmt::format("; {} at {:.2f}", amps_words(*draw.most_current), draw.least_efficiency->in(ratio));
    return text;
}

std::string blade_words(const BladeOfRating& blade) {
    std::string text = fmt::format("{}: {}", word_of(blade.body), word_of(blade.fuse.colour));
    if (blade.fuse.also) text += fmt::format(" or {}", word_of(*blade.fuse.also));
    if (blade.fuse.from_memory) text += " (not confirmed)";
    return text;
}

void print_fuse(Paper& paper, const FuseAnswer& answer) {
    if (!answer.fuse.rating) {
        paper.line(0, "fuse   ", no_fuse_words(answer.fuse), Weight::strong);
        return;
    }
    paper.line(0, "fuse   ", amps_words(*answer.fuse.rating), Weight::strong);
    std::string blades;
    for (const auto& blade : answer.blades) blades += (blades.empty() ? "" : ", ") + blade_words(blade);
    if (blades.empty()) blades = "no blade fuse has this rating: a bolt-down fuse";
    paper.line(0, "blade  ", blades + "; read the figure on the fuse, a colour means another rating on another body");
    paper.line(0, "where  ",
               fmt::format("within {:.0f} mm (18 in) of the battery post, measured along the cable; a published rule "
                           "(33 CFR 183.455) says {:.0f} mm (7 in); and wherever the cable gets thinner",
                           fuse_within_trade.in(millimetres), fuse_within_published.in(millimetres)));
}

void print_cautions(Paper& paper, const FuseAnswer& answer) {
    const Ampacity& cable = answer.fuse.cable;
    if (answer.may_blow)
        paper.line(0, "care   ",
                   "at the least efficiency of its class the load draws more than this fuse carries: go by the fuses "
                   "printed on the amplifier");
    if (cable.insulation_assumed)
        paper.line(0, "care   ", "the insulation was not given: the 60 C column counts; read the print on the cable");
    if (cable.factor_from_memory)
        paper.line(0, "care   ", "the engine-space factor of this insulation could not be confirmed");
    if (answer.area_from_memory) paper.line(0, "care   ", "the area of this SAE size could not be confirmed");
    paper.line(0, "source ",
               "33 CFR 183.425 table 5, a boat regulation; figures from the vehicle's or cable's maker go first");
    paper.caution(0, "before you connect",
                  "The fuse protects the cable, not the amplifier. Battery negative off first. The vehicle's own "
                  "instructions, local codes and licensed practice come first.");
}

void write_draw(Json& json, const std::optional<LoadPowerDraw>& draw) {
    json.member_in("efficiency", draw ? std::optional(draw->efficiency) : std::nullopt, ratio)
        .member_in("most_load_a", draw ? draw->most_current : std::nullopt, amps);
}

void write_blades(Json& json, const std::vector<BladeOfRating>& blades) {
    json.key("blades").begin_list();
    for (const auto& blade : blades) {
        json.begin_object().member("body", word_of(blade.body)).member("colour", word_of(blade.fuse.colour));
        json.member("also", blade.fuse.also ? std::optional(std::string(word_of(*blade.fuse.also))) : std::nullopt)
            .key("confirmed")
            .flag(!blade.fuse.from_memory)
            .end_object();
    }
    json.end_list();
}

}  // namespace

std::string no_fuse_words(const CableFuse& fuse) {
    std::string text = "none: ";
    switch (fuse.verdict) {
        case FuseVerdict::fits:
            return {};
        case FuseVerdict::cable_too_thin:
            text += fmt::format("the cable is too thin, {} is more than it carries", amps_words(fuse.current));
            break;
        case FuseVerdict::no_rating_between:
            text += fmt::format("the cable is too thin, no listed rating lies between {} and {}",
                                amps_words(fuse.current), amps_words(fuse.cable.allowed));
            break;
        case FuseVerdict::beyond_all_ratings:
            text += "the load is above the largest listed rating, 300 A";
            break;
    }
    if (!fuse.thicker_size) return text + "; no size of the table has a listed fuse for it";
    return text + fmt::format("; {} AWG or thicker would do under these conditions", awg_text(*fuse.thicker_size));
}

std::string fuse_text(const FuseAnswer& answer, const Screen& screen) {
    Paper paper(screen);
    paper.line(0, "cable  ",
               fmt::format("{} carries {}: {}", answer.cable, amps_words(answer.fuse.cable.allowed),
                           conditions_words(answer.fuse.cable)));
    paper.line(0, "load   ", load_words(answer));
    print_fuse(paper, answer);
    print_cautions(paper, answer);
    return paper.take();
}

std::string fuse_json(const FuseAnswer& answer) {
    const Ampacity& cable = answer.fuse.cable;
    Json json;
    json.begin_object()
        .member("cable", answer.cable)
        .member_number("ampacity_a", cable.allowed.in(amps))
        .member("counted_as_awg", awg_text(cable.row))
        .key("rounded_down")
        .flag(cable.rounded_down);
    json.member("insulation_c", word_of(cable.column))
        .key("insulation_assumed")
        .flag(cable.insulation_assumed)
        .member("place", word_of(cable.place))
        .member("metal", word_of(cable.metal))
        .key("confirmed")
        .flag(!cable.factor_from_memory && !answer.area_from_memory);
    json.member_number("load_a", answer.fuse.current.in(amps));
    write_draw(json, answer.draw);
    json.member("verdict", word_of(answer.fuse.verdict))
        .member_in("fuse_a", answer.fuse.rating, amps)
        .member("thicker_awg",
                answer.fuse.thicker_size ? std::optional(awg_text(*answer.fuse.thicker_size)) : std::nullopt);
    json.key("may_blow").flag(answer.may_blow);
    write_blades(json, answer.blades);
    json.member_number("within_m", fuse_within_trade.in(metres))
        .member_number("within_published_m", fuse_within_published.in(metres))
        .end_object();
    return json_answer("calc.fuse", json.take());
}

}  // namespace tapbook
