// Everything that is said of a feed, as text and as JSON: what was asked, what came of it, and what stands beside it.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "electrical/electrical.h"
#include "report/screen.h"

namespace tapbook {

// How the main cable's size came about.
enum class SizeOrigin { named, chosen, none_good };

template <>
struct NamedValues<SizeOrigin> {
    static constexpr Named<SizeOrigin> all[] = {
        {SizeOrigin::named, "named"}, {SizeOrigin::chosen, "chosen"}, {SizeOrigin::none_good, "none_good"}};
};

// An amplifier as it was typed.
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

// "4 AWG", "25 mm2", "SAE 4".
std::string size_words(const CableSize& size);

std::string feed_text(const FeedReport& report, const Screen& screen);
std::string feed_json(const FeedReport& report);

// Places that carry no ground wire, for both.
std::span<const std::string_view> forbidden_grounds();

}  // namespace tapbook
