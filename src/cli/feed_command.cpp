// feed: cable, fuses and volts of the amplifiers' supply, without a car.
#include <fmt/format.h>

#include <algorithm>

#include "cli/feed_options.h"

namespace tapbook {
namespace {

constexpr std::int64_t most_micro_ohms = 1'000'000;
constexpr Unit<OhmsTag, 1, 1'000'000> micro_ohms;
constexpr Unit<FaradsTag, 1, 1'000'000> millionths;

FeedReturn return_of(const Parsed& parsed) {
    const std::string through = parsed.text("--return").value_or("body");
    const auto read = parsed.number("--return-mohm", 3, 0, most_micro_ohms);
    if (through != "body" && through != "cable")
        throw UsageError(fmt::format("--return does not know \"{}\"", shown(through)), "body or cable");
    if (through == "cable") {
        if (read) throw UsageError("--return-mohm belongs to the body", "leave it out beside --return cable");
        return EqualCableReturn{};
    }
    if (read) return BodyReturn{micro_ohms(*read), micro_ohms(*read), micro_ohms(*read)};
    return BodyReturn{};
}

CableConditions conditions_of(const Parsed& parsed) {
    CableConditions conditions;
    conditions.metal = parsed.word<Metal>("--metal").value_or(Metal::copper);
    conditions.insulation = parsed.word<Insulation>("--insulation");
    if (parsed.flag("--engine-space")) conditions.place = CablePlace::engine_space;
    return conditions;
}

struct MainCable {
    std::optional<CableSize> size;          // absent: choose
    std::span<const CableSize> neighbours;  // to choose from, and where the next size is looked for
};

MainCable main_cable_of(const Parsed& parsed) {
    const auto typed = parsed.text("--size");
    const auto list = parsed.word<SizeSystem>("--from");
    if (!typed) throw UsageError("--size is needed", "--size 4, or --size choose");
    if (*typed == "choose") return {std::nullopt, sold_sizes(list.value_or(SizeSystem::awg))};
    if (list) throw UsageError("--from belongs to --size choose", "leave it out beside a size");
    const CableSize size = typed_size("--size", *typed);
    return {size, sold_sizes(system_of(size))};
}

std::optional<SpareCharging> spare_of(const Parsed& parsed, const std::optional<AverageDraw>& average) {
    const auto kind = parsed.word<ChargingSource>("--charging");
    const auto rating = parsed.number("--charging-amps", 3, 1, 1'000'000);
    if (kind && !rating) throw UsageError("--charging needs --charging-amps", "for example --charging-amps 120");
    if (!rating) return std::nullopt;
    return spare_charging(kind.value_or(ChargingSource::alternator), milliamps(*rating), average);
}

std::optional<CapacitorBeside> capacitor_of(const Parsed& parsed, const FeedReport& report) {
    const auto typed = parsed.number("--farads", 6, 1, 100'000'000'000);
    return typed ? std::optional(capacitor_beside(millionths(*typed), report)) : std::nullopt;
}

std::optional<Amps> typed_amps(const Parsed& parsed, std::string_view option, std::int64_t most) {
    const auto typed = parsed.number(option, 3, 0, most);
    return typed ? std::optional(milliamps(*typed)) : std::nullopt;
}

Feed feed_of(const Parsed& parsed, DcVolts supply, const CableSize& size) {
    const Metres length = millimetres(parsed.need_number("--metres", 3, 1, 100'000));
    const Ohms source = micro_ohms(parsed.number("--source-mohm", 3, 0, most_micro_ohms).value_or(0));
    const Celsius temperature =
        celsius(static_cast<double>(parsed.number("--celsius", 3, -60'000, 250'000).value_or(20'000)) / 1000);
    return {supply, source, {size, length}, {}, return_of(parsed), conditions_of(parsed), temperature};
}

}  // namespace

Exit run_feed(Session& session, const Parsed& parsed) {
    const DcVolts supply = dc_millivolts(parsed.number("--supply", 3, 1000, 100'000).value_or(13800));
    const auto typed = typed_amplifiers(parsed, supply);
    const MainCable cable = main_cable_of(parsed);
    Feed feed = feed_of(parsed, supply, cable.size.value_or(cable.neighbours.back()));
    std::vector<AskedAmplifier> asked;
    for (const auto& one : typed) {
        feed.amplifiers.push_back(one.fed);
        asked.push_back(one.asked);
    }
    FeedReport report = feed_report(std::move(feed), std::move(asked), cable.size, cable.neighbours);
    report.average = average_draw(report, parsed.word<AmplifierUse>("--use").value_or(AmplifierUse::sub),
                                  typed_amps(parsed, "--idle-amps", 100'000));
    report.spare = spare_of(parsed, report.average);
    report.capacitor = capacitor_of(parsed, report);
    session.answer(feed_text(report, session.screen), feed_json(report));
    const bool carried = report.answer.fused && report.answer.grade != FeedGrade::too_thin;
    return carried && report.origin != SizeOrigin::none_good ? Exit::done : Exit::answer_is_no;
}

}  // namespace tapbook
