// Which models are kept? The own search first: for what a shop has it proves its answer at once. What it cannot prove
// goes to the search elsewhere, and the better of both answers and of both bounds counts.
#include "shelf/choose_models.h"

#include <algorithm>
#include <cmath>

#include "shelf/reduced_cover.h"

namespace tapbook {

namespace {

constexpr int curve_models = 8;          // the curve shows so many, or as many as are asked for
constexpr std::int64_t curve_part = 8;   // a point of the curve that was not asked for gets this part of the effort
constexpr std::int64_t priced_part = 8;  // what the search with prices gets before the one without
constexpr double solver_slack = 1e-9;    // of all weight: a solver's "optimal" is so exact

struct Asking {
    const Cover& cover;
    const ReducedCover reduced;
    const PlanAsk& ask;
    const OtherSearch& other;
    ChosenModels& chosen;

    // How much can be covered does not hang on prices, but which of the best is cheapest does. So a short search on the
    // whole, which settles both for what a shop has; then how much on the little that is left without prices; then once
    // more for the cheapest.
    BestCover own_search(const CoverLimit& limit, std::int64_t effort, std::span<const std::uint32_t> start) {
        const bool is_all = limit.budget || reduced.columns.size() == cover.costs.size();
        BestCover best = best_cover(cover, limit, is_all ? effort : effort / priced_part, start);
        chosen.steps += best.steps;
        if (is_all || best.proved) return best;
        std::vector<std::uint32_t> inside;
        for (const std::uint32_t column : best.columns) inside.push_back(reduced.instead[column]);
        const BestCover without = best_cover(reduced.cover, limit, effort, inside);
        const BestCover found = of_the_whole(cover, reduced, without);
        chosen.steps += without.steps;
        const std::int64_t bound = std::min(best.bound, without.bound);
        if (is_better(found, best)) {
            best = best_cover(cover, limit, effort / priced_part, found.columns);
            chosen.steps += best.steps;
        }
        best.bound = std::max(std::min(best.bound, bound), best.weight);
        best.proved = best.bound == best.weight;
        return best;
    }

    // What came back when it is a choice within the limit; the answer's end is kept for the report.
    std::optional<SearchAnswer> elsewhere(const CoverModel& model) {
        if (!other) return std::nullopt;
        SearchAnswer answer = other(model, ask.time_limit_seconds);
        const bool in_range =
            std::ranges::all_of(answer.chosen, [&](std::uint32_t c) { return c < model.costs.size(); });
        if ((answer.end == SearchEnd::optimal || answer.end == SearchEnd::stopped) && !in_range) {
            answer.end = SearchEnd::garbage;
            answer.says = "its answer names models that were not asked about";
        }
        chosen.other_search = answer.end;
        chosen.other_search_says = answer.says;
        if (answer.end != SearchEnd::optimal && answer.end != SearchEnd::stopped) return std::nullopt;
        return answer;
    }

