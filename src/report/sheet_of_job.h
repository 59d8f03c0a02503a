// What does the sheet of a planned job hold beside the plan? Loaded from the catalog, for the command line and the page
// alike.
#pragma once

#include <span>

#include "report/sheet.h"

namespace tapbook {

// `jobs`: all of this shop. Without address and further circuits. Throws CatalogError.
Sheet sheet_of_job(const Catalog& catalog, JobPlanAnswer plan, std::span<const ShopJob> jobs, std::string today);

}  // namespace tapbook
