// See planning.h.
#include "cli/planning.h"

#include <fmt/format.h>

#include "cli/chosen.h"
#include "cli/chosen_job.h"
#include "cli/install_options.h"

namespace tapbook {
namespace {

// The words of a part's first stop: why it is not planned.
std::string first_stop(const JudgedCandidate& part) {
    for (const auto& finding : part.findings)
        if (finding.effect == Effect::stop) return finding.says;
    return {};
}

// The part that was named; else the one planned before while it fits; else the best.
const JudgedCandidate& needed_part(const Advice& advice, const std::optional<std::string>& typed,
                                   const std::string& planned_before) {
    const std::string named = typed.value_or("");
    const JudgedCandidate* part = planned_part(advice, named);
    if (!typed && !planned_before.empty()) {
        const JudgedCandidate* before = planned_part(advice, planned_before);
        if (before != nullptr && before->verdict != Verdict::no) part = before;
    }
    if (part == nullptr && !named.empty()) {
        std::vector<std::string_view> known;
        for (const auto& candidate : advice.candidates) known.push_back(candidate.converter);
        const auto near = nearest(named, known);
        throw NoAnswer(fmt::format("there is no converter \"{}\"", shown(named)),
                       near ? fmt::format("did you mean {}?", *near) : "tapbook advise lists them");
    }
    if (part == nullptr)
        throw NoAnswer("no converter fits this tap, so nothing was planned",
                       "tapbook advise VEHICLE --why says why; another tap: --tap");
    if (part->verdict == Verdict::no)
        throw NoAnswer(fmt::format("{} does not fit: {}", part->converter, first_stop(*part)),
                       advice.best ? fmt::format("the best that fits is {}", *advice.best) : "nothing fits this tap");
    return *part;
}

JobFacts facts_of(const Catalog& catalog, const Parsed& parsed, const ShopJob& job) {
    JobFacts facts{catalog.car(job.vehicle, job.year), catalog.converters(), {}, catalog.is_practice()};
    const std::string amplifier = parsed.text("--amp").value_or(job.plan.amplifier);
    if (!amplifier.empty()) facts.amplifier = known_amplifier(catalog, amplifier);
    return facts;
}

Advice advice_for(const JobFacts& facts, const Parsed& parsed, const ShopJob& job, RuleBook& rules) {
    AdviseRequest request;
    request.system = system_of_job(facts.car, job, parsed);
    if (request.system == unrecorded_system)
        throw UsageError(
            fmt::format("the sound system of job {} is not recorded: find out which one it is", job.number),
            "then say --system CODE; tapbook taps tells how to recognise each");
    const auto tap = parsed.text("--tap");
    request.tap = tap ? chosen_tap(facts.car, request.system, *tap) : job.plan.tap;
    if (!tap && !request.tap.empty() && path_head(request.tap, system_depth) != path_join(job.vehicle, request.system))
        request.tap.clear();
    if (const auto lowest = parsed.number("--lowest-hz", 3, 1000, 20000000)) request.lowest = millihertz(*lowest);
    try {
        return advise(facts, request, rules);
    } catch (const AdviseError& error) {
        throw NoAnswer(error.what(), "tapbook taps shows what is recorded of this car");
    }
}

}  // namespace

std::vector<OptionSpec> plan_options() {
    std::vector<OptionSpec> options = {
        {"--tap", "TAP", "the tap point; the planned one, else the best, without it"},
        {"--converter", "CONVERTER", "the part; the planned one while it fits, else the best, without it"},
        {"--amp", "AMPLIFIER", "the amplifier that is fed"},
        {"--lowest-hz", "HERTZ", "lowest note played; 30 for a subwoofer, 60 for full range"},
        {"--system", "CODE", "the sound system, when it was found out since"}};
    for (const auto& option : install_options()) options.push_back(option);
    return options;
}

JobPlanAnswer plan_for(const Catalog& catalog, const Session& session, const Parsed& parsed, const ShopJob& job,
                       std::span<const ShopJob> jobs) {
    JobPlan said = with_install(job.plan, parsed);  // first: a mistyped number needs no car to be refused
    RuleBook rules = rules_beside(session.database);
    const JobFacts facts = facts_of(catalog, parsed, job);
    const Advice advice = advice_for(facts, parsed, job, rules);
    if (const auto turn_on = parsed.text("--turn-on"))
        said.turn_on = turn_on_code(facts.car, advice.system.code, *turn_on);
    const JudgedCandidate& part = needed_part(advice, parsed.text("--converter"), job.plan.converter);
    const JobPlan wanted = plan_of(advice, part, std::move(said));
    ShopJob planned = job;
    planned.plan = wanted;
    planned.system = advice.system.code;
    JobPlanAnswer answer = plan_answer(planned, facts, advice, part, ask_of(wanted), jobs, rules);
    check_turn_on(answer.install);
    return answer;
}

}  // namespace tapbook
