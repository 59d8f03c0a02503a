// See sheet_of_job.h.
#include "report/sheet_of_job.h"

namespace tapbook {

Sheet sheet_of_job(const Catalog& catalog, JobPlanAnswer plan, std::span<const ShopJob> jobs, std::string today) {
    Sheet sheet;
    sheet.plan = std::move(plan);
    const ShopJob& job = sheet.plan.job;
    const LedgerState ledger = catalog.ledger_state(job.vehicle);
    sheet.ledger = {static_cast<int>(ledger.notes), ledger.newest,
                    catalog.is_practice() ? "practice catalog" : "shop catalog"};
    sheet.shop = catalog.own_shop().name;
    sheet.date = std::move(today);
    for (const auto& other : jobs)
        if (other.number != job.number && other.state == JobState::closed && other.vehicle == job.vehicle &&
            other.system == job.system)
            sheet.earlier.push_back({other.number, other.closed, other.plan.minutes, other.taken_minutes});
    return sheet;
}

}  // namespace tapbook
