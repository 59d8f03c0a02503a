// Which sizes of feed cable are there? Areas of ASTM B258 (4 AWG 21.15 mm^2, 1/0 53.49 mm^2) and of SAE J1127 as a
// cable-trade page gives them (37 360 circular mils for size 4), beside each other.
#include <catch2/catch.hpp>

#include <algorithm>

#include "arbitrary.h"

using namespace tapbook;

TEST_CASE("AWG areas are those of ASTM B258") {
    CHECK(cross_section(Awg{4}).in(square_millimetres) == Approx(21.15).margin(0.005));
    CHECK(cross_section(Awg{0}).in(square_millimetres) == Approx(53.49).margin(0.02));
}

TEST_CASE("a size marked SAE holds less copper, loses more and carries less than the AWG size of its number") {
    for (const SaeSize& marked : sae_sizes()) {
        const Awg same = *parse_awg(marked.marked);
        CHECK(cross_section(marked) < cross_section(same));
        CHECK(cable_resistance(marked, Metal::copper).per_metre > cable_resistance(same, Metal::copper).per_metre);
        CHECK(system_of(marked) == SizeSystem::sae);
        const auto carried = cable_ampacity(marked, {});
        if (carried) CHECK(carried->allowed < cable_ampacity(same, {})->allowed);
    }
    CHECK(cross_section(*find_sae_size("4")).in(square_millimetres) == Approx(18.93).margin(0.005));
}

TEST_CASE("every list that is sold rises, has one system, and every size of it may carry some amps") {
    for (const auto& [system, word] : words_of<SizeSystem>()) {
        const auto sizes = sold_sizes(system);
        CHECK(sizes.size() >= 10);
        CHECK(std::ranges::is_sorted(sizes, {}, cross_section));
        for (const CableSize& size : sizes) {
            CHECK(system_of(size) == system);
            CHECK(cable_ampacity(size, {}).has_value());
        }
    }
}
