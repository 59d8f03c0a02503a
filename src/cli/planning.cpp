// See planning.h.
#include "cli/planning.h"

#include <fmt/format.h>

#include "cli/chosen.h"
#include "cli/chosen_job.h"
#include "cli/install_options.h"

namespace tapbook {
namespace {

JobFacts facts_of(const Catalog& catalog, const Parsed& parsed, const ShopJob& job) {
    JobFacts facts{catalog.car(job.vehicle, job.year), catalog.converters(), {}, catalog.is_practice()};
    const std::string amplifier = parsed.text("--amp").value_or(job.plan.amplifier);
    if (!amplifier.empty()) facts.amplifier = known_amplifier(catalog, amplifier);
    return facts;
}

// What the command line says to do about it.
std::string hint_of(const PlanRefused& refused) {
    switch (refused.trouble()) {
        case PlanTrouble::system_unrecorded:
            return "then say --system CODE; tapbook taps tells how to recognise each";
        case PlanTrouble::not_judged:
            return "tapbook taps shows what is recorded of this car";
        case PlanTrouble::no_such_converter:
            return refused.way_out().empty() ? "tapbook advise lists them" : refused.way_out();
        case PlanTrouble::nothing_fits:
            return "tapbook advise VEHICLE --why says why; another tap: --tap";
        case PlanTrouble::turn_on_refused:
            return "choose another with --turn-on; without it the best is taken";
        case PlanTrouble::does_not_fit:
        case PlanTrouble::no_such_turn_on:
            break;
    }
    return refused.way_out();
}

PlanWish wish_of(const CarFacts& car, const Parsed& parsed, const ShopJob& job, JobPlan said) {
    PlanWish wish;
    wish.system = system_of_job(car, job, parsed);
    if (const auto tap = parsed.text("--tap"); tap && wish.system != unrecorded_system)
        wish.tap = chosen_tap(car, wish.system, *tap);
    wish.converter = parsed.text("--converter");
    if (const auto lowest = parsed.number("--lowest-hz", 3, 1000, 20000000)) wish.lowest = millihertz(*lowest);
    if (const auto turn_on = parsed.text("--turn-on"); turn_on && wish.system != unrecorded_system)
        said.turn_on = turn_on_code(car, wish.system, *turn_on);
    wish.said = std::move(said);
    return wish;
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
    try {
        return planned_job(facts, job, wish_of(facts.car, parsed, job, std::move(said)), jobs, rules);
    } catch (const PlanRefused& refused) {
        if (refused.trouble() == PlanTrouble::system_unrecorded) throw UsageError(refused.what(), hint_of(refused));
        throw NoAnswer(refused.what(), hint_of(refused));
    }
}

}  // namespace tapbook
