// The plan put together: the install judged, the conductors counted, the steps ordered, the whole looked at once more.
#include "rules/job_plan.h"

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

PlannedConductor conductor(const TapFacts& tap, std::string use, std::string cavity, std::optional<WireColour> colour) {
    return {tap.code, std::move(use), tap.tap.place, tap.tap.connector, std::move(cavity), colour};
}

// Which wire is it? The cavity says so where it is known, else the colour; a wire of which neither is known is told
// apart by where it is looked for.
std::string wire_of(const PlannedConductor& one) {
    const std::string at = one.place + '\n' + one.connector + '\n';
    if (!one.cavity.empty()) return at + "cavity\n" + one.cavity;
    if (one.colour) return at + "colour\n" + code(*one.colour);
    return at + "tap\n" + one.tap + '\n' + one.use;
}

void count_conductors(JobPlanAnswer& plan) {
    std::set<std::string> seen;
    for (const auto& one : plan.conductors) {
        ++plan.install.plan.conductors;
        if (!seen.insert(wire_of(one)).second) ++plan.install.plan.conductors_twice;
        if (!one.colour) ++plan.install.plan.conductors_unknown;
    }
}

std::vector<PlannedConductor> conductors_of(const Advice& advice, const Install& install) {
    std::vector<PlannedConductor> list;
    for (const TapFacts& tap : advice.pairs) {
        const PairStanding& pair = tap.pair;
        list.push_back(conductor(tap, "+", settled_text(pair.positive_cavity), pair.positive));
        list.push_back(conductor(tap, "-", settled_text(pair.negative_cavity), pair.negative));
    }
    const JudgedTurnOn* turn_on = planned_turn_on(install);
    if (turn_on != nullptr && turn_on->facts.tap)
        list.push_back(conductor(*turn_on->facts.tap, "turn-on", "", turn_on->facts.tap->switched.colour));
    return list;
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
    plan.conductors = conductors_of(advice, plan.install);
    count_conductors(plan);
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
