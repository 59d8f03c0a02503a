// Neighbours of a tap, by place and by connector.
#include "rules/surroundings.h"

#include <fmt/format.h>

#include <algorithm>
#include <set>
#include <tuple>

namespace tapbook {
namespace {

bool same_band(const Circuit& a, const Circuit& b) {
    return a.band_low == b.band_low && a.band_high == b.band_high;
}

std::vector<WireColour> conductors_of(const TapFacts& tap) {
    auto conductors = tap.pair.conductors;
    if (conductors.empty() && tap.switched.colour) conductors.push_back(*tap.switched.colour);
    return conductors;
}

std::string place_words(const TapFacts& tap, const TapFacts& other) {
    if (&tap == &other) return "of this pair";
    return fmt::format("of {}", path_tail(path_head(other.code, circuit_depth), system_depth));
}

std::vector<std::string> lookalikes_of(const CarFacts& car, const TapFacts& tap) {
    std::set<std::string> lines;
    for (const TapFacts& other : car.taps) {
        if (other.system != tap.system || other.tap.connector != tap.tap.connector || other.tap.place != tap.tap.place)
            continue;
        const auto theirs = conductors_of(other);
        for (const WireColour& mine : tap.pair.conductors)
            for (const WireColour& their : theirs) {
                const auto why = easily_confused(mine, their);
                if (!why || (&tap == &other && code(mine) > code(their))) continue;
                lines.insert(
                    fmt::format("{} and {} {} {}", words(mine), words(their), place_words(tap, other), word_of(*why)));
            }
    }
    return {lines.begin(), lines.end()};
}

int power_taps_of(const CarFacts& car, const TapFacts& tap) {
    return static_cast<int>(std::count_if(car.taps.begin(), car.taps.end(), [&](const TapFacts& other) {
        const Role role = other.circuit.role;
        return other.system == tap.system && (role == Role::switched_power || role == Role::constant_power);
    }));
}

// The largest loss among the pairs; absent while a delay is not recorded. One pair alone loses nothing.
std::optional<Gain> delay_loss_of(const std::vector<const TapFacts*>& pairs, Hertz lowest) {
    if (pairs.size() < 2) return decibels(0);
    std::optional<Seconds> least, most;
    Hertz meeting = lowest;
    for (const TapFacts* tap : pairs) {
        const auto& delay = tap->circuit.delay;
        if (!delay) return std::nullopt;
        least = least ? std::min(*least, *delay) : *delay;
        most = most ? std::max(*most, *delay) : *delay;
        if (tap->circuit.band_low) meeting = std::max(meeting, *tap->circuit.band_low);
    }
    return delay_loss(meeting, *most - *least);
}

}  // namespace

std::vector<const TapFacts*> pairs_at_place(const CarFacts& car, const TapFacts& tap) {
    std::vector<const TapFacts*> pairs = {&tap};
    for (const TapFacts& other : car.taps) {
        if (!carries_signal(other.circuit.role) || other.system != tap.system || other.tap.place != tap.tap.place)
            continue;
        const bool taken = std::any_of(pairs.begin(), pairs.end(), [&](const TapFacts* p) {
            return path_head(p->code, circuit_depth) == path_head(other.code, circuit_depth);
        });
        if (!taken) pairs.push_back(&other);
    }
    const auto key = [&](const TapFacts* p) {
        return std::tuple(p != &tap, p->circuit.role != tap.circuit.role, !same_band(p->circuit, tap.circuit));
    };
    std::stable_sort(pairs.begin(), pairs.end(), [&](const auto* a, const auto* b) { return key(a) < key(b); });
    return pairs;
}

TapSurroundings surroundings_of(const CarFacts& car, const TapFacts& tap, const std::vector<const TapFacts*>& pairs,
                                Hertz lowest) {
    return {static_cast<int>(pairs.size()), lookalikes_of(car, tap), delay_loss_of(pairs, lowest),
            power_taps_of(car, tap)};
}

}  // namespace tapbook
