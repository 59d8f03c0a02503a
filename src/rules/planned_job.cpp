// See planned_job.h.
#include "rules/planned_job.h"

#include <fmt/format.h>

#include <vector>

namespace tapbook {
namespace {

// The words of the first stop: why it is not planned.
std::string first_stop(const std::vector<Finding>& findings) {
    for (const auto& finding : findings)
        if (finding.effect == Effect::stop) return finding.says;
    return {};
}

[[noreturn]] void refuse_name(const Advice& advice, const std::string& named) {
    std::vector<std::string_view> known;
    for (const auto& candidate : advice.candidates) known.push_back(candidate.converter);
    const auto near = nearest(named, known);
    throw PlanRefused(PlanTrouble::no_such_converter, fmt::format("there is no converter \"{}\"", shown(named)),
                      near ? fmt::format("did you mean {}?", *near) : std::string());
}

// The part that was named; else the one planned before while it fits; else the best.
const JudgedCandidate& needed_part(const Advice& advice, const std::optional<std::string>& wished,
                                   const std::string& planned_before) {
    const std::string named = wished.value_or("");
    const JudgedCandidate* part = planned_part(advice, named);
    if (!wished && !planned_before.empty()) {
        const JudgedCandidate* before = planned_part(advice, planned_before);
        if (before != nullptr && before->verdict != Verdict::no) part = before;
    }
    if (part == nullptr && !named.empty()) refuse_name(advice, named);
    if (part == nullptr)
        throw PlanRefused(PlanTrouble::nothing_fits, "no converter fits this tap, so nothing was planned");
    if (part->verdict == Verdict::no)
        throw PlanRefused(
            PlanTrouble::does_not_fit, fmt::format("{} does not fit: {}", part->converter, first_stop(part->findings)),
            advice.best ? fmt::format("the best that fits is {}", *advice.best) : "nothing fits this tap");
    return *part;
}

Advice advice_for(const JobFacts& facts, const ShopJob& job, const PlanWish& wish, RuleBook& rules) {
    AdviseRequest request;
    request.system = wish.system;
    if (request.system == unrecorded_system)
        throw PlanRefused(
            PlanTrouble::system_unrecorded,
            fmt::format("the sound system of job {} is not recorded: find out which one it is", job.number));
    request.tap = wish.tap;
    const bool planned_lies_there = path_head(job.plan.tap, system_depth) == path_join(job.vehicle, request.system);
    if (request.tap.empty() && planned_lies_there) request.tap = job.plan.tap;
    request.lowest = wish.lowest;
    try {
        return advise(facts, request, rules);
    } catch (const AdviseError& error) {
        throw PlanRefused(PlanTrouble::not_judged, error.what());
    }
}

// Throws PlanRefused when a turn-on was chosen and is not among those judged, or is refused by a rule.
void check_turn_on(const Install& install) {
    const std::string& wanted = install.ask.turn_on;
    if (wanted.empty()) return;
    std::string list;
    for (const auto& one : install.turn_ons) {
        if (one.facts.code == wanted && one.verdict == Verdict::no)
            throw PlanRefused(
                PlanTrouble::turn_on_refused,
                fmt::format("{} is refused as turn-on: {}", path_tail(wanted, system_depth), first_stop(one.findings)));
        if (one.facts.code == wanted) return;
        list += fmt::format("{}{}", list.empty() ? "" : ", ", path_tail(one.facts.code, system_depth));
    }
    throw PlanRefused(
        PlanTrouble::no_such_turn_on,
        fmt::format("{} cannot wake the amplifier on this plan", shown(path_tail(wanted, system_depth))),
        list.empty() ? "no turn-on is recorded for this sound system" : fmt::format("known are: {}", list));
}

}  // namespace

JobPlanAnswer planned_job(const JobFacts& facts, const ShopJob& job, const PlanWish& wish,
                          std::span<const ShopJob> jobs, RuleBook& rules) {
    const Advice advice = advice_for(facts, job, wish, rules);
    const JudgedCandidate& part = needed_part(advice, wish.converter, job.plan.converter);
    const JobPlan wanted = plan_of(advice, part, wish.said);
    ShopJob planned = job;
    planned.plan = wanted;
    planned.system = advice.system.code;
    JobPlanAnswer answer = plan_answer(planned, facts, advice, part, ask_of(wanted), jobs, rules);
    check_turn_on(answer.install);
    return answer;
}

}  // namespace tapbook
