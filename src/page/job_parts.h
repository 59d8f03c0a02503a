// What do the pages of a job share? For this folder only.
#pragma once

#include <vector>

#include "page/page_html.h"

namespace tapbook {

// The job of the address, by its code or number, with all others. Throws PageRefused (404).
struct AskedJob {
    std::vector<ShopJob> jobs;
    ShopJob job;
};
AskedJob asked_job(const Catalog& catalog, const PageRequest& request);

// Its plan worked out anew; nothing is written. Throws PlanRefused.
JobPlanAnswer plan_of_job(PageDesk& desk, const Catalog& catalog, const AskedJob& asked);

// "Orlin Brelk sedan 2016, base"; the path when the car is not there any more.
std::string car_of_job(std::span<const VehicleName> names, const ShopJob& job);

// Heading and the way back to the job.
void write_job_head(Html& html, const Catalog& catalog, const ShopJob& job, std::string_view title);

// The page of the job, with what was done on top; `saved` names the form whose typed texts the phone may forget.
PageAnswer job_page_with(PageDesk& desk, const PageRequest& request, const std::string& done, const std::string& saved);

}  // namespace tapbook
