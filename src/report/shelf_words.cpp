// See shelf_words.h.
#include "report/shelf_words.h"

#include <fmt/format.h>

#include <algorithm>

namespace tapbook {
namespace {

constexpr std::size_t most_named = 3;

std::string wanted_words(const PlanAsk& ask) {
    if (ask.models.at_most == 1) return "the best model";
    if (ask.models.at_most) return fmt::format("the best {} models", *ask.models.at_most);
    if (ask.models.budget_cents) return fmt::format("the best models for {}", cents_words(*ask.models.budget_cents));
    return fmt::format("the fewest models for {} of the jobs", share_words(ask.models.share.value_or(1)));
}

// When the wanted share is beyond every choice.
std::string most_words(const PlanAsk& ask) {
    return fmt::format("the most that the converters of this catalog can; {} cannot be reached",
                       share_words(ask.models.share.value_or(1)));
}

}  // namespace

std::string share_words(double share) {
    return fmt::format("{:.1f} %", share * 100);
}

std::string cents_words(std::int64_t cents) {
    return fmt::format("{}.{:02}", cents / 100, cents % 100);
}

std::string year_jobs_words(double jobs) {
    return fmt::format("{:.1f} job{} a year", jobs, fmt::format("{:.1f}", jobs) == "1.0" ? "" : "s");
}

std::string shelf_state_words(ShelfState state) {
    switch (state) {
        case ShelfState::nothing_fits:
            return "no converter in this catalog suits any sound system: `tapbook advise VEHICLE` says why, car by car";
        case ShelfState::no_systems:
            return "no sound system with a speaker or line tap is known here: add cars with `tapbook add car.toml`";
        case ShelfState::no_converters:
            return "no converter is known here: add them with `tapbook add parts.toml`";
        case ShelfState::no_demand:
            return "no job is expected at all: the forecast says none";
        case ShelfState::planned:
            break;
    }
    return {};
}

std::string orders_words(const ShelfPlan& plan) {
    const bool any =
        std::any_of(plan.models.begin(), plan.models.end(), [](const KeptModel& model) { return model.order > 0; });
    return any ? fmt::format("Converters to order today, {}:", cents_words(plan.order_cents))
               : std::string("No converter has to be ordered today:");
}

std::string order_words(const KeptModel& model) {
    std::string text = fmt::format("keep {}; {} on the shelf", model.keep, model.on_hand);
    if (model.on_order > 0) text += fmt::format(", {} on order", model.on_order);
    text += fmt::format("; comes in {} day{}", model.lead_days, model.lead_days == 1 ? "" : "s");
    if (model.order > 0) text += fmt::format("; {}", cents_words(model.order_cents));
    if (model.order_wanted > model.order) text += fmt::format("; {} wanted, the money ends here", model.order_wanted);
    return text;
}

std::string suits_words(const KeptModel& model) {
    return fmt::format("suits {} of the jobs, first choice for {}; {} find one there", share_words(model.covers_share),
                       year_jobs_words(model.jobs_per_year), share_words(model.fill_rate));
}

std::string without_words(const ShelfAnswer& answer, const LostModel& lost) {
    return lost.systems.empty() ? fmt::format("{} lost: the others do its jobs", share_words(lost.share))
                                : fmt::format("{} lost, {}: {}", share_words(lost.share),
                                              year_jobs_words(lost.jobs_per_year), systems_words(answer, lost.systems));
}

std::string systems_words(const ShelfAnswer& answer, const std::vector<LostSystem>& systems) {
    std::string text;
    for (std::size_t i = 0; i < std::min(systems.size(), most_named); ++i)
        text += fmt::format("{}{}", i == 0 ? "" : "; ", answer.input.systems[systems[i].system].label);
    if (systems.size() > most_named) text += fmt::format("; and {} more", systems.size() - most_named);
    return text;
}

std::vector<std::string> covered_lines(const ShelfAnswer& answer) {
    const ShelfPlan& plan = answer.plan;
    std::vector<std::string> lines = {
        fmt::format("{} of the jobs: {}", share_words(plan.covered_share),
                    plan.reached == false ? most_words(answer.ask) : wanted_words(answer.ask))};
    lines.front() += plan.proved
                         ? "; proved, no other choice covers more"
                         : fmt::format("; not proved: another choice might add {} at most", share_words(plan.gap));
    if (plan.care_share > 0)
        lines.push_back(fmt::format("{} of the jobs only with care, counted {} less", share_words(plan.care_share),
                                    share_words(answer.ask.care_penalty)));
    if (plan.no_converter_share > 0)
        lines.push_back(
            fmt::format("{} of the jobs suit no converter known here", share_words(plan.no_converter_share)));
    return lines;
}

std::string lost_jobs_words(const ShelfPlan& plan) {
    const LostJobs& lost = plan.lost_jobs;
    return fmt::format(
        "{:.2f} jobs a year find the shelf empty ({:.2f} to {:.2f}, {} years simulated), {:.2f} have no model",
        lost.mean, lost.low, lost.high, lost.years, lost.without_model);
}

std::string solver_words(const ShelfPlan& plan) {
    if (!plan.other_search || plan.other_search_says.empty()) return {};
    return fmt::format("{}; the program's own search was used", plan.other_search_says);
}

std::string curve_words(const ShelfAnswer& answer, const CurvePoint& point) {
    std::string names;
    for (const std::size_t converter : point.converters)
        names += fmt::format("{}{}", names.empty() ? "" : ", ", answer.input.converters[converter].name);
    return point.proved ? names : fmt::format("{} (at most {})", names, share_words(point.bound_share));
}

std::string rests_on_words(const ShelfAnswer& answer) {
    const ShelfSources& from = answer.sources;
    const Likely& jobs = answer.plan.jobs_per_year;
    std::string text =
        fmt::format("{:.1f} jobs a year expected (9 of 10 chances: {:.1f} to {:.1f})", jobs.mean, jobs.low, jobs.high);
    const std::string jobs_said = fmt::format("{} job{}, half as much after {:g} days", from.jobs,
                                              from.jobs == 1 ? "" : "s", answer.ask.demand.half_life_days);
    const std::string lines = fmt::format("{} line{} of forecast", from.forecasts, from.forecasts == 1 ? "" : "s");
    if (answer.plan.cold_start)
        text += "; neither job nor forecast yet: every sound system of the catalog counts alike";
    else if (from.forecasts == 0)
        text += "; from " + jobs_said;
    else
        text += from.jobs == 0 ? "; from " + lines : fmt::format("; from {}, and {}", jobs_said, lines);
    if (from.jobs_direct > 0) text += fmt::format("; {} without a converter not counted", from.jobs_direct);
    if (from.jobs_left_out > 0)
        text += fmt::format("; {} left out, their sound system is not recorded or has no tap", from.jobs_left_out);
    return text;
}

std::string judged_words(const ShelfSources& from) {
    std::string text =
        fmt::format("{} sound systems with all their notes, {} of cars not expected by their entries alone",
                    from.systems_with_notes, from.systems_by_entries);
    if (from.systems_without_tap > 0) text += fmt::format("; {} have no speaker or line tap", from.systems_without_tap);
    if (from.amplifier.empty()) return text + "; held against the taps only, no amplifier";
    return text + fmt::format("; with amplifier {}{}", from.amplifier,
                              from.amplifier_is_usual ? ", the one of most jobs" : "");
}

std::string no_cost_words(const std::string& name) {
    return fmt::format("{} has no cost here and counts as nothing: say it in the stock file", name);
}

std::string time_words(const ShelfSources& from) {
    const double all = all_seconds(from);
    if (all < worth_telling_seconds) return {};
    return fmt::format("{:.1f} s: {:.0f} % reading cars, {:.0f} % rules, {:.0f} % choosing models and levels", all,
                       from.read_seconds / all * 100, from.rules_seconds / all * 100, from.plan_seconds / all * 100);
}

}  // namespace tapbook
