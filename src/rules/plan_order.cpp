// Kahn's method with the listed order as the tie-break: of the steps whose needs are done, the first listed is next.
#include "rules/plan_order.h"

#include <algorithm>
#include <set>

namespace tapbook {
namespace {

bool is_live(PowerPhase phase) {
    switch (phase) {
        case PowerPhase::live_check:
        case PowerPhase::power_on:
        case PowerPhase::final_check:
            return true;
        case PowerPhase::power_off:
        case PowerPhase::dead_work:
            return false;
    }
    return true;
}

std::set<std::string> ids_of(const std::vector<PlanStep>& steps) {
    std::set<std::string> ids;
    for (const auto& step : steps) ids.insert(step.id);
    return ids;
}

}  // namespace

std::vector<PlanStep> in_order_of_work(std::vector<PlanStep> steps) {
    std::stable_sort(steps.begin(), steps.end(),
                     [](const PlanStep& a, const PlanStep& b) { return a.phase < b.phase; });
    const auto known = ids_of(steps);
    std::set<std::string> done;
    std::vector<PlanStep> ordered;
    const auto is_ready = [&](const PlanStep& step) {
        return std::all_of(step.needs.begin(), step.needs.end(),
                           [&](const std::string& need) { return done.contains(need) || !known.contains(need); });
    };
    while (!steps.empty()) {
        const PowerPhase phase = steps.front().phase;
        auto next = std::find_if(steps.begin(), steps.end(),
                                 [&](const PlanStep& step) { return step.phase == phase && is_ready(step); });
        if (next == steps.end()) next = steps.begin();
        done.insert(next->id);
        ordered.push_back(std::move(*next));
        steps.erase(next);
    }
    return ordered;
}

OrderCheck check_order(const std::vector<PlanStep>& steps) {
    OrderCheck check;
    bool open = false;
    for (std::size_t i = 0; i < steps.size(); ++i) {
        const PlanStep& step = steps[i];
        bool wrong = i > 0 && step.phase < steps[i - 1].phase;
        for (std::size_t later = i; later < steps.size(); ++later)
            wrong = wrong || std::find(step.needs.begin(), step.needs.end(), steps[later].id) != step.needs.end();
        if (wrong) ++check.out_of_order;
        if (step.airbags == Airbags::mated) open = false;
        if (open && is_live(step.phase)) ++check.live_with_airbag_open;
        if (step.airbags == Airbags::may_open) open = true;
    }
    return check;
}

}  // namespace tapbook
