// See install_options.h.
#include "cli/install_options.h"

#include <fmt/format.h>

#include <algorithm>

#include "cli/chosen.h"
#include "cli/feed_options.h"

namespace tapbook {
namespace {

constexpr std::string_view made_by_part[] = {"converter", "own-input"};

std::string load_typed(const std::string& typed) {
    const auto load = parse_load(typed);
    if (const auto* trouble = std::get_if<LoadTrouble>(&load))
        throw UsageError(
            fmt::format("--load \"{}\": {} (character {})", shown(typed), trouble->message, trouble->offset + 1),
            "ohms of voice coils: 4, 4+4 in series, 4//4 side by side, (4+4)//(4+4)");
    return typed;
}

}  // namespace

std::vector<OptionSpec> install_options() {
    return {
        {"--turn-on", "SOURCE", "what wakes the amplifier: converter, own-input or a tap point; the best without it"},
        {"--metres", "L", "main cable from the battery to the amplifier, one way, measured on the car"},
        {"--size", "SIZE", "its size: 4 or 1/0 (AWG), 25mm2, sae4, or choose for the thinnest good one"},
        {"--metal", "copper|cca", "copper, or copper-clad aluminium", spellings<Metal>},
        {"--insulation", "T", "degrees its insulation is rated for: 60, 75, 80, 90, 105, 125 or 200",
         spellings<Insulation>},
        {"--engine-space", "", "the cable passes through an engine space, 50 C"},
        {"--load", "OHMS", "what hangs on one output: 4, 4+4 in series, 4//4 side by side"},
        {"--bridged", "", "two channels drive that load together"},
        {"--speaker-watts", "W", "continuous power of what hangs there"}};
}

JobPlan with_install(JobPlan before, const Parsed& parsed) {
    if (const auto length = parsed.number("--metres", 3, 1, 100'000)) before.feed_mm = *length;
    if (const auto size = parsed.text("--size"))
        before.feed_size = *size == "choose" ? std::string() : cable_size_text(typed_size("--size", *size));
    if (const auto metal = parsed.word<Metal>("--metal")) before.feed_metal = *metal;
    if (const auto insulation = parsed.word<Insulation>("--insulation")) before.feed_insulation = *insulation;
    before.feed_in_engine_space = before.feed_in_engine_space || parsed.flag("--engine-space");
    if (const auto load = parsed.text("--load")) {
        before.load = load_typed(*load);
        before.bridged = false;
    }
    if (parsed.flag("--bridged") && before.load.empty())
        throw UsageError("--bridged needs the load that two channels drive", "for example --load 4 --bridged");
    before.bridged = before.bridged || parsed.flag("--bridged");
    if (const auto power = parsed.number("--speaker-watts", 3, 1, 20'000'000)) before.speaker_mw = *power;
    return before;
}

std::string turn_on_code(const CarFacts& car, const std::string& system, const std::string& typed) {
    if (typed.empty() || std::find(std::begin(made_by_part), std::end(made_by_part), typed) != std::end(made_by_part))
        return typed;
    return chosen_tap(car, system, typed);
}

Amplifier known_amplifier(const Catalog& catalog, const std::string& words) {
    const auto all = catalog.amplifiers();
    std::vector<std::string_view> codes;
    for (const auto& amplifier : all) {
        codes.push_back(amplifier.path);
        if (amplifier.path == words || folded(amplifier.name) == folded(words)) return amplifier;
    }
    const auto near = nearest(words, codes);
    throw NoAnswer(fmt::format("there is no amplifier \"{}\"", shown(words)),
                   near            ? fmt::format("did you mean {}?", *near)
                   : codes.empty() ? "tapbook add FILE.toml puts amplifiers in"
                                   : fmt::format("known are: {}", fmt::join(codes, ", ")));
}

}  // namespace tapbook
