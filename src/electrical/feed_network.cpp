// The volts of a feed. Method in the header.
#include "electrical/feed_network.h"

#include <cmath>

namespace tapbook {
namespace {

constexpr int most_steps = 200;
constexpr double close_enough = 1e-13;  // of the supply

// What is drawn at some volts of the block, and how that changes per volt.
struct Drawn {
    double amps = 0;
    double amps_per_volt = 0;
};

std::optional<double> volts_at_power(double from, double power, double ohm) {
    const double root = from * from - 4 * power * ohm;
    if (from <= 0 || root < 0) return std::nullopt;
    return (from + std::sqrt(root)) / 2;
}

std::optional<double> volts_at_limb(const FeedLimb& limb, double block) {
    const double ohm = limb.resistance.in(ohms);
    if (const Watts* power = std::get_if<Watts>(&limb.draw)) return volts_at_power(block, power->in(watts), ohm);
    const double left = block - std::get<Amps>(limb.draw).in(amps)*ohm;
    return left > 0 ? std::optional(left) : std::nullopt;
}

std::optional<Drawn> drawn_by(const FeedLimb& limb, double block) {
    const auto volts = volts_at_limb(limb, block);
    if (!volts) return std::nullopt;
    if (const Amps* current = std::get_if<Amps>(&limb.draw)) return Drawn{current->in(amps), 0};
    const double power = std::get<Watts>(limb.draw).in(watts);
    const double current = power / *volts;
    // V = block - I R and I = P / V give dI/dblock = -I / (V - I R).
    const double margin = *volts - current * limb.resistance.in(ohms);
    if (margin <= 0) return std::nullopt;  // at the limb's own limit the slope has no end
    return Drawn{current, -current / margin};
}

std::optional<Drawn> drawn_by_all(const FeedNetwork& network, double block) {
    Drawn sum;
    for (const FeedLimb& limb : network.limbs) {
        const auto one = drawn_by(limb, block);
        if (!one) return std::nullopt;
        sum.amps += one->amps;
        sum.amps_per_volt += one->amps_per_volt;
    }
    return sum;
}

std::optional<double> block_of_several(const FeedNetwork& network) {
    const double supply = network.supply.in(dc_volts), shared = network.shared.in(ohms);
    double block = supply;
    for (int step = 0; step < most_steps; ++step) {
        const auto drawn = drawn_by_all(network, block);
        if (!drawn) return std::nullopt;
        const double slope = 1 + shared * drawn->amps_per_volt;
        if (slope <= 0) return std::nullopt;
        const double next = block - (block + shared * drawn->amps - supply) / slope;
        if (std::abs(block - next) <= close_enough * supply) return next;
        block = next;
    }
    return std::nullopt;
}

// One amplifier has a closed form: all its ohms are in one row.
std::optional<double> block_of_one(const FeedNetwork& network) {
    const FeedLimb& limb = network.limbs.front();
    const FeedLimb whole{network.shared + limb.resistance, limb.draw};
    const double supply = network.supply.in(dc_volts);
    const auto volts = volts_at_limb(whole, supply);
    if (!volts) return std::nullopt;
    const Watts* power = std::get_if<Watts>(&limb.draw);
    const double current = power ? power->in(watts) / *volts : std::get<Amps>(limb.draw).in(amps);
    return *volts + current * limb.resistance.in(ohms);
}

}  // namespace

std::optional<FeedState> settle(const FeedNetwork& network) {
    const bool one = network.limbs.size() == 1;
    const auto block = one ? block_of_one(network) : block_of_several(network);
    if (!block || *block <= 0) return std::nullopt;
    FeedState state{dc_volts(*block), amps(0), {}};
    for (const FeedLimb& limb : network.limbs) {
        const auto volts = volts_at_limb(limb, *block);
        if (!volts) return std::nullopt;
        const Watts* power = std::get_if<Watts>(&limb.draw);
        const Amps current = power ? amps(power->in(watts) / *volts) : std::get<Amps>(limb.draw);
        state.limbs.push_back({dc_volts(*volts), current});
        state.total = state.total + current;
    }
    return state;
}

Ohms most_resistance(DcVolts supply, Watts power) {
    const double volts = supply.in(dc_volts);
    return ohms(volts * volts / (4 * power.in(watts)));
}

}  // namespace tapbook
