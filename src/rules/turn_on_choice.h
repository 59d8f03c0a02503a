// What can wake the amplifier on this car, and which of it is best? Every source is listed, the refused ones too: the
// rules about the turn-on say what speaks against each.
#pragma once

#include <string>
#include <vector>

#include "rules/install.h"
#include "rules/rule_book.h"

namespace tapbook {

// In this order: the amplifier's own speaker-level input, when it is the part (`direct`) and is not known to make no
// turn-on; the converter's own, when it has one and is not `direct`; then every turn-on lead and switched power circuit
// of the sound system `system` in path order, once for each tap point. What is constant, illumination or data is no
// turn-on. Without an amplifier (nullptr) its current is not known.
std::vector<TurnOnFacts> turn_on_sources(const CarFacts& car, const std::string& system, const ConverterSpec* converter,
                                         bool direct, const AmplifierSpec* amplifier);

// Each source held against the rules about turn_on, `base` being the rest of the candidate. Best first: verdict, fewer
// cares, the order of TurnOnKind, code.
std::vector<JudgedTurnOn> judge_turn_ons(std::vector<TurnOnFacts> sources, const Candidate& base, RuleBook& rules);

}  // namespace tapbook
