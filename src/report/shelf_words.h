// Which sentences does the answer of the shelf consist of? Said once here; the terminal and the page lay them out.
#pragma once

#include <string>
#include <vector>

#include "report/shelf_report.h"

namespace tapbook {

std::string share_words(double share);        // "77.0 %"
std::string cents_words(std::int64_t cents);  // "1250.00"
std::string year_jobs_words(double jobs);     // "0.8 jobs a year"

// Why nothing is planned; "" when something is.
std::string shelf_state_words(ShelfState state);

// "Converters to order today, 59.80:", or that none has to be.
std::string orders_words(const ShelfPlan& plan);
// Of a kept model: how many to keep, what lies there, what today's order costs.
std::string order_words(const KeptModel& model);
// What it is good for.
std::string suits_words(const KeptModel& model);
// What is lost without it; `lost` is of answer.plan.
std::string without_words(const ShelfAnswer& answer, const LostModel& lost);
// The first few systems by their labels, and how many more there are.
std::string systems_words(const ShelfAnswer& answer, const std::vector<LostSystem>& systems);

// What all kept models cover and how sure that is, in the first line; what has to be said beside it in the others.
std::vector<std::string> covered_lines(const ShelfAnswer& answer);
// How many jobs find nothing all the same.
std::string lost_jobs_words(const ShelfPlan& plan);
// Why the solver was of no use; "" when it was, or was not needed.
std::string solver_words(const ShelfPlan& plan);
// The models of a point of the curve.
std::string curve_words(const ShelfAnswer& answer, const CurvePoint& point);

// On which jobs the plan rests, and what was judged with what.
std::string rests_on_words(const ShelfAnswer& answer);
std::string judged_words(const ShelfSources& from);
std::string no_cost_words(const std::string& name);
// What took how long; "" where it was too short for anybody to ask.
std::string time_words(const ShelfSources& from);

}  // namespace tapbook
