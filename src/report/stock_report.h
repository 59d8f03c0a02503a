// How is said what lies on the shelf, and what a booked movement or a closed job changed of it?
#pragma once

#include <span>
#include <string>

#include "catalog/catalog.h"
#include "report/json.h"
#include "report/screen.h"

namespace tapbook {

// What lies there of a part and is on its way: "3 on the shelf, 2 on order"; "not counted".
std::string lying_words(const Terms& terms);
// One movement: "2026-05-04 received, +4 on the shelf: words".
std::string movement_words(const StockMovement& movement);
// "Vellin Two", "Vellin Two (no longer used)".
std::string stock_name_words(const StockRow& row);
// What a booking changed: "2 -> 6 on the shelf, 0 -> 0 on order".
std::string booked_words(const Terms& before, const Terms& now);

std::string stock_text(std::span<const StockRow> rows, bool practice, const Screen& screen);
std::string stock_json(std::span<const StockRow> rows);

// One part with all its movements.
std::string stock_part_text(const StockRow& row, const Screen& screen);
std::string stock_part_json(const StockRow& row);

std::string booking_text(const StockReport& report, const Screen& screen);
std::string booking_json(const StockReport& report);

// What closing a job did to the shelf, in one sentence.
std::string job_stock_words(const JobStock& stock);
void write_job_stock(Json& json, const std::optional<JobStock>& stock);

}  // namespace tapbook
