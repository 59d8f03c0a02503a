// Sizes of supply cable. See feed_size.h.
#include "electrical/feed_size.h"

#include <vector>

namespace tapbook {

static_assert(table_is_sound<SizeSystem>());

namespace {

constexpr CableSize sold_awg[] = {Awg{16}, Awg{14}, Awg{12}, Awg{10}, Awg{8}, Awg{6},
                                  Awg{4},  Awg{2},  Awg{0},  Awg{-1}, Awg{-3}};

constexpr CableSize sold_metric[] = {square_millimetres(1.5), square_millimetres(2.5), square_millimetres(4),
                                     square_millimetres(6),   square_millimetres(10),  square_millimetres(16),
                                     square_millimetres(25),  square_millimetres(35),  square_millimetres(50),
                                     square_millimetres(70),  square_millimetres(95),  square_millimetres(120)};

// SAE 18 is left out: too thin for a feed of either system.
std::span<const CableSize> sold_sae() {
    static const std::vector<CableSize> sizes(sae_sizes().begin() + 1, sae_sizes().end());
    return sizes;
}

}  // namespace

SizeSystem system_of(const CableSize& size) {
    if (std::holds_alternative<Awg>(size)) return SizeSystem::awg;
    return std::holds_alternative<SaeSize>(size) ? SizeSystem::sae : SizeSystem::metric;
}

SquareMillimetres cross_section(const CableSize& size) {
    if (const Awg* gauge = std::get_if<Awg>(&size)) return area(*gauge);
    if (const SaeSize* marked = std::get_if<SaeSize>(&size)) return marked->least_area;
    return std::get<SquareMillimetres>(size);
}

CableResistance cable_resistance(const CableSize& size, Metal metal, Celsius temperature) {
    if (const Awg* gauge = std::get_if<Awg>(&size)) return resistance(*gauge, temperature, metal);
    return resistance(cross_section(size), temperature, metal);
}

std::optional<Ampacity> cable_ampacity(const CableSize& size, const CableConditions& conditions) {
    if (const Awg* gauge = std::get_if<Awg>(&size)) return ampacity(*gauge, conditions);
    return ampacity(cross_section(size), conditions);
}

std::span<const CableSize> sold_sizes(SizeSystem system) {
    switch (system) {
        case SizeSystem::awg:
            return sold_awg;
        case SizeSystem::metric:
            return sold_metric;
        case SizeSystem::sae:
            return sold_sae();
    }
    return {};  // no enumerator
}

}  // namespace tapbook
