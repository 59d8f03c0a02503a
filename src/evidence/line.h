// How is a standing said in one line to somebody with dirty hands? Who, how, years, against, what to do: at most 110
// characters. Colours are words while they fit, else codes; shops appear as counts only.
#pragma once

#include <cstddef>
#include <string>

#include "evidence/pair_standing.h"
#include "evidence/switched_standing.h"

namespace tapbook {

inline constexpr std::size_t longest_line = 110;

// "ONE CAR - brown/brown, yellow stripe: metered at 1 shop, 2021. Meter before you cut." Positive first; "and" between
// the colours while the polarity is disputed. MIXED says not to cut on it.
std::string standing_line(const PairStanding& standing);

// "PAPER - white positive: only copied or assumed (2 notes). Check it with a tone first."
std::string polarity_line(const PairStanding& standing);

// "ONE CAR - separate amplifier: seen at 1 shop, 2021. Look for it before you choose a part."
std::string premium_line(const Standing& premium);

// "MATCHED - accessory, yellow: metered on 2 cars at 2 shops, 2019-2021, nobody against. Meter before you tap."
std::string switched_line(const SwitchedStanding& standing);

}  // namespace tapbook
