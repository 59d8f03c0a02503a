// When are small parts ordered again? (small_parts.h) Uses come at random, several pieces at a time: the pieces during
// a delivery have the mean and spread of such a sum, and are taken as gamma-Poisson with the same mean and spread
// (Poisson when the spread is not larger).
#include "shelf/small_parts.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "shelf/demand.h"
#include "shelf/levels.h"
#include "shelf/plan_checks.h"
#include "shelf/shelf_input.h"

namespace tapbook {

namespace {

void check_part(const SmallPart& part) {
    const auto refuse = [&](std::string_view what, int count) {
        throw ShelfRefused(
            fmt::format("{}: {} {}; that cannot be less than nothing. Count it again", part.name, count, what));
    };
    if (part.on_hand < 0) refuse("on the shelf", part.on_hand);
    if (part.on_order < 0) refuse("on order", part.on_order);
    if (part.lead_days.value_or(0) < 0) refuse("days of delivery", *part.lead_days);
    if (part.recorded_days.value_or(0) < 0) refuse("days of record", *part.recorded_days);
    if (part.pack < 1)
        throw ShelfRefused(fmt::format("{}: a pack of {}; a pack holds one at least", part.name, part.pack));
    for (const Used& use : part.used) {
        if (use.pieces < 0) refuse("used for a job", use.pieces);
        if (use.days_ago < 0) refuse("days ago", use.days_ago);
    }
}

struct Uses {
    double count = 0, pieces = 0, squares = 0, years = 0;  // weighted by age
};

Uses uses_of(const SmallPart& part, const DemandAsk& ask) {
    Uses uses;
    int days = std::max(part.recorded_days.value_or(0), shortest_record_days);
    for (const Used& use : part.used) {
        const double worth = use.pieces == 0 ? 0 : worth_of_job(use.days_ago, ask.half_life_days);
        uses.count += worth;
        uses.pieces += worth * use.pieces;
        uses.squares += worth * use.pieces * use.pieces;
        days = std::max(days, use.days_ago);
    }
    uses.years = worth_in_years(days, ask.half_life_days);
    return uses;
}

// Pieces during `years`: a gamma-Poisson number of uses, each of a random number of pieces.
Counts pieces_in(const Uses& uses, double years) {
    const double mean = uses.pieces / uses.years * years;
    const double spread = uses.squares / uses.years * years + mean * mean / uses.count;
    return spread > mean ? gamma_poisson_counts(mean * mean / (spread - mean), mean) : poisson_counts(mean);
}

// The smallest number that lets no more than 1 - wanted of the pieces asked for be missing.
int point_for(const Counts& asked, double wanted) {
    int point = 0;
    while (asked.short_of(point) > (1 - wanted) * asked.mean()) ++point;
    return point;
}

}  // namespace

std::vector<Reorder> reorder(std::span<const SmallPart> parts, const DemandAsk& demand, const LevelsAsk& levels) {
    check_demand_ask(demand);
    check_levels_ask(levels);
    std::vector<Reorder> answers;
    for (const SmallPart& part : parts) {
        check_part(part);
        Reorder& answer = answers.emplace_back();
        answer.name = part.name;
        const Uses uses = uses_of(part, demand);
        answer.no_use = uses.count <= 0;
        answer.fill_rate = 1;
        if (answer.no_use) continue;
        answer.per_year = uses.pieces / uses.years;
        const double years = (part.lead_days.value_or(levels.usual_lead_days) + levels.review_days) / days_per_year;
        const Counts asked = pieces_in(uses, years);
        answer.reorder_at = point_for(asked, levels.fill_rate);
        if (asked.mean() > 0) answer.fill_rate = 1 - asked.short_of(answer.reorder_at) / asked.mean();
        const int there = part.on_hand + part.on_order;
        if (there <= answer.reorder_at) answer.order = (answer.reorder_at - there) / part.pack * part.pack + part.pack;
    }
    return answers;
}

}  // namespace tapbook
