// The door of this folder: every answer as text and as JSON, rendered from the same value. Renderers compute nothing
// and decide nothing.
#pragma once

#include <span>
#include <string>

#include "electrical/electrical.h"
#include "report/calculations.h"
#include "report/drawing.h"
#include "report/exchange_report.h"
#include "report/feed_report.h"
#include "report/html_parts.h"
#include "report/job_report.h"
#include "report/json.h"
#include "report/look_after.h"
#include "report/look_after_report.h"
#include "report/notes_report.h"
#include "report/qr_symbol.h"
#include "report/said.h"
#include "report/screen.h"
#include "report/serve_report.h"
#include "report/sheet.h"
#include "report/sheet_of_job.h"
#include "report/shelf_of_shop.h"
#include "report/shelf_report.h"
#include "report/shelf_words.h"
#include "report/small_parts_words.h"
#include "report/spreadsheet_report.h"
#include "report/stock_report.h"
#include "report/swatch_svg.h"
#include "report/why_words.h"
#include "rules/rules.h"

namespace tapbook {

// `vin`: the cars were found by it.
std::string find_text(std::span<const VehicleHit> hits, const Screen& screen, const std::optional<Vin>& vin = {});
std::string find_json(std::span<const VehicleHit> hits, const std::optional<Vin>& vin = {});

// What is to be said of a VIN's check digit and model year, on one line.
std::string vin_remark(const Vin& vin);

std::string taps_text(const TapsAnswer& answer, const Screen& screen);
std::string taps_json(const TapsAnswer& answer);

// `why`: for every candidate the numbers compared and the notes relied on.
enum class Detail { short_form, why };
std::string advice_text(const Advice& advice, Detail detail, const Screen& screen);
std::string advice_json(const Advice& advice);

std::string meter_text(const MeterVerdict& verdict, const Screen& screen);
std::string meter_json(const MeterVerdict& verdict);

std::string add_text(const AddReport& report, std::string_view file, const Screen& screen);
std::string add_json(const AddReport& report, std::string_view file);

std::string rules_text(const RuleBook& book, const Screen& screen);
// `index` of the rule in book.rules().
std::string rule_text(const RuleBook& book, std::size_t index, const Screen& screen);
// All rules, or the one of this id.
std::string rules_json(const RuleBook& book, std::string_view only = {});
std::string rules_check_text(const RuleBook& book, std::span<const CaseFailure> failures);
std::string rules_check_json(const RuleBook& book, std::span<const CaseFailure> failures);
std::string columns_text(const Screen& screen);
std::string columns_json();

// A refused input: place, the line with a caret, cause and way out, for each complaint.
std::string complaints_text(std::span<const Complaint> complaints);

// Shared by the JSON of several answers.
void write_vehicle(Json& json, const VehicleName& car, const TextList& also = {});  // its other paths
void write_vehicle(Json& json, const Vehicle& car, const TextList& also = {});
void write_system(Json& json, const SystemFacts& system);

}  // namespace tapbook
