// Does a feed still read as it was accepted? One amplifier, two behind a block, one that finds no volts.
#include <catch2/catch.hpp>

#include "approved.h"
#include "report/report.h"

using namespace tapbook;
using approval::approve;

namespace {

constexpr Screen wide{Colours::none, 100}, narrow{Colours::none, 60};

FeedReport report(const CableSize& size, std::vector<FedAmplifier> amplifiers) {
    const Feed feed{running_supply, ohms(0), {size, metres(5.5)}, std::move(amplifiers), BodyReturn{}, {}};
    const auto list = sold_sizes(system_of(size));
    FeedReport report{feed, {}, judge_feed(feed), SizeOrigin::named, next_size(feed, list), {}, {}, {}};
    for (std::size_t i = 0; i < feed.amplifiers.size(); ++i)
        report.asked.push_back({watts(900), AmplifierClass::d, std::nullopt});
    return report;
}

FeedReport full_report() {
    FeedReport full = report(Awg{4}, {{watts(1125), amps(110)}});
    full.origin = SizeOrigin::chosen;
    full.average = AverageDraw{amps(28), AmplifierUse::sub, ratio(1.0 / 3), true};
    const AmpsRange reserve = charging_reserve(ChargingSource::alternator, amps(120));
    full.spare = SpareCharging{ChargingSource::alternator, amps(120), reserve, judge_reserve(amps(28), reserve)};
    full.capacitor = CapacitorBeside{farads(1), hold_up(farads(1), ohms(0), amps(84), dc_volts(14.4), dc_volts(12.6)),
                                     dc_volts(14.4), dc_volts(12.6)};
    return full;
}

}  // namespace

TEST_CASE("a feed with everything beside it reads as approved, wide, narrow and as JSON") {
    approve("feed-full-100", feed_text(full_report(), wide));
    approve("feed-full-60", feed_text(full_report(), narrow));
    approve("feed-full-json", feed_json(full_report()));
}

TEST_CASE("a feed of two amplifiers behind a block reads as approved") {
    const FeedReport two = report(Awg{0}, {{watts(600), amps(60), FeedCable{Awg{8}, metres(1)}},
                                           {amps(20), std::nullopt, FeedCable{square_millimetres(70), metres(0.5)}}});
    approve("feed-block-100", feed_text(two, wide));
    approve("feed-block-json", feed_json(two));
}

TEST_CASE("a feed that finds no volts, and one on a marked size nobody could confirm, read as approved") {
    approve("feed-no-volts-100", feed_text(report(Awg{16}, {{watts(3000), std::nullopt}}), wide));
    approve("feed-no-volts-json", feed_json(report(Awg{16}, {{watts(3000), std::nullopt}})));
    approve("feed-marked-100", feed_text(report(*find_sae_size("8"), {{amps(30), std::nullopt}}), wide));
}
