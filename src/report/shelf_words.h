// How are numbers and small parts of the shelf said? For the files of this folder only.
#pragma once

#include <string>

#include "report/shelf_report.h"

namespace tapbook {

std::string percent_words(double share);
std::string jobs_words(double jobs);
std::string money_words(std::int64_t cents);

// What to order of leads, fuses, relays and cable, and why; nothing at all when the shop keeps none.
void print_small_parts(Paper& paper, const ShelfPlan& plan);

}  // namespace tapbook
