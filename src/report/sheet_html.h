// The parts of the sheet's page, each written by a file of its own; for this folder only.
#pragma once

#include "report/html_parts.h"
#include "report/sheet.h"

namespace tapbook {

void write_head(const Sheet& sheet, Html& page);      // car, job, code with its symbol
void write_facts(const Sheet& sheet, Html& page);     // what is planned
void write_steps(const Sheet& sheet, Html& page);     // by power phase
void write_chain(const Sheet& sheet, Html& page);     // levels
void write_circuits(const Sheet& sheet, Html& page);  // further ones to read
void write_lists(const Sheet& sheet, Html& page);     // as it came, as it left
void write_advice(const Sheet& sheet, Html& page);    // recommendations, minutes
void write_drawing(const Sheet& sheet, SheetPaper paper, Html& page);
void write_foot(const Sheet& sheet, Html& page);

// Shared by the parts.
// A box named for the person, with what was read there before; `at`: the place in the job.
void write_box(const Sheet& sheet, std::string_view path, const ReadingBox& box, Html& page);

// How closely the page is set, so that what can stand on one page does.
enum class Setting { roomy, plain, dense, finest };
template <>
struct NamedValues<Setting> {
    static constexpr Named<Setting> all[] = {{Setting::roomy, "roomy"},
                                             {Setting::plain, "plain"},
                                             {Setting::dense, "dense"},
                                             {Setting::finest, "dense finest"}};
};
static_assert(table_is_sound<Setting>());
Setting setting_of(const Sheet& sheet, SheetPaper paper);

}  // namespace tapbook
