// The dead steps, with the way out of and back to power. Source: common practice; the waiting time is the vehicle's own
// where it is recorded, and the published "up to 5 minutes" (NHTSA interim guidance for responders) where it is not.
#include <fmt/format.h>

#include <algorithm>

#include "rules/plan_steps.h"

namespace tapbook {
namespace {

bool has(const std::vector<Hazard>& hazards, Hazard wanted) {
    return std::find(hazards.begin(), hazards.end(), wanted) != hazards.end();
}

std::string wait_words(const Vehicle& car) {
    if (car.airbag_wait_s)
        return fmt::format("wait {} s before any air-bag connector is opened ({})", *car.airbag_wait_s,
                           car.airbag_wait_source);
    return "wait before any air-bag connector is opened: this car's own time is not recorded, read it in its "
           "instructions (published guidance: air bags may stay active up to 5 minutes)";
}

std::string join_words(const JobPlanAnswer& plan) {
    const std::string others =
        plan.other_pairs.empty() ? std::string() : fmt::format("; the same at {}", fmt::join(plan.other_pairs, ", "));
    const std::string& lead = plan.tap.tap.tap.plug_in_lead;
    if (!lead.empty()) return fmt::format("join with the plug-in lead ({}): nothing is stripped{}", lead, others);
    return "join: take the terminal out of its cavity, solder or crimp, push back, check the lock; else on the uncut "
           "conductor; no piercing clips" +
           others;
}

std::string size_in_words(const CableSize& size) {
    const std::string text = cable_size_text(size);
    return system_of(size) == SizeSystem::awg ? text + " AWG" : text;
}

PlanStep feed_step(const JobPlanAnswer& plan) {
    PlanStep step{PowerPhase::dead_work, "", {}, {}, "feed", {"wait"}};
    const auto& feed = plan.install.feed;
    if (!feed) {
        step.what =
            "run the feed cable with the fuse holder within 450 mm (18 in) of the battery post along the cable, "
            "no fuse in it";
    } else {
        const auto& fuse = feed->report.answer.main_fuse.fuse;
        step.what = fmt::format(
            "run the feed: {}, {:g} m, holder for {} within 450 mm (18 in) of the battery post along "
            "the cable, no fuse in it",
            size_in_words(feed->report.feed.main.size), feed->length.in(metres),
            fuse && fuse->rating ? fmt::format("a {:g} A fuse", fuse->rating->in(amps)) : std::string("the fuse"));
    }
    step.cautions.push_back({"route",
                             "grommet every hole, clear of pedals, steering, exhaust, air bags and orange "
                             "cables; look behind before you drill"});
    if (has(plan.vehicle.hazards, Hazard::battery_in_cabin))
        step.cautions.push_back(caution_of(Hazard::battery_in_cabin));
    for (const auto& finding : plan.install.feed_findings)
        if (finding.effect == Effect::stop || finding.effect == Effect::care)
            step.cautions.push_back({std::string(word_of(finding.effect)), finding.says});
    return step;
}

PlanStep ground_step(const JobPlanAnswer& plan) {
    PlanStep step{
        PowerPhase::dead_work,
        plan.vehicle.battery_sensor == true
            ? "ground the amplifier on bare, clean steel, short, as thick as the feed; nothing on the battery's "
              "negative post: its current sensor must see every ampere"
            : "ground the amplifier on bare, clean steel, short, as thick as the feed",
        {},
        {},
        "ground",
        {"wait"}};
    step.cautions.push_back({"never ground to",
                             "seat-belt or seat bolts, air-bag or sensor grounds, fuel, brake or "
                             "steering parts, bonded or aluminium panels"});
    return step;
}

std::string turn_on_words(const TurnOnFacts& facts) {
    switch (facts.kind) {
        case TurnOnKind::own_input:
            return "turn-on: the amplifier wakes by itself on its speaker-level input; set its switch so";
        case TurnOnKind::converter:
            return "turn-on: from the converter to the amplifier";
        case TurnOnKind::existing_lead:
            return fmt::format("turn-on: from {}, the lead that wakes the factory amplifier",
                               path_tail(facts.code, system_depth));
        case TurnOnKind::accessory:
        case TurnOnKind::ignition:
        case TurnOnKind::other:
            return fmt::format(
                "turn-on: from {} behind a fuse tap, both fuses fed from the live side, their sum within "
                "what the slot carries",
                path_tail(facts.code, system_depth));
    }
    return {};
}

PlanStep turn_on_step(const JobPlanAnswer& plan) {
    PlanStep step{
        PowerPhase::dead_work, "turn-on: no source is recorded; find and meter one, behind a fuse", {}, {}, "turn-on",
        {"place amplifier"}};
    const JudgedTurnOn* chosen = planned_turn_on(plan.install);
    if (chosen == nullptr) {
        step.cautions.push_back({"turn-on",
                                 "never from a circuit that protects air bags, brakes, steering, engine, "
                                 "fuel, lamps, doors or the emergency call, nor from data, microphone or "
                                 "antenna leads"});
        return step;
    }
    step.what = turn_on_words(chosen->facts);
    if (chosen->facts.current.carried == false && chosen->facts.current.relay_carried)
        step.what += ", over a relay with a diode across its coil";
    if (chosen->facts.tap) step.needs.push_back("read turn-on");
    for (const auto& finding : chosen->findings)
        if (finding.effect == Effect::stop || finding.effect == Effect::care)
            step.cautions.push_back({std::string(word_of(finding.effect)), finding.says});
    return step;
}

// "4 ohm on each output", "4//4 = 2 ohm on each output, bridged".
std::string load_words(const Install& install) {
    const std::string sum = fmt::format("{:g}", install.load->load.load.in(ohms));
    const std::string written = install.ask.load_words;
    return fmt::format("{}{} ohm on each output{}", written.empty() || written == sum ? "" : written + " = ", sum,
                       install.ask.bridged ? ", bridged" : "");
}

// A part without a supply of its own has no ground: grounding it would tie the factory's outputs to the chassis.
std::string converter_words(const JudgedCandidate& part) {
    const std::string place = fmt::format("place {} {} near the tap, twist the pair", part.maker, part.name);
    switch (part.topology) {
        case Topology::direct:
            return "the amplifier's own speaker-level input takes the pair: no converter";
        case Topology::transformer:
        case Topology::resistive:
            return place + "; it has no supply: nothing of it goes to the chassis";
        case Topology::active_line_level:
        case Topology::active_speaker_level:
            return place + "; its own fused 12 V as its maker says, its ground on bare clean steel";
    }
    return place;
}

PlanStep load_step(const JobPlanAnswer& plan) {
    const Install& install = plan.install;
    PlanStep step{PowerPhase::dead_work,
                  install.load ? "wire the speakers: " + load_words(install)
                               : std::string("wire the speakers; no load below what the amplifier prints"),
                  {},
                  {},
                  "speakers",
                  {"place amplifier"}};
    for (const auto& finding : install.load_findings)
        if (finding.effect == Effect::stop || finding.effect == Effect::care)
            step.cautions.push_back({std::string(word_of(finding.effect)), finding.says});
    if (install.resistor)
        step.cautions.push_back(
            {"where a speaker is removed",
             fmt::format("the radio watches it: put {:g} ohm, {:.0f} W across the pair, on metal, away from trim",
                         install.resistor->resistance.in(ohms), install.resistor->power.in(watts))});
    return step;
}

}  // namespace

Caution caution_of(Hazard hazard) {
    const auto text = hazard_text(hazard);
    return {std::string(text.title), std::string(text.caution)};
}

void add_power_off(const JobPlanAnswer& plan, std::vector<PlanStep>& steps) {
    const Vehicle& car = plan.vehicle;
    constexpr auto phase = PowerPhase::power_off;
    steps.push_back({phase,
                     "key out; open by hand what must stay open; charging plug out; modules asleep; battery negative "
                     "off; no memory keeper",
                     {},
                     {},
                     "negative off",
                     {"read", "corner", "polarity", "read turn-on"}});
    PlanStep wait{phase, wait_words(car), {}, {}, "wait", {"negative off"}, Airbags::may_open};
    for (const Hazard hazard : car.hazards) wait.cautions.push_back(caution_of(hazard));
    if (car.high_voltage == true && !has(car.hazards, Hazard::high_voltage))
        wait.cautions.push_back(caution_of(Hazard::high_voltage));
    if (car.has_48v == true && !has(car.hazards, Hazard::circuit_48v))
        wait.cautions.push_back(caution_of(Hazard::circuit_48v));
    for (const auto& words : car.cautions) wait.cautions.push_back({"this car", words});
    steps.push_back(std::move(wait));
}

void add_dead_work(const JobPlanAnswer& plan, std::vector<PlanStep>& steps) {
    constexpr auto phase = PowerPhase::dead_work;
    PlanStep join{phase, join_words(plan), {}, {}, "join", {"wait", "read", "polarity"}};
    join.cautions.push_back({"before you join", "only where this job's readings say it is the pair"});
    for (const auto& finding : plan.part.findings)
        if (finding.effect == Effect::care) join.cautions.push_back({"care", finding.says});
    steps.push_back(std::move(join));
    steps.push_back({phase, converter_words(plan.part), {}, {}, "place converter", {"join"}});
    const std::string amplifier = plan.amplifier ? fmt::format("{} {}", plan.amplifier->maker, plan.amplifier->name)
                                                 : std::string("the amplifier");
    steps.push_back({phase,
                     fmt::format("place {}, not on the subwoofer's box; its main fuse stays out", amplifier),
                     {},
                     {},
                     "place amplifier",
                     {"wait"}});
    steps.push_back(ground_step(plan));
    steps.push_back(feed_step(plan));
    steps.push_back(turn_on_step(plan));
    steps.push_back(load_step(plan));
}

void add_power_on(const JobPlanAnswer& plan, std::vector<PlanStep>& steps) {
    constexpr auto phase = PowerPhase::power_on;
    const auto& hazards = plan.tap.tap.tap.hazards;
    steps.push_back({phase,
                     has(hazards, Hazard::airbag_connector) || has(hazards, Hazard::seat_occupancy_mat)
                         ? "air-bag connectors mated, seats bolted and plugged in, then battery negative on"
                         : "every connector mated, then battery negative on",
                     {},
                     {},
                     "negative on",
                     {"join", "place converter", "place amplifier", "ground", "feed", "turn-on", "speakers"},
                     Airbags::mated});
    const auto& feed = plan.install.feed;
    const auto rating =
        feed && feed->report.answer.main_fuse.fuse ? feed->report.answer.main_fuse.fuse->rating : std::optional<Amps>();
    steps.push_back({phase,
                     rating ? fmt::format("main fuse of the amplifier last: {:g} A", rating->in(amps))
                            : std::string("main fuse of the amplifier last"),
                     {},
                     {},
                     "main fuse",
                     {"negative on"}});
}

std::vector<PlanStep> plan_steps(const JobPlanAnswer& plan, const TapSignal& signal, Hertz lowest) {
    std::vector<PlanStep> steps;
    add_live_check(plan, signal, lowest, steps);
    add_power_off(plan, steps);
    add_dead_work(plan, steps);
    add_power_on(plan, steps);
    add_final_check(plan, steps);
    return steps;
}

}  // namespace tapbook
