// What to order stands first, then why: each model with what it covers, what is lost without it, and on what it rests.
#include <fmt/format.h>

#include <algorithm>

#include "report/shelf_words.h"

namespace tapbook {

static_assert(table_is_sound<ShelfState>());
static_assert(table_is_sound<ModelPlace>());

namespace {

constexpr std::size_t most_named = 3;
constexpr int bar_width = 30;

// The first few, and how many more there are.
std::string systems_words(const ShelfAnswer& answer, const std::vector<LostSystem>& systems) {
    std::string text;
    for (std::size_t i = 0; i < std::min(systems.size(), most_named); ++i)
        text += fmt::format("{}{}", i == 0 ? "" : "; ", answer.input.systems[systems[i].system].label);
    if (systems.size() > most_named) text += fmt::format("; and {} more", systems.size() - most_named);
    return text;
}

std::string wanted_words(const PlanAsk& ask) {
    if (ask.models.at_most == 1) return "the best model";
    if (ask.models.at_most) return fmt::format("the best {} models", *ask.models.at_most);
    if (ask.models.budget_cents) return fmt::format("the best models for {}", money_words(*ask.models.budget_cents));
    return fmt::format("the fewest models for {} of the jobs", percent_words(ask.models.share.value_or(1)));
}

// When the wanted share is beyond every choice.
std::string most_words(const PlanAsk& ask) {
    return fmt::format("the most that the converters of this catalog can; {} cannot be reached",
                       percent_words(ask.models.share.value_or(1)));
}

std::string state_words(ShelfState state) {
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

void print_order(Paper& paper, const KeptModel& model) {
    std::string text = fmt::format("keep {}; {} on the shelf", model.keep, model.on_hand);
    if (model.on_order > 0) text += fmt::format(", {} on order", model.on_order);
    text += fmt::format("; comes in {} day{}", model.lead_days, model.lead_days == 1 ? "" : "s");
    if (model.order > 0) text += fmt::format("; {}", money_words(model.order_cents));
    if (model.order_wanted > model.order) text += fmt::format("; {} wanted, the money ends here", model.order_wanted);
    paper.line(2, fmt::format("{:>3} x {:<24} ", model.order, model.name), text, Weight::strong);
}

void print_orders(Paper& paper, const ShelfAnswer& answer) {
    const bool any = std::any_of(answer.plan.models.begin(), answer.plan.models.end(),
                                 [](const KeptModel& model) { return model.order > 0; });
    paper.line(0, "",
               any ? fmt::format("Converters to order today, {}:", money_words(answer.plan.order_cents))
                   : std::string("No converter has to be ordered today:"));
    for (const auto& model : answer.plan.models) print_order(paper, model);
}

void print_models(Paper& paper, const ShelfAnswer& answer) {
    paper.line(0, "", "Why:");
    for (std::size_t i = 0; i < answer.plan.models.size(); ++i) {
        const KeptModel& model = answer.plan.models[i];
        paper.line(2, fmt::format("{:<24} ", model.name),
                   fmt::format("suits {} of the jobs, first choice for {}; {} find one there",
                               percent_words(model.covers_share), jobs_words(model.jobs_per_year),
                               percent_words(model.fill_rate)),
                   Weight::strong);
        if (i >= answer.plan.lost.size()) continue;
        const LostModel& lost = answer.plan.lost[i];
        paper.line(4, "without it ",
                   lost.systems.empty()
                       ? fmt::format("{} lost: the others do its jobs", percent_words(lost.share))
                       : fmt::format("{} lost, {}: {}", percent_words(lost.share), jobs_words(lost.jobs_per_year),
                                     systems_words(answer, lost.systems)));
    }
}

void print_cover(Paper& paper, const ShelfAnswer& answer) {
    const ShelfPlan& plan = answer.plan;
    std::string text = fmt::format("{} of the jobs: {}", percent_words(plan.covered_share),
                                   plan.reached == false ? most_words(answer.ask) : wanted_words(answer.ask));
    text += plan.proved ? "; proved, no other choice covers more"
                        : fmt::format("; not proved: another choice might add {} at most", percent_words(plan.gap));
    paper.line(0, "covered ", text, Weight::strong);
    if (plan.care_share > 0)
        paper.line(0, "        ",
                   fmt::format("{} of the jobs only with care, counted {} less", percent_words(plan.care_share),
                               percent_words(answer.ask.care_penalty)));
    if (plan.no_converter_share > 0)
        paper.line(0, "        ",
                   fmt::format("{} of the jobs suit no converter known here", percent_words(plan.no_converter_share)));
    const LostJobs& lost = plan.lost_jobs;
    paper.line(
        0, "lost    ",
        fmt::format("{:.2f} jobs a year find the shelf empty ({:.2f} to {:.2f}, {} years simulated), {:.2f} have "
                    "no model",
                    lost.mean, lost.low, lost.high, lost.years, lost.without_model));
    if (plan.other_search && !plan.other_search_says.empty())
        paper.line(0, "solver  ", fmt::format("{}; the program's own search was used", plan.other_search_says));
}

void print_curve(Paper& paper, const ShelfAnswer& answer) {
    paper.line(0, "", "So many models cover:");
    for (const CurvePoint& point : answer.plan.curve) {
        std::string names;
        for (const std::size_t converter : point.converters)
            names += fmt::format("{}{}", names.empty() ? "" : ", ", answer.input.converters[converter].name);
        if (names.empty()) continue;
        const auto filled = static_cast<std::size_t>(std::clamp(point.covered_share, 0.0, 1.0) * bar_width + 0.5);
        paper.line(2,
                   fmt::format("{:>2} {:<{}} {:>7} ", point.models, std::string(filled, '#'), bar_width,
                               percent_words(point.covered_share)),
                   point.proved ? names : fmt::format("{} (at most {})", names, percent_words(point.bound_share)));
    }
}

std::string basis_words(const ShelfAnswer& answer) {
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

// Where a run took so long that somebody may ask what it did.
std::string time_words(const ShelfSources& from) {
    const double all = all_seconds(from);
    if (all < worth_telling_seconds) return {};
    return fmt::format("{:.1f} s: {:.0f} % reading cars, {:.0f} % rules, {:.0f} % choosing models and levels", all,
                       from.read_seconds / all * 100, from.rules_seconds / all * 100, from.plan_seconds / all * 100);
}

void print_explained(Paper& paper, const ShelfAnswer& answer, const ModelExplained& model) {
    const auto name_of = [&](std::size_t converter) { return answer.input.converters[converter].name; };
    paper.line(0, fmt::format("{}  ", model.name), spaced(word_of(model.place)), Weight::strong);
    paper.line(2, "suits    ",
               fmt::format("{} of the jobs, {} that nothing else here does", percent_words(model.covers_share),
                           percent_words(model.only_share)));
    if (model.place == ModelPlace::kept)
        paper.line(2, "without  ", fmt::format("{} lost", percent_words(model.adds_share)));
    else if (model.place != ModelPlace::suits_nothing)
        paper.line(2, "with it  ",
                   fmt::format("{} more beside the kept ones; {} covered by the best plan of this size that has it",
                               percent_words(model.adds_share), percent_words(model.forced_share)));
    if (model.beaten_by)
        paper.line(2, "beaten by", fmt::format(" {}: does all it does and costs no more", name_of(*model.beaten_by)));
    std::string instead;
    for (const std::size_t one : model.instead)
        instead += fmt::format("{}{}", instead.empty() ? "" : ", ", name_of(one));
    if (!instead.empty()) paper.line(2, "instead  ", instead);
    if (model.joins_at) paper.line(2, "joins at ", fmt::format("{} models", *model.joins_at));
    if (!model.systems.empty()) paper.line(2, "cars     ", systems_words(answer, model.systems));
}

void print_change(Paper& paper, const ShelfAnswer& answer, const PlanChange& change) {
    paper.line(0, fmt::format("what if {}  ", answer.change_words),
               fmt::format("{} -> {} covered, order {} -> {}", percent_words(change.before.covered_share),
                           percent_words(change.after.covered_share), money_words(change.before.order_cents),
                           money_words(change.after.order_cents)),
               Weight::strong);
    for (const ModelChange& model : change.models)
        paper.line(2, fmt::format("{:<24} ", model.name),
                   fmt::format("keep {} -> {}, order {} -> {}", model.keep_before, model.keep_after, model.order_before,
                               model.order_after));
    if (!change.lost.empty()) paper.line(2, "lost  ", systems_words(answer, change.lost));
    if (!change.gained.empty()) paper.line(2, "gained", fmt::format(" {}", systems_words(answer, change.gained)));
}

}  // namespace

std::string shelf_text(const ShelfAnswer& answer, const Screen& screen) {
    Paper paper(screen);
    paper.heading(fmt::format("What to keep on the shelf{}", answer.practice ? "   [practice]" : ""));
    if (answer.plan.state != ShelfState::planned) {
        paper.line(0, "", state_words(answer.plan.state));
        print_small_parts(paper, answer.plan);
        return paper.take();
    }
    print_orders(paper, answer);
    print_small_parts(paper, answer.plan);
    print_models(paper, answer);
    print_cover(paper, answer);
    if (answer.explained) print_explained(paper, answer, *answer.explained);
    if (answer.change) print_change(paper, answer, *answer.change);
    print_curve(paper, answer);
    paper.line(0, "rests on ", basis_words(answer));
    paper.line(0, "judged  ", judged_words(answer.sources));
    if (const std::string time = time_words(answer.sources); !time.empty()) paper.line(0, "took    ", time);
    for (const auto& name : answer.plan.without_cost)
        paper.line(0, "care    ",
                   fmt::format("{} has no cost here and counts as nothing: say it in the stock file", name));
    return paper.take();
}

}  // namespace tapbook
