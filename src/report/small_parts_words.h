// How is said what to order of leads, fuses, relays and cable, and why?
#pragma once

#include <string>
#include <vector>

#include "report/shelf_report.h"

namespace tapbook {

// Has some of it to be ordered today?
bool is_ordered(const Reorder& part);

// "Small parts to order today, 12.50:", or that there are enough.
std::string small_orders_words(const ShelfPlan& plan);

// Those to be ordered before those of which there are enough; each in the order of the plan.
std::vector<Reorder> ordered_first(const ShelfPlan& plan);

// What lies there, when to order again, from where the use is known, and what today's order comes to.
std::string small_part_words(const Reorder& part);

}  // namespace tapbook
