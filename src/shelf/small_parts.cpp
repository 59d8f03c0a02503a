// When are small parts ordered again? (small_parts.h) Uses come at random, several pieces at a time: the pieces during
// a delivery have the mean and spread of such a sum, and are taken as gamma-Poisson with the same mean and spread
// (Poisson when the spread is not larger).
#include "shelf/small_parts.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <set>

#include "shelf/levels.h"
#include "shelf/plan_checks.h"

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
    if (part.per_job.value_or(0) < 0 || std::ranges::any_of(part.used, [](Used use) { return use.pieces < 0; }))
        throw ShelfRefused(fmt::format("{}: a job cannot take less than nothing of it", part.name));
}

struct Uses {
    double count = 0, pieces = 0, squares = 0, years = 0;  // weighted by age
};

Uses stated_uses(double per_job, const JobsExpected& jobs) {
    const double whole = std::floor(per_job), more = per_job - whole;
    const double square = (1 - more) * whole * whole + more * (whole + 1) * (whole + 1);
    return {.count = jobs.shape, .pieces = jobs.shape * per_job, .squares = jobs.shape * square, .years = jobs.rate};
}

Uses seen_uses(const SmallPart& part, const DemandAsk& ask) {
    Uses uses;
    int days = std::max(part.recorded_days.value_or(0), shortest_record_days), ahead = 0;
    for (const Used& use : part.used) {
        const double worth = use.pieces <= 0 ? 0 : worth_of_job(use.days_ago, ask.half_life_days);
        uses.count += worth;
        uses.pieces += worth * use.pieces;
        uses.squares += worth * use.pieces * use.pieces;
        days = std::max(days, use.days_ago);
        ahead = std::max(ahead, -use.days_ago);
    }
    uses.years = worth_in_years(days + ahead, ask.half_life_days);
    return uses;
}

// What planned jobs took, spread over the time in which as many jobs are expected: a forecast makes it shorter or
// longer.
Uses planned_uses(const SmallPart& part, const JobsExpected& jobs, const DemandAsk& ask) {
    Uses uses = seen_uses(part, ask);
    double planned = 0;
    for (const int days_ago : part.planned_jobs_days_ago) planned += worth_of_job(days_ago, ask.half_life_days);
    if (planned > 0 && jobs.shape > 0) uses.years = planned * jobs.rate / jobs.shape;
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

Reorder of_part(const SmallPart& part, const LevelsAsk& levels) {
    Reorder answer;
    answer.name = part.name;
    answer.label = part.label;
    answer.unit = part.unit;
    answer.on_hand = part.on_hand;
    answer.on_order = part.on_order;
    answer.pack = part.pack;
    answer.lead_days = part.lead_days.value_or(levels.usual_lead_days);
    answer.order_cents = 0;
    return answer;
}

void order_again(Reorder& answer, const SmallPart& part, const Uses& uses, const LevelsAsk& levels) {
    answer.known_by = part.per_job ? UseKnownBy::stated : part.known_by;
    answer.per_year = uses.pieces / uses.years;
    const Counts asked = pieces_in(uses, (answer.lead_days + levels.review_days) / days_per_year);
    answer.reorder_at = point_for(asked, levels.fill_rate);
    if (asked.mean() > 0) answer.fill_rate = 1 - asked.short_of(answer.reorder_at) / asked.mean();
    const int there = part.on_hand + part.on_order;
    if (there > answer.reorder_at) return;
    answer.order = (answer.reorder_at - there) / part.pack * part.pack + part.pack;
    answer.order_cents.reset();
    if (part.cost_cents) answer.order_cents = *part.cost_cents * answer.order;
}

}  // namespace

JobsExpected jobs_expected(const ShelfInput& input, const Demand& demand, const DemandAsk& ask) {
    double others = 0;
    int days = std::max(input.recorded_days.value_or(0), shortest_record_days), ahead = 0;
    for (const int days_ago : input.other_jobs_days_ago) {
        others += worth_of_job(days_ago, ask.half_life_days);
        days = std::max(days, days_ago);
        ahead = std::max(ahead, -days_ago);
    }
    const double years = worth_in_years(days + ahead, ask.half_life_days);
    if (others > 0 && (demand.cold_start || demand.shape <= 0)) return {.shape = others, .rate = years};
    return {.shape = demand.shape + others / years * demand.rate, .rate = demand.rate};
}

std::vector<Reorder> reorder(std::span<const SmallPart> parts, const JobsExpected& jobs, const DemandAsk& demand,
                             const LevelsAsk& levels) {
    check_demand_ask(demand);
    check_levels_ask(levels);
    std::vector<Reorder> answers;
    std::set<std::string_view> names;
    for (const SmallPart& part : parts) {
        check_part(part);
        if (!names.insert(part.name).second)
            throw ShelfRefused(fmt::format("{}: two small parts of one name; give one another name", part.name));
        Reorder& answer = answers.emplace_back(of_part(part, levels));
        const Uses uses = part.per_job ? stated_uses(*part.per_job, jobs) : planned_uses(part, jobs, demand);
        if (uses.pieces > 0) order_again(answer, part, uses, levels);
    }
    return answers;
}

}  // namespace tapbook
