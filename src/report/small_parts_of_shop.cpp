// A plan that today's rules refuse asks for nothing. Cable is counted in whole metres, so each job's is rounded up.
#include "report/small_parts_of_shop.h"

#include <algorithm>
#include <cmath>
#include <map>

namespace tapbook {
namespace {

bool goes_by_plans(const SmallTerms& small) {
    switch (small.kind) {
        case SmallKind::main_fuse:
        case SmallKind::main_cable:
        case SmallKind::relay:
        case SmallKind::resistor:
            return !small.per_job_thousandths;
        case SmallKind::lead:
        case SmallKind::fuse_tap:
        case SmallKind::fuse:
        case SmallKind::cable:
        case SmallKind::other:
            return false;
    }
    return false;
}

double pieces_of(const PlannedParts& planned, const SmallTerms& small) {
    switch (small.kind) {
        case SmallKind::main_fuse:
            return planned.main_fuse && small.fuse_amps && *planned.main_fuse == amps(*small.fuse_amps) ? 1 : 0;
        case SmallKind::main_cable:
            return planned.cable && cable_size_text(*planned.cable) == small.cable_size
                       ? std::ceil(planned.cable_length.in(metres))
                       : 0;
        case SmallKind::relay:
            return planned.relay ? 1 : 0;
        case SmallKind::resistor:
            return planned.resistors;
        case SmallKind::lead:
        case SmallKind::fuse_tap:
        case SmallKind::fuse:
        case SmallKind::cable:
        case SmallKind::other:
            return 0;
    }
    return 0;
}

class Plans {
  public:
    Plans(const Catalog& catalog, RuleBook& rules) : catalog_(catalog), rules_(rules) {
        facts_.converters = catalog.converters();
        facts_.practice = catalog.is_practice();
        for (auto& amplifier : catalog.amplifiers()) amplifiers_.emplace(amplifier.path, amplifier);
    }

    std::optional<PlannedParts> parts_of(const ShopJob& job) {
        if (job.plan.tap.empty() && job.plan.converter.empty()) return std::nullopt;
        facts_.car = catalog_.car(job.vehicle, job.year);
        const auto amplifier = amplifiers_.find(job.plan.amplifier);
        facts_.amplifier = amplifier == amplifiers_.end() ? std::nullopt : std::optional(amplifier->second);
        PlanWish wish;
        wish.system = job.system;
        if (job.plan.lowest_mhz) wish.lowest = millihertz(*job.plan.lowest_mhz);
        wish.said = job.plan;
        try {
            return planned_parts(planned_job(facts_, job, wish, {}, rules_));
        } catch (const PlanRefused&) {
            return std::nullopt;
        }
    }

  private:
    const Catalog& catalog_;
    RuleBook& rules_;
    JobFacts facts_;
    std::map<std::string, Amplifier> amplifiers_;
};

SmallPart part_of(const StockRow& row) {
    SmallPart part;
    const SmallTerms& small = *row.terms.small;
    part.name = row.part;
    part.label = small.name;
    part.unit = is_cable(small.kind) ? "m" : "";
    if (small.per_job_thousandths) {
        part.known_by = UseKnownBy::stated;
        part.per_job = *small.per_job_thousandths / 1000.0;
    }
    part.lead_days = row.terms.lead_days;
    part.cost_cents = row.terms.cost_cents;
    part.pack = row.terms.pack.value_or(1);
    part.on_hand = row.terms.on_hand.value_or(0);
    part.on_order = row.terms.on_order.value_or(0);
    return part;
}

// What was taken off by hand; what an undo put back counts against it.
void add_bookings(SmallPart& part, const StockRow& row, std::int64_t today) {
    for (const auto& movement : row.movements) {
        const auto day = day_number(movement.date);
        if (!day) continue;
        const int days_ago = std::max(0, static_cast<int>(today - *day));
        part.recorded_days = std::max(part.recorded_days.value_or(0), days_ago);
        if (movement.kind == MovementKind::used)
            part.used.push_back({days_ago, static_cast<double>(-movement.on_hand_change)});
        const bool puts_back = movement.kind == MovementKind::undone && movement.on_hand_change > 0;
        if (puts_back && !part.used.empty() && part.used.back().pieces == movement.on_hand_change) part.used.pop_back();
    }
}

int days_ago_of(const ShopJob& job, std::int64_t today) {
    const auto started = day_number(job.started);
    const int days = started ? static_cast<int>(today - *started) : 0;
    return job.state == JobState::closed ? std::max(0, days) : std::min(0, days);
}

void add_plans(std::vector<SmallPart>& parts, const std::vector<StockRow>& rows, std::span<const ShopJob> jobs,
               Plans plans, std::int64_t today) {
    std::vector<const ShopJob*> newest;
    for (const auto& job : jobs) newest.push_back(&job);
    std::stable_sort(newest.begin(), newest.end(),
                     [](const ShopJob* a, const ShopJob* b) { return a->started > b->started; });
    newest.resize(std::min(newest.size(), most_plans_for_parts));
    for (const ShopJob* job : newest) {
        const auto planned = plans.parts_of(*job);
        for (std::size_t i = 0; i < rows.size(); ++i) {
            const SmallTerms& small = *rows[i].terms.small;
            if (!goes_by_plans(small)) continue;
            const int days_ago = days_ago_of(*job, today);
            parts[i].known_by = UseKnownBy::plans;
            parts[i].planned_jobs_days_ago.push_back(days_ago);
            parts[i].recorded_days = std::max(parts[i].recorded_days.value_or(0), days_ago);
            const double pieces = planned ? pieces_of(*planned, small) : 0;
            if (pieces > 0) parts[i].used.push_back({days_ago, pieces});
        }
    }
}

}  // namespace

std::vector<SmallPart> small_parts_of_shop(const Catalog& catalog, std::span<const ShopJob> jobs, RuleBook& rules,
                                           const std::string& today) {
    const std::int64_t day = day_number(today).value_or(0);
    std::vector<StockRow> rows = catalog.stock();
    std::erase_if(rows, [](const StockRow& row) { return !row.terms.small; });
    std::vector<SmallPart> parts;
    bool any_by_plans = false;
    for (const auto& row : rows) {
        SmallPart& part = parts.emplace_back(part_of(row));
        if (part.per_job) continue;
        const bool by_plans = goes_by_plans(*row.terms.small);
        any_by_plans = any_by_plans || by_plans;
        if (!by_plans) add_bookings(part, row, day);
    }
    if (any_by_plans) add_plans(parts, rows, jobs, Plans(catalog, rules), day);
    return parts;
}

}  // namespace tapbook
