// Which sizes of supply cable are there, how thick are they and what do they cost in ohms? AWG, metric and SAE sizes
// side by side; a size marked SAE has less copper than the AWG size of the same number and never passes for it.
// Sources: conductor.h for AWG and metric, ampacity.h for SAE and for the amps a size may carry.
#pragma once

#include <optional>
#include <span>
#include <variant>

#include "electrical/ampacity.h"
#include "electrical/conductor.h"
#include "electrical/named.h"

namespace tapbook {

enum class SizeSystem { awg, metric, sae };

template <>
struct NamedValues<SizeSystem> {
    static constexpr Named<SizeSystem> all[] = {
        {SizeSystem::awg, "awg"}, {SizeSystem::metric, "metric"}, {SizeSystem::sae, "sae"}};
};

// AWG, nominal area of metric cable, or a size marked SAE.
using CableSize = std::variant<Awg, SquareMillimetres, SaeSize>;

SizeSystem system_of(const CableSize& size);

// Cross-section: of the solid conductor (AWG), nominal (metric), least (SAE).
SquareMillimetres cross_section(const CableSize& size);

// Ohms per metre. SAE sizes are computed from their least area as unprinted metric ones are.
CableResistance cable_resistance(const CableSize& size, Metal metal, Celsius temperature = celsius(20));

// Amps it may carry; absent below 18 AWG.
std::optional<Ampacity> cable_ampacity(const CableSize& size, const CableConditions& conditions);

// The sizes feed cable is sold in, thinnest first: 16 AWG to 4/0, 1.5 to 120 mm^2, SAE 16 to 4/0. Practice.
std::span<const CableSize> sold_sizes(SizeSystem system);

}  // namespace tapbook
