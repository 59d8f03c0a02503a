// See feed_report.h.
#include "electrical/feed_report.h"

namespace tapbook {

FedAmplifier fed_amplifier(const AskedAmplifier& asked, DcVolts supply, bool constant_current) {
    const EfficiencyRange range = efficiency_of(asked.amplifier_class.value_or(AmplifierClass::ab));
    const Ratio efficiency = asked.efficiency.value_or(range.likely);
    FedAmplifier fed{*asked.output / efficiency, std::nullopt, std::nullopt};
    if (constant_current) fed.draw = supply_current(*asked.output, efficiency, supply);
    if (!asked.efficiency) fed.most_current = supply_current(*asked.output, range.low, supply);
    return fed;
}

FeedReport feed_report(Feed feed, std::vector<AskedAmplifier> asked, const std::optional<CableSize>& size,
                       std::span<const CableSize> neighbours) {
    SizeOrigin origin = SizeOrigin::named;
    feed.main.size = size.value_or(neighbours.back());
    if (!size) {
        const auto chosen = thinnest_good(feed, neighbours);
        origin = chosen ? SizeOrigin::chosen : SizeOrigin::none_good;
        if (chosen) feed.main.size = *chosen;
    }
    const FeedAnswer answer = judge_feed(feed);
    const auto next = next_size(feed, neighbours);
    return {std::move(feed), std::move(asked), answer, origin, next, {}, {}, {}};
}

std::optional<AverageDraw> average_draw(const FeedReport& report, AmplifierUse use, std::optional<Amps> idle) {
    AverageDraw draw{idle.value_or(amps(0)), use, music_share(use), idle.has_value()};
    for (std::size_t i = 0; i < report.asked.size(); ++i) {
        const auto& likely = report.answer.amplifiers[i].at.likely;
        if (!report.asked[i].amplifier_class || !likely) return std::nullopt;
        draw.current =
            draw.current + average_current(likely->current, *report.asked[i].amplifier_class, draw.share, amps(0));
    }
    return draw;
}

SpareCharging spare_charging(ChargingSource kind, Amps rating, const std::optional<AverageDraw>& average) {
    SpareCharging spare{kind, rating, charging_reserve(kind, rating), std::nullopt};
    if (average) spare.verdict = judge_reserve(average->current, spare.reserve);
    return spare;
}

CapacitorBeside capacitor_beside(Farads capacitance, const FeedReport& report) {
    constexpr DcVolts from = dc_volts(14.4), to = dc_volts(12.6);
    return {capacitance, hold_up(capacitance, ohms(0), report.answer.total, from, to), from, to};
}

}  // namespace tapbook
