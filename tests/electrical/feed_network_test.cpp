// How many volts reach each amplifier? Values worked out outside the project (1000 W at 13.8 V through 20.61 and 8.152
// mohm, and the limit V0^2/4P, with GNU units), Ohm's law and the power law as laws over arbitrary networks, and a slow
// twin that walks the volts of the block down from the supply.
#include <catch2/catch.hpp>

#include <cmath>

#include "arbitrary.h"

using namespace tapbook;

namespace {

std::optional<FeedState> one(double milliohm, Draw draw) {
    return settle({dc_volts(13.8), milliohms(milliohm), {{ohms(0), draw}}});
}

FeedNetwork arbitrary_network(int most_limbs) {
    FeedNetwork network{arbitrary::between(dc_millivolts, 11000, 15000), arbitrary::between(milliohms, 0, 60), {}};
    const int limbs = *rc::gen::inRange(1, most_limbs + 1);
    for (int i = 0; i < limbs; ++i) {
        const Draw draw = *rc::gen::arbitrary<bool>() ? Draw(arbitrary::between(milliwatts, 1000, 2500000))
                                                      : Draw(arbitrary::between(milliamps, 100, 150000));
        network.limbs.push_back({arbitrary::between(milliohms, 0, 30), draw});
    }
    return network;
}

// Amps of all limbs with the block at `block` volts; absent where one finds none.
std::optional<double> amps_at(const FeedNetwork& network, double block) {
    double sum = 0;
    for (const FeedLimb& limb : network.limbs) {
        const double ohm = limb.resistance.in(ohms);
        if (const Amps* current = std::get_if<Amps>(&limb.draw)) {
            if (block <= current->in(amps)*ohm) return std::nullopt;
            sum += current->in(amps);
            continue;
        }
        const double power = std::get<Watts>(limb.draw).in(watts);
        const double root = block * block - 4 * power * ohm;
        if (root < 0) return std::nullopt;
        sum += power / ((block + std::sqrt(root)) / 2);
    }
    return sum;
}

// The first volts of the block, in small steps from the supply, at which the supply suffices.
std::optional<double> block_step_by_step(const FeedNetwork& network, double step) {
    const double supply = network.supply.in(dc_volts);
    for (double block = supply; block > 0; block -= step) {
        const auto current = amps_at(network, block);
        if (!current) return std::nullopt;
        if (block + network.shared.in(ohms) * *current <= supply) return block;
    }
    return std::nullopt;
}

}  // namespace

TEST_CASE("1000 W at 13.8 V find 12.096 V behind 20.61 mohm and 13.182 V behind 8.152 mohm") {
    const auto thin = one(20.61, watts(1000)), thick = one(8.152, watts(1000));
    REQUIRE(thin.has_value());
    REQUIRE(thick.has_value());
    CHECK(thin->limbs[0].volts.in(dc_volts) == Approx(12.0962).margin(1e-4));
    CHECK(thin->total.in(amps) == Approx(82.67).margin(0.005));
    CHECK(thick->limbs[0].volts.in(dc_volts) == Approx(13.1816).margin(1e-4));
    CHECK(thick->total.in(amps) == Approx(75.86).margin(0.005));
}

TEST_CASE("1000 W at 13.8 V find no volts above 47.61 mohm, and half the supply just below") {
    CHECK(most_resistance(dc_volts(13.8), watts(1000)).in(milliohms) == Approx(47.61));
    CHECK_FALSE(one(47.62, watts(1000)).has_value());
    const auto last = one(47.609, watts(1000));
    REQUIRE(last.has_value());
    CHECK(last->limbs[0].volts.in(dc_volts) == Approx(6.9).margin(0.05));
}

TEST_CASE("constant amps lose Ohm's law, and nothing is left when that is more than the supply") {
    CHECK(one(10, amps(72.46))->limbs[0].volts.in(dc_volts) == Approx(13.8 - 0.7246));
    CHECK_FALSE(one(200, amps(72.46)).has_value());
}

TEST_CASE("two equal amplifiers at the block settle where one of twice the power does") {
    const bool holds = rc::check("Newton agrees with the closed form", [] {
        const Watts power = arbitrary::between(milliwatts, 1000, 2000000);
        const Ohms shared = arbitrary::between(milliohms, 0, 60);
        const auto whole = settle({dc_volts(13.8), shared, {{ohms(0), power}}});
        const auto halves = settle({dc_volts(13.8), shared, {{ohms(0), power / 2.0}, {ohms(0), power / 2.0}}});
        RC_ASSERT(whole.has_value() == halves.has_value());
        if (whole) RC_ASSERT(std::abs((whole->block - halves->block).in(dc_volts)) < 1e-6);
    });
    CHECK(holds);
}

TEST_CASE("a settled feed obeys Ohm's law in every cable and the power law in every amplifier") {
    const bool holds = rc::check("laws of a settled feed", [] {
        const FeedNetwork network = arbitrary_network(4);
        const auto state = settle(network);
        if (!state) return;
        double sum = 0;
        for (std::size_t i = 0; i < network.limbs.size(); ++i) {
            const FeedLimb& limb = network.limbs[i];
            const AtLimb& at = state->limbs[i];
            sum += at.current.in(amps);
            const double lost = at.current.in(amps)*limb.resistance.in(ohms);
            RC_ASSERT(std::abs(state->block.in(dc_volts)-lost - at.volts.in(dc_volts)) < 1e-6);
            if (const Watts* power = std::get_if<Watts>(&limb.draw))
                RC_ASSERT(std::abs(at.volts.in(dc_volts)*at.current.in(amps)-power->in(watts)) < 1e-6);
            else
                RC_ASSERT(at.current == std::get<Amps>(limb.draw));
        }
        RC_ASSERT(std::abs(state->total.in(amps)-sum) < 1e-6);
        RC_ASSERT(std::abs(network.supply.in(dc_volts)-network.shared.in(ohms)*sum - state->block.in(dc_volts)) < 1e-6);
    });
    CHECK(holds);
}

TEST_CASE("walking the block down from the supply finds the same volts, and none where there are none") {
    const bool holds = rc::check("slow twin of settle", [] {
        const FeedNetwork network = arbitrary_network(3);
        const auto state = settle(network);
        constexpr double step = 1e-4;
        const auto slow = block_step_by_step(network, step);
        if (slow) {
            RC_ASSERT(state.has_value());
            RC_ASSERT(state->block.in(dc_volts) >= *slow - 1e-9);
            RC_ASSERT(state->block.in(dc_volts) <= *slow + step + 1e-9);
        } else if (state) {
            // The walk can step over two roots that lie within one step of each other, at the very limit only.
            FeedNetwork kinder = network;
            kinder.supply = network.supply - dc_volts(1e-3);
            RC_ASSERT_FALSE(settle(kinder).has_value());
        }
    });
    CHECK(holds);
}

TEST_CASE("more ohms anywhere never give any amplifier more volts") {
    const bool holds = rc::check("settle is monotone in ohms", [] {
        const FeedNetwork network = arbitrary_network(4);
        FeedNetwork worse = network;
        worse.shared = worse.shared + arbitrary::between(milliohms, 0, 5);
        worse.limbs[0].resistance = worse.limbs[0].resistance + arbitrary::between(milliohms, 0, 5);
        const auto before = settle(network), after = settle(worse);
        if (!after) return;
        RC_ASSERT(before.has_value());
        for (std::size_t i = 0; i < network.limbs.size(); ++i)
            RC_ASSERT(after->limbs[i].volts.in(dc_volts) <= before->limbs[i].volts.in(dc_volts) + 1e-9);
    });
    CHECK(holds);
}
