// The live steps: what is read before power goes off, and what is checked when it is back. Source: common practice; the
// bounds of a switched circuit are those of its classes (live: 6 V or more).
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "rules/plan_steps.h"

namespace tapbook {
namespace {

constexpr double bass_tone_hz = 50;

std::string reach_words(const TapPoint& tap) {
    std::string text = fmt::format("reach {}", tap.place.empty() ? std::string("the tap") : tap.place);
    for (std::size_t i = 0; i < tap.panels.size(); ++i) text += (i == 0 ? ": off comes " : ", then ") + tap.panels[i];
    if (tap.minutes) text += fmt::format(" (about {} min)", *tap.minutes);
    return text;
}

MillivoltRange switched_range(std::optional<bool> live) {
    if (!live) return {};
    return *live ? MillivoltRange{11000, 12600, 15000} : MillivoltRange{0, 0, 1000};
}

std::optional<bool> is_live_at(std::optional<SwitchedClass> live, int position) {
    if (!live) return std::nullopt;
    switch (*live) {
        case SwitchedClass::constant:
            return true;
        case SwitchedClass::accessory:
            return position == 0 ? std::optional(false) : position == 3 ? std::nullopt : std::optional(true);
        case SwitchedClass::ignition:
            return position == 2;
        case SwitchedClass::with_crank:
            return position >= 2;
        case SwitchedClass::other:
            return std::nullopt;
    }
    return std::nullopt;
}

std::vector<PredictedReading> switched_readings(const TapFacts& tap) {
    constexpr const char* fields[] = {"key_off_v", "accessory_v", "run_v", "crank_v"};
    constexpr const char* stored[] = {"key_off_mv", "accessory_mv", "run_mv", "crank_mv"};
    constexpr const char* what[] = {"key off, doors shut, after the modules sleep", "key in accessory",
                                    "key in run, engine off", "while the engine cranks"};
    std::vector<PredictedReading> list;
    for (int i = 0; i < 4; ++i)
        list.push_back({fields[i], stored[i], what[i], switched_range(is_live_at(tap.switched.live, i)),
                        tap.switched.live ? fmt::format("noted as {}", word_of(*tap.switched.live)) : std::string()});
    return list;
}

}  // namespace

void add_live_check(const JobPlanAnswer& plan, const TapSignal& signal, Hertz lowest, std::vector<PlanStep>& steps) {
    const TapPoint& tap = plan.tap.tap.tap;
    constexpr auto phase = PowerPhase::live_check;
    steps.push_back(
        {phase,
         plan.job.number == 0
             ? std::string("fill the list as it came with the customer, initials under it")
             : fmt::format("fill the list as it came with the customer, initials under it (tapbook job came {})",
                           plan.job.number),
         {},
         {},
         "came",
         {},
         Airbags::mated});
    PlanStep reach{phase, reach_words(tap), {}, {}, "reach", {"came"}};
    for (const Hazard hazard : tap.hazards) reach.cautions.push_back(caution_of(hazard));
    if (!tap.hazards_listed && tap.hazards.empty())
        reach.cautions.push_back({"hazards on the way", "nobody has listed any, which does not mean none"});
    steps.push_back(std::move(reach));
    const Hertz tone = hertz(std::max(bass_tone_hz, lowest.in(hertz)));
    steps.push_back({phase,
                     "every air-bag connector mated: take the readings at the tap, in this order",
                     {{"scope", "never its ground clip on a speaker conductor or amplifier output"}},
                     predicted_readings(signal, effective_output(plan.tap.tap), tone, dbfs(0)),
                     "read",
                     {"reach"}});
    steps.push_back({phase,
                     "balance and fader to this corner: the reading stays; to the other side: nothing is left",
                     {},
                     {},
                     "corner",
                     {"read"}});
    steps.push_back(
        {phase, "polarity: scope or phase check with a tone; a meter cannot show it", {}, {}, "polarity", {"read"}});
    const JudgedTurnOn* turn_on = planned_turn_on(plan.install);
    if (turn_on != nullptr && turn_on->facts.tap)
        steps.push_back({phase,
                         fmt::format("turn-on: read {} to chassis in each position of the key",
                                     path_tail(turn_on->facts.code, system_depth)),
                         {},
                         switched_readings(*turn_on->facts.tap),
                         "read turn-on",
                         {"came"}});
    if (!plan.install.ask.length)
        steps.push_back({phase,
                         "measure the way of the feed cable from the battery to the amplifier on the car, with slack, "
                         "before any cable is cut",
                         {},
                         {},
                         "measure",
                         {"came"}});
}

void add_final_check(const JobPlanAnswer& plan, std::vector<PlanStep>& steps) {
    constexpr auto phase = PowerPhase::final_check;
    const Install& install = plan.install;
    PlanStep gain{phase,  "set the gain by the meter (tapbook gain), speaker disconnected, boost off, filters as used",
                  {},     {},
                  "gain", {"main fuse"}};
    if (install.gain_target && install.gain_power && install.gain_load)
        gain.what = fmt::format(
            "set the gain: {:.1f} V at the amplifier's output with a 0 dB tone ({:.0f} W into {:g} ohm), speaker "
            "disconnected, engine running, boost off, remote level knob fully up",
            install.gain_target->in(rms_volts), install.gain_power->in(watts), install.gain_load->in(ohms));
    steps.push_back(std::move(gain));
    steps.push_back(
        {phase, "functions and lamps as on the list; drain once the modules sleep", {}, {}, "functions", {"gain"}});
    steps.push_back(
        {phase,
         plan.job.number == 0
             ? std::string("fill the list as it left")
             : fmt::format("fill the list as it left and close (tapbook job close {} --outcome fine)", plan.job.number),
         {},
         {},
         "left",
         {"functions"}});
}

}  // namespace tapbook
