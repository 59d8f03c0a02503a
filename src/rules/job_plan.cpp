// The plan put together: the install judged, the conductors counted, the steps ordered, the whole looked at once more.
#include "rules/job_plan.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <set>

#include "rules/judge_install.h"
#include "rules/plan_order.h"
#include "rules/plan_steps.h"

namespace tapbook {
namespace {

std::string settled_text(const Standing& standing) {
    return standing.value.value_or("");
}

// A conductor, and which wire of the car it is.
struct Wire {
    PlannedConductor conductor;
    std::string identity;
    bool is_shared = false;  // the one minus of several speakers: joined once for all of them
};

// The cavity says which wire it is where it is known, else the colour with its second mark; of a pair whose conductors
// look alike each is its own, and so is a wire of which nothing is known.
Wire wire(const TapFacts& tap, std::string use, std::string cavity, std::optional<WireColour> colour,
          std::string_view mark, bool looks_alike) {
    std::string identity = tap.tap.place + '\n' + tap.tap.connector + '\n';
    if (!cavity.empty())
        identity += "cavity\n" + cavity;
    else if (colour && !looks_alike)
        identity += fmt::format("colour\n{}\n{}", code(*colour), mark);
    else
        identity += "tap\n" + tap.code + '\n' + use;
    return {{tap.code, std::move(use), tap.tap.place, tap.tap.connector, std::move(cavity), colour}, identity, false};
}

std::vector<Wire> wires_of(const Advice& advice, const Install& install) {
    std::vector<Wire> list;
    for (const TapFacts& tap : advice.pairs) {
        const PairStanding& pair = tap.pair;
        const bool alike = pair.same_colours || (pair.positive && pair.positive == pair.negative);
        list.push_back(wire(tap, "+", settled_text(pair.positive_cavity), pair.positive, pair.positive_mark, alike));
        list.push_back(wire(tap, "-", settled_text(pair.negative_cavity), pair.negative, pair.negative_mark, alike));
        list.back().is_shared = effective_output(tap).stage.drive == Drive::common_return;
    }
    const JudgedTurnOn* turn_on = planned_turn_on(install);
    if (turn_on != nullptr && turn_on->facts.tap)
        list.push_back(wire(*turn_on->facts.tap, "turn-on", "", turn_on->facts.tap->switched.colour, "", false));
    return list;
}

void plan_conductors(JobPlanAnswer& plan, const Advice& advice) {
    std::set<std::string> seen;
    for (Wire& one : wires_of(advice, plan.install)) {
        const bool is_new = seen.insert(one.identity).second;
        if (!is_new && one.is_shared) continue;
        ++plan.install.plan.conductors;
        if (!is_new) ++plan.install.plan.conductors_twice;
        if (!one.conductor.colour) ++plan.install.plan.conductors_unknown;
        plan.conductors.push_back(std::move(one.conductor));
    }
}

// The median of what closed jobs on this car and sound system took here; the lower of the two middle ones.
std::optional<int> minutes_before(const ShopJob& job, const Advice& advice, std::span<const ShopJob> earlier) {
    std::vector<int> minutes;
    for (const ShopJob& one : earlier)
        if (one.number != job.number && one.vehicle == advice.vehicle.path && one.system == advice.system.code &&
            one.taken_minutes)
            minutes.push_back(*one.taken_minutes);
    if (minutes.empty()) return std::nullopt;
    std::sort(minutes.begin(), minutes.end());
    return minutes[(minutes.size() - 1) / 2];
}

}  // namespace

const JudgedCandidate* planned_part(const Advice& advice, const std::string& named) {
    const std::string wanted = named.empty() ? advice.best.value_or("") : named;
    const auto found = std::find_if(advice.candidates.begin(), advice.candidates.end(),
                                    [&](const JudgedCandidate& candidate) { return candidate.converter == wanted; });
    return found == advice.candidates.end() ? nullptr : &*found;
}

JobPlan plan_of(const Advice& advice, const JudgedCandidate& part, JobPlan before) {
    before.tap = advice.tap.tap.code;
    before.converter = part.converter;
    before.amplifier = advice.amplifier ? advice.amplifier->path : std::string();
    before.lowest_mhz = std::llround(advice.lowest.in(millihertz));
    before.minutes = advice.tap.tap.tap.minutes;
    return before;
}

JobPlanAnswer plan_answer(const ShopJob& job, const JobFacts& facts, const Advice& advice, const JudgedCandidate& part,
                          const InstallAsk& ask, std::span<const ShopJob> earlier, RuleBook& rules) {
    JobPlanAnswer plan;
    plan.job = job;
    plan.plan = plan_of(advice, part, job.plan);
    plan.job.plan = plan.plan;
    plan.vehicle = advice.vehicle;
    plan.tap = advice.tap;
    plan.part = part;
    plan.amplifier = advice.amplifier;
    plan.practice = advice.practice;
    for (const auto& pair : advice.pairs)
        if (pair.code != advice.tap.tap.code) plan.other_pairs.emplace_back(path_tail(pair.code, system_depth));
    plan.install = judge_install(facts, advice, part, ask, rules);
    plan_conductors(plan, advice);
    plan.steps = in_order_of_work(plan_steps(plan, advice.tap.signal, advice.lowest));
    PlanFacts& whole = plan.install.plan;
    const OrderCheck order = check_order(plan.steps);
    whole.steps_out_of_order = order.out_of_order;
    whole.live_with_airbag_open = order.live_with_airbag_open;
    whole.minutes_to_tap = advice.tap.tap.tap.minutes;
    whole.minutes_taken_before = minutes_before(job, advice, earlier);
    const PlannedCandidate planned(facts, advice, part);
    Candidate candidate = planned.candidate();
    candidate.plan = &whole;
    plan.install.plan_findings = rules.evaluate_about("plan", candidate);
    return plan;
}

}  // namespace tapbook
