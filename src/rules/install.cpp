// See install.h.
#include "rules/install.h"

namespace tapbook {

InstallAsk ask_of(const JobPlan& plan) {
    InstallAsk ask;
    ask.turn_on = plan.turn_on;
    if (plan.feed_mm) ask.length = millimetres(*plan.feed_mm);
    ask.size = parse_cable_size(plan.feed_size);
    ask.conditions = {plan.feed_metal.value_or(Metal::copper), plan.feed_insulation,
                      plan.feed_in_engine_space ? CablePlace::engine_space : CablePlace::elsewhere};
    const auto load = parse_load(plan.load);
    if (const auto* sum = std::get_if<Ohms>(&load)) ask.load = *sum;
    ask.load_words = plan.load;
    ask.bridged = plan.bridged;
    if (plan.speaker_mw) ask.speaker = milliwatts(*plan.speaker_mw);
    return ask;
}

const JudgedTurnOn* planned_turn_on(const Install& install) {
    if (install.turn_on >= install.turn_ons.size()) return nullptr;
    const JudgedTurnOn& chosen = install.turn_ons[install.turn_on];
    return chosen.verdict == Verdict::no ? nullptr : &chosen;
}

}  // namespace tapbook
