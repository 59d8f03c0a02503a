// One terminal number of DIN 72552, one cavity of the ISO radio connector; text and JSON.
#include <fmt/format.h>

#include "report/calculations.h"
#include "report/json.h"

namespace tapbook {
namespace {

std::optional<std::string> unless_empty(std::string_view text) {
    return text.empty() ? std::nullopt : std::optional(std::string(text));
}

std::string_view turn_on_words(TurnOnUse use) {
    switch (use) {
        case TurnOnUse::yes:
            return "yes, as a turn-on source";
        case TurnOnUse::no:
            return "no, not as a turn-on source";
        case TurnOnUse::blanking:
            return "only to hold the amplifier off while cranking";
        case TurnOnUse::hint:
            return "only as a sign, not as a supply";
    }
    return "";
}

constexpr std::string_view meter_first =
    "A table says where to measure, not what is there: meter it with the key off, in accessory, in run and while "
    "cranking. The vehicle's own instructions come first.";

}  // namespace

std::string terminal_text(const Terminal& terminal, const Screen& screen) {
    Paper paper(screen);
    paper.line(0, fmt::format("{:<8}", terminal.number),
               fmt::format("{}{}", terminal.meaning, terminal.from_memory ? " (not confirmed)" : ""), Weight::strong);
    paper.line(0, "turn-on ",
               terminal.because.empty() ? std::string(turn_on_words(terminal.turn_on))
                                        : fmt::format("{} ({})", turn_on_words(terminal.turn_on), terminal.because));
    if (!terminal.formerly.empty()) paper.line(0, "formerly", terminal.formerly);
    paper.line(0, "        ", meter_first);
    return paper.take();
}

std::string terminal_json(const Terminal& terminal) {
    Json json;
    json.begin_object()
        .member("number", terminal.number)
        .member("meaning", terminal.meaning)
        .member("turn_on", word_of(terminal.turn_on))
        .member("because", unless_empty(terminal.because))
        .member("formerly", unless_empty(terminal.formerly))
        .key("confirmed")
        .flag(!terminal.from_memory)
        .end_object();
    return json_answer("calc.terminal", json.take());
}

std::string cavity_text(const RadioCavity& cavity, const Screen& screen) {
    Paper paper(screen);
    paper.line(0, fmt::format("{:<8}", cavity.name),
               fmt::format("{}{}", cavity.function, cavity.optional_use ? ", often empty or used otherwise" : ""),
               Weight::strong);
    if (cavity.limit) paper.line(0, "at most ", fmt::format("{:g} mA may be drawn", cavity.limit->in(milliamps)));
    if (!cavity.sometimes_swapped_with.empty()) paper.caution(0, "before you connect", swapped_supply_caution);
    paper.line(0, "        ", meter_first);
    return paper.take();
}

std::string cavity_json(const RadioCavity& cavity) {
    const auto word = [](const auto& value) {
        return value ? std::optional(std::string(word_of(*value))) : std::nullopt;
    };
    Json json;
    json.begin_object()
        .member("cavity", cavity.name)
        .member("block", word_of(cavity.block))
        .member("function", cavity.function)
        .member("role", word(cavity.role))
        .member("position", word(cavity.speaker))
        .member("sign", word(cavity.sign))
        .member_in("most_a", cavity.limit, amps)
        .key("optional")
        .flag(cavity.optional_use)
        .member("sometimes_swapped_with", unless_empty(cavity.sometimes_swapped_with))
        .end_object();
    return json_answer("calc.cavity", json.take());
}

}  // namespace tapbook