    // The same on what is left without prices; the answer names columns of the whole.
    std::optional<SearchAnswer> elsewhere_without_prices(const CoverModel& model) {
        auto answer = elsewhere(model);
        if (answer)
            for (std::uint32_t& column : answer->chosen) column = reduced.columns[column];
        return answer;
    }
};

bool keeps_within(const BestCover& choice, const CoverLimit& limit) {
    return static_cast<int>(choice.columns.size()) <= limit.at_most && (!limit.budget || choice.cost <= *limit.budget);
}

// Own search, then elsewhere when that did not prove its best.
BestCover best_within(Asking& asking, const CoverLimit& limit, std::span<const std::uint32_t> start) {
    const Cover& cover = asking.cover;
    BestCover own = asking.own_search(limit, asking.ask.effort, start);
    if (own.proved) return own;
    CoverModel model = cover_model(limit.budget ? cover : asking.reduced.cover);
    model.at_most = limit.at_most;
    model.budget = limit.budget;
    const auto answer = limit.budget ? asking.elsewhere(model) : asking.elsewhere_without_prices(model);
    if (!answer) return own;
    BestCover other = trimmed(cover, answer->chosen);
    const std::int64_t slack = static_cast<std::int64_t>(solver_slack * static_cast<double>(cover.all_weight)) + 1;
    const bool proof =
        answer->end == SearchEnd::optimal && keeps_within(other, limit) && other.weight + slack >= own.weight;
    std::int64_t bound = own.bound;
    if (answer->bound && *answer->bound < static_cast<double>(bound))
        bound = static_cast<std::int64_t>(std::ceil(std::max(*answer->bound, 0.0))) + slack;
    BestCover best = keeps_within(other, limit) && is_better(other, own) ? other : own;
    best.proved = proof;
    best.bound = proof ? best.weight : std::max(bound, best.weight);
    return best;
}

// Points of the curve up to `last` models, each beginning with the one before; `asked` gets the whole effort. Ends
// early when nothing more can be covered, or with `enough` covered.
void draw_curve(Asking& asking, int last, std::optional<int> asked, std::optional<std::int64_t> enough) {
    const Cover& cover = asking.cover;
    const std::int64_t all = cover.coverable();
    std::vector<BestCover>& curve = asking.chosen.curve;
    curve.push_back({.columns = {}, .weight = 0, .cost = 0, .bound = 0, .proved = true, .steps = 0});
    bool easy = true;
    for (int size = 1; size <= last && curve.back().weight < all; ++size) {
        if (enough && curve.back().weight >= *enough && size > curve_models) return;
        const CoverLimit limit{.at_most = size, .budget = {}};
        const std::vector<std::uint32_t> start = curve.back().columns;
        if (asked == size) {
            curve.push_back(best_within(asking, limit, start));
            continue;
        }
        curve.push_back(asking.own_search(limit, easy ? asking.ask.effort / curve_part : 0, start));
        easy = curve.back().proved;
    }
}

// A choice of so many is not worse for a bound that a larger one has.
void tighten(std::vector<BestCover>& curve, std::int64_t all) {
    std::int64_t bound = all;
    for (std::size_t i = curve.size(); i-- > 0;) {
        bound = std::min(bound, curve[i].bound);
        curve[i].bound = std::max(bound, curve[i].weight);
        curve[i].proved = curve[i].proved || curve[i].bound == curve[i].weight;
    }
}

// More models than the curve needs may still be cheaper together, so the number that is asked for is always searched
// itself.
void take_number(Asking& asking, int number) {
    draw_curve(asking, std::max(number, curve_models), number, std::nullopt);
    const auto& curve = asking.chosen.curve;
    if (static_cast<std::size_t>(number) < curve.size())
        asking.chosen.best = curve[static_cast<std::size_t>(number)];
    else
        asking.chosen.best = best_within(asking, {.at_most = number, .budget = {}}, curve.back().columns);
}

// The fewest that cover `wanted`: where the curve reaches it, unless a smaller number might, which is then asked
// elsewhere.
void take_share(Asking& asking, std::int64_t wanted) {
    const Cover& cover = asking.cover;
    ChosenModels& chosen = asking.chosen;
    const std::int64_t target = std::min(wanted, cover.coverable());
    chosen.reached = wanted <= cover.coverable();
    draw_curve(asking, static_cast<int>(cover.costs.size()), std::nullopt, target);
    const auto covers = [&](const BestCover& point) { return point.weight >= target; };
    const auto might = [&](const BestCover& point) { return point.bound >= target; };
    auto found = std::ranges::find_if(chosen.curve, covers);
    auto lowest = std::ranges::find_if(chosen.curve, might);
    bool fewest = lowest == found;
    if (!fewest) {
        CoverModel model = cover_model(asking.reduced.cover);
        model.seek = CoverModel::Seek::fewest_columns;
        model.at_least_covered = target;
        if (const auto answer = asking.elsewhere_without_prices(model)) {
            BestCover other = trimmed(cover, answer->chosen);
            const auto size = static_cast<std::ptrdiff_t>(other.columns.size());
            const bool covered_enough = other.weight >= target;
            if (covered_enough && size < found - chosen.curve.begin()) {
                found = chosen.curve.begin() + size;
                if (is_better(other, *found)) {
                    other.bound = found->bound;
                    *found = other;
                }
            }
            fewest = answer->end == SearchEnd::optimal && covered_enough && size == found - chosen.curve.begin();
        }
    }
    if (!found->proved) {
        const std::vector<std::uint32_t> start = found->columns;
        *found = best_within(asking, {.at_most = static_cast<int>(found - chosen.curve.begin()), .budget = {}}, start);
    }
    chosen.best = *found;
    chosen.best.proved = fewest && found->proved;
}

void take_budget(Asking& asking, std::int64_t budget) {
    draw_curve(asking, curve_models, std::nullopt, std::nullopt);
    const CoverLimit limit{.at_most = static_cast<int>(asking.cover.costs.size()), .budget = budget};
    asking.chosen.best = best_within(asking, limit, {});
}

}  // namespace

ChosenModels choose_models(const Cover& cover, const PlanAsk& ask, const OtherSearch& other_search) {
    ChosenModels chosen;
    Asking asking{
        .cover = cover, .reduced = reduced_without_costs(cover), .ask = ask, .other = other_search, .chosen = chosen};
    const ModelsAsk& wanted = ask.models;
    if (wanted.at_most) take_number(asking, *wanted.at_most - static_cast<int>(cover.forced.size()));
    if (wanted.budget_cents) take_budget(asking, *wanted.budget_cents - cover.forced_cost);
    if (wanted.share) {
        const double weight = std::ceil(*wanted.share * static_cast<double>(cover.all_weight));
        take_share(asking, std::max<std::int64_t>(0, static_cast<std::int64_t>(weight) - cover.forced_weight));
    }
    tighten(chosen.curve, cover.coverable());
    return chosen;
}

}  // namespace tapbook
