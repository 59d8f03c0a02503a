// The facts of the plan, each from the value that was judged: nothing is worked out here.
#include <fmt/format.h>

#include "report/feed_report.h"
#include "report/sheet_words.h"

namespace tapbook {
namespace {

std::string volts_words(const std::optional<RmsVolts>& volts) {
    return volts ? fmt::format("{:.1f}", volts->in(rms_volts)) : std::string("?");
}

SheetFact tap_fact(const JobPlanAnswer& plan) {
    SheetFact fact{"tap", std::string(place_in_job(plan.plan.tap))};
    fact.rests_on.push_back(place_words(plan.tap.tap));
    if (!plan.tap.tap.tap.plug_in_lead.empty())
        fact.rests_on.push_back(fmt::format("{} plugs in between, nothing is stripped", plan.tap.tap.tap.plug_in_lead));
    return fact;
}

SheetFact pair_fact(const JobPlanAnswer& plan) {
    const TapFacts& tap = plan.tap.tap;
    return {"pair", circuit_words(tap), conductors_of(tap.pair), grade_lines(tap)};
}

// One for each further pair that is joined, with the conductors as the plan has them.
std::vector<SheetFact> other_pair_facts(const JobPlanAnswer& plan) {
    std::vector<SheetFact> facts;
    std::string tap = plan.plan.tap;
    for (const auto& one : plan.conductors) {
        if (one.tap == plan.plan.tap || one.use == "turn-on") continue;
        if (one.tap != tap) facts.push_back({"pair", std::string(place_in_job(one.tap))});
        tap = one.tap;
        facts.back().conductors.push_back({one.use, one.colour, "not recorded", one.cavity});
    }
    return facts;
}

SheetFact signal_fact(const JobPlanAnswer& plan) {
    const auto& clean = plan.tap.signal.clean;
    const PairStanding& pair = plan.tap.tap.pair;
    const std::string drive = pair.drive.value.value_or(std::string(word_of(plan.tap.tap.circuit.output.drive)));
    SheetFact fact{"signal", fmt::format("{} / {} / {} V", volts_words(clean.low), volts_words(clean.likely),
                                         volts_words(clean.high))};
    fact.rests_on.push_back(fmt::format("clean RMS, low / likely / high, {}; drive {} ({})",
                                        spaced(word_of(plan.tap.signal.source)), spaced(drive),
                                        pair.drive.value ? word_of(pair.drive.grade) : "expected"));
    return fact;
}

SheetFact converter_fact(const JobPlanAnswer& plan) {
    const JudgedCandidate& part = plan.part;
    SheetFact fact{"converter", ""};
    if (part.converter == "direct")
        fact.value = "none: the amplifier's own speaker-level input";
    else
        fact.value = fmt::format("{} {}, {}", part.maker, part.name, spaced(word_of(part.topology)));
    fact.verdict = part.verdict;
    std::string numbers = "lowest note not said";
    if (const auto& lowest = plan.plan.lowest_mhz)
        numbers = fmt::format("lowest note {:g} Hz", static_cast<double>(*lowest) / 1000);
    if (part.headroom) numbers += fmt::format(", headroom {:+.1f} dB", part.headroom->in(decibels));
    if (part.drive_margin) numbers += fmt::format(", drive margin {:+.1f} dB", part.drive_margin->in(decibels));
    fact.rests_on.push_back(numbers);
    return fact;
}

SheetFact amplifier_fact(const JobPlanAnswer& plan) {
    SheetFact fact{"amplifier", ""};
    if (!plan.amplifier) {
        fact.value = "not chosen";
        return fact;
    }
    fact.value = fmt::format("{} {}", plan.amplifier->maker, plan.amplifier->name);
    if (const auto& reachable = plan.part.reachable)
        fact.rests_on.push_back(
            fmt::format("reaches {:.0f} W with this part at the likely volts", reachable->in(watts)));
    return fact;
}

SheetFact load_fact(const LoadFacts& load, const std::string& words) {
    const std::string sum = fmt::format("{:g}", load.load.load.in(ohms));
    SheetFact fact{"load", fmt::format("{} ohm{}{}", sum, load.load.bridged ? ", bridged" : "",
                                       words.empty() || words == sum ? "" : fmt::format(" ({})", words))};
    if (load.load.least)
        fact.rests_on.push_back(fmt::format("{} the least load of the amplifier, {:g} ohm",
                                            load.load.allowed.value_or(true) ? "not below" : "BELOW",
                                            load.load.least->in(ohms)));
    return fact;
}

std::string turn_on_words(const TurnOnFacts& facts) {
    switch (facts.kind) {
        case TurnOnKind::own_input:
            return "none: the amplifier wakes on its own input";
        case TurnOnKind::converter:
            return "made by the converter";
        case TurnOnKind::existing_lead:
        case TurnOnKind::accessory:
        case TurnOnKind::ignition:
        case TurnOnKind::other:
            return fmt::format("{}: {}", spaced(word_of(facts.kind)), place_in_job(facts.code));
    }
    return {};
}

SheetFact turn_on_fact(const JudgedTurnOn& judged) {
    const TurnOnFacts& facts = judged.facts;
    SheetFact fact{"turn-on", turn_on_words(facts)};
    fact.verdict = judged.verdict;
    if (facts.tap) {
        fact.conductors = conductor_of(facts.tap->switched);
        fact.rests_on = grade_lines(*facts.tap);
    }
    if (facts.current.loads && facts.kind != TurnOnKind::own_input)
        fact.rests_on.push_back(fmt::format("{:.0f} mA of {:.0f} mA{}", facts.current.loads->in(milliamps),
                                            facts.current.limit.in(milliamps),
                                            facts.current.limit_assumed ? " (limit not stated: assumed)" : ""));
    return fact;
}

std::string fuse_words(const JudgedFuse& judged) {
    if (!judged.fuse || !judged.fuse->rating) return "no fuse fits this cable";
    return fmt::format("{:g} A fuse within {:.0f} mm of the battery", judged.fuse->rating->in(amps),
                       fuse_within_trade.in(millimetres));
}

SheetFact feed_fact(const FeedFacts& feed) {
    const FeedReport& report = feed.report;
    SheetFact fact{"feed",
                   fmt::format("{} {}, {:.1f} m; {}", size_words(report.feed.main.size),
                               report.feed.conditions.metal == Metal::copper ? "copper" : "copper-clad aluminium",
                               feed.length.in(metres), fuse_words(report.answer.main_fuse))};
    const auto drop = worst_drop(report.answer);
    fact.rests_on.push_back(fmt::format("{}: {}, {:.0f} A at full power", spaced(word_of(report.answer.grade)),
                                        drop ? fmt::format("{:.1f} % lost on the way out and back", drop->in(percent))
                                             : std::string("no volts reach it"),
                                        report.answer.total.in(amps)));
    return fact;
}

SheetFact gain_fact(const Install& install) {
    SheetFact fact{"gain", fmt::format("{:.1f} V at the amplifier's output", install.gain_target->in(rms_volts))};
    std::string words = "tone at full scale (0 dBFS), speaker disconnected, boost off";
    if (install.gain_power && install.gain_load)
        words = fmt::format("{:.0f} W into {:g} ohm; {}", install.gain_power->in(watts), install.gain_load->in(ohms),
                            words);
    fact.rests_on.push_back(words);
    return fact;
}

SheetFact standing_fact(const StandingTime& standing) {
    SheetFact fact{"standing", fmt::format("{:.0f} days, before {:.0f}", standing.after.in(seconds) / 86400,
                                           standing.before.in(seconds) / 86400)};
    fact.rests_on.push_back(
        fmt::format("{:.0f} Ah{}, {:.0f} mA of the car assumed, {:.0f} mA added{}", standing.capacity.in(amp_hours),
                    standing.from_reserve ? " from the reserve minutes" : "", standing.base.in(milliamps),
                    standing.added.in(milliamps), standing.added_known ? "" : " (not all stated)"));
    return fact;
}

}  // namespace

std::vector<SheetFact> sheet_facts(const Sheet& sheet) {
    const JobPlanAnswer& plan = sheet.plan;
    const Install& install = plan.install;
    if (!has_plan(sheet)) return {};
    std::vector<SheetFact> facts = {tap_fact(plan), pair_fact(plan)};
    for (auto& fact : other_pair_facts(plan)) facts.push_back(std::move(fact));
    for (auto& fact : {signal_fact(plan), converter_fact(plan), amplifier_fact(plan)}) facts.push_back(fact);
    if (install.load) facts.push_back(load_fact(*install.load, install.ask.load_words));
    if (const JudgedTurnOn* turn_on = planned_turn_on(install)) facts.push_back(turn_on_fact(*turn_on));
    if (install.feed) facts.push_back(feed_fact(*install.feed));
    if (!install.feed && !install.feed_missing.empty())
        facts.push_back({"feed", "not judged", {}, {install.feed_missing}});
    if (install.gain_target) facts.push_back(gain_fact(install));
    if (install.plan.standing) facts.push_back(standing_fact(*install.plan.standing));
    return facts;
}

bool has_plan(const Sheet& sheet) {
    return !sheet.plan.plan.tap.empty();
}

}  // namespace tapbook
