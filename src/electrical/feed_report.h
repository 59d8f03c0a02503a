// What is worth saying of a feed: what was asked, what came of it, the average current of music, what the charging
// system has left for it, how long a capacitor would last. Put together from feed.h, charging_reserve.h and hold_up.h.
#pragma once

#include <optional>
#include <span>
#include <vector>

#include "electrical/charging_reserve.h"
#include "electrical/feed.h"
#include "electrical/hold_up.h"
#include "electrical/supply_current.h"

namespace tapbook {

// How the main cable's size came about.
enum class SizeOrigin { named, chosen, none_good };

template <>
struct NamedValues<SizeOrigin> {
    static constexpr Named<SizeOrigin> all[] = {
        {SizeOrigin::named, "named"}, {SizeOrigin::chosen, "chosen"}, {SizeOrigin::none_good, "none_good"}};
};

// An amplifier as it was asked for.
struct AskedAmplifier {
    std::optional<Watts> output;  // absent: its current was given
    std::optional<AmplifierClass> amplifier_class;
    std::optional<Ratio> efficiency;
};

struct AverageDraw {
    Amps current;
    AmplifierUse use;
    Ratio share;
    bool idle_known;
};

struct SpareCharging {
    ChargingSource kind;
    Amps rating;
    AmpsRange reserve;
    std::optional<ReserveVerdict> verdict;  // absent when the average is not known
};

struct CapacitorBeside {
    Farads capacitance;
    HoldUp hold_up;
    DcVolts from, to;
};

struct FeedReport {
    Feed feed;  // with the size that was judged
    std::vector<AskedAmplifier> asked;
    FeedAnswer answer;
    SizeOrigin origin;
    std::optional<NextSize> next;
    std::optional<AverageDraw> average;  // absent when a class is not known
    std::optional<SpareCharging> spare;
    std::optional<CapacitorBeside> capacitor;
};

// The draw of an amplifier asked for by its watts: constant electrical power, or constant current at `supply` when it
// is not regulated. The printed efficiency, else the likely one of its class (AB when no class is said). REQUIRES
// output present, supply above zero.
FedAmplifier fed_amplifier(const AskedAmplifier& asked, DcVolts supply, bool constant_current);

// `size`, or the thinnest good one of `neighbours` (their thickest when none is good), judged; with the next thicker
// one. REQUIRES a feed that judge_feed() takes, as many asked as fed, neighbours not empty.
FeedReport feed_report(Feed feed, std::vector<AskedAmplifier> asked, const std::optional<CableSize>& size,
                       std::span<const CableSize> neighbours);

// Absent when the class of an amplifier is not known or it finds no volts.
std::optional<AverageDraw> average_draw(const FeedReport& report, AmplifierUse use, std::optional<Amps> idle);

SpareCharging spare_charging(ChargingSource kind, Amps rating, const std::optional<AverageDraw>& average);

// A capacitor at the amplifier, from 14.4 V down to 12.6 V, against the report's full current.
CapacitorBeside capacitor_beside(Farads capacitance, const FeedReport& report);

}  // namespace tapbook
