// calc fuse, calc holdup: the supply side of the bench, without a catalog.
#include <fmt/format.h>

#include "cli/command.h"

namespace tapbook {
namespace {

constexpr std::int64_t most_milliamps = 5'000'000;
constexpr std::int64_t most_milliwatts = 20'000'000;

// The cable as it was named, and what the table says of it.
struct NamedCable {
    std::string words;
    bool area_from_memory = false;
    std::optional<Ampacity> ampacity;
};

NamedCable awg_cable(const std::string& typed, const CableConditions& conditions) {
    const auto size = parse_awg(typed);
    if (!size)
        throw UsageError(fmt::format("--awg: \"{}\" is no size", shown(typed)), "write 4/0 to 40, like 8 or 1/0");
    return {awg_text(*size) + " AWG", false, ampacity(*size, conditions)};
}

NamedCable sae_cable(const std::string& typed, const CableConditions& conditions) {
    if (const SaeSize* size = find_sae_size(typed))
        return {fmt::format("SAE {}", size->marked), size->from_memory, ampacity(size->least_area, conditions)};
    std::string known;
    for (const auto& size : sae_sizes()) known += fmt::format("{}{}", known.empty() ? "" : ", ", size.marked);
    throw UsageError(fmt::format("--sae: \"{}\" is not in the table of SAE sizes", shown(typed)),
                     fmt::format("one of {}; or give the printed area with --mm2", known));
}

NamedCable cable_of(const Parsed& parsed, const CableConditions& conditions) {
    const auto gauge = parsed.text("--awg"), marked = parsed.text("--sae");
    const auto area_typed = parsed.number("--mm2", 3, 1, 1'000'000);
    if (gauge.has_value() + marked.has_value() + area_typed.has_value() != 1)
        throw UsageError("give one of --awg, --mm2 and --sae", "for example --awg 4");
    if (gauge) return awg_cable(*gauge, conditions);
    if (marked) return sae_cable(*marked, conditions);
    return {unscaled(*area_typed, 3) + " mm2", false,
            ampacity(thousandths_of_square_millimetre(*area_typed), conditions)};
}

struct Load {
    Amps current;
    std::optional<LoadPowerDraw> draw;
};

Load load_of(const Parsed& parsed) {
    const auto current = parsed.number("--amps", 3, 1, most_milliamps);
    const auto output = parsed.number("--watts", 3, 1, most_milliwatts);
    if (current.has_value() == output.has_value())
        throw UsageError("give either --amps or --watts", "for example --amps 60, or --watts 800 --class d");
    const auto typed_class = parsed.word<AmplifierClass>("--class");
    const auto typed_efficiency = parsed.number("--efficiency", 3, 10, 1000);
    const auto typed_supply = parsed.number("--supply", 3, 1000, 100'000);
    if (current) {
        if (typed_class || typed_efficiency || typed_supply)
            throw UsageError("--class, --efficiency and --supply belong to --watts", "leave them out beside --amps");
        return {milliamps(*current), std::nullopt};
    }
    if (typed_class.has_value() == typed_efficiency.has_value())
        throw UsageError("--watts needs either --class or --efficiency",
                         "for example --watts 800 --class d, or --watts 800 --efficiency 0.78");
    const Watts power = milliwatts(*output);
    LoadPowerDraw draw{power, dc_millivolts(typed_supply.value_or(13800)), ratio(1), std::nullopt, std::nullopt};
    if (typed_efficiency) {
        draw.efficiency = thousandths(*typed_efficiency);
    } else {
        const EfficiencyRange range = efficiency_of(*typed_class);
        draw.efficiency = range.likely;
        draw.least_efficiency = range.low;
        draw.most_current = supply_current(power, range.low, draw.supply);
    }
    return {supply_current(power, draw.efficiency, draw.supply), draw};
}

}  // namespace

Exit run_calc_fuse(Session& session, const Parsed& parsed) {
    CableConditions conditions;
    conditions.metal = parsed.word<Metal>("--metal").value_or(Metal::copper);
    conditions.insulation = parsed.word<Insulation>("--insulation");
    if (parsed.flag("--engine-space")) conditions.place = CablePlace::engine_space;
    const NamedCable cable = cable_of(parsed, conditions);
    const Load load = load_of(parsed);
    if (!cable.ampacity)
        throw NoAnswer(
            fmt::format("{} is thinner than 18 AWG (0.823 mm2), where the published table begins", cable.words),
            "take 18 AWG, 1 mm2 or thicker for a supply cable");
    FuseAnswer answer{
        cable.words, cable.area_from_memory, fuse_for(*cable.ampacity, load.current, conditions), load.draw, false, {}};
    answer.may_blow = may_blow(answer.fuse, load.draw ? load.draw->most_current : std::nullopt);
    if (answer.fuse.rating) answer.blades = blades_rated(*answer.fuse.rating);
    session.answer(fuse_text(answer, session.screen), fuse_json(answer));
    return answer.fuse.verdict == FuseVerdict::fits ? Exit::done : Exit::answer_is_no;
}

Exit run_calc_holdup(Session& session, const Parsed& parsed) {
    constexpr Unit<FaradsTag, 1, 1'000'000> millionths;
    const Farads capacitance = millionths(parsed.need_number("--farads", 6, 1, 100'000'000'000));
    const auto current = parsed.number("--amps", 3, 1, most_milliamps);
    const auto power = parsed.number("--watts", 3, 1, most_milliwatts);
    if (current.has_value() == power.has_value())
        throw UsageError("give either --amps or --watts", "for example --farads 1 --amps 50");
    const Draw draw = current ? Draw(milliamps(*current)) : Draw(milliwatts(*power));
    const auto from = parsed.number("--from-v", 3, 1, 100'000).value_or(14400);
    const auto to_typed = parsed.number("--to-v", 3, 1, 100'000), sag = parsed.number("--sag-v", 3, 1, 100'000);
    if (to_typed && sag) throw UsageError("give either --to-v or --sag-v", "for example --sag-v 1.8");
    const auto to = sag ? from - *sag : to_typed.value_or(12600);
    if (to <= 0 || to >= from)
        throw UsageError(fmt::format("from {} V down to {} V is no fall", unscaled(from, 3), unscaled(to, 3)),
                         "the volts must fall and stay above 0: --from-v 14.4 --to-v 12.6");
    const Ohms resistance = milliohms(parsed.number("--esr-ohms", 3, 0, 1'000'000).value_or(0));
    const Seconds note = milliseconds(parsed.number("--note-seconds", 3, 1, 3'600'000).value_or(1000));
    const HoldUpAnswer answer{hold_up(capacitance, resistance, draw, dc_millivolts(from), dc_millivolts(to), note),
                              capacitance, draw, dc_millivolts(from), dc_millivolts(to)};
    session.answer(hold_up_text(answer, session.screen), hold_up_json(answer));
    return Exit::done;
}

}  // namespace tapbook
