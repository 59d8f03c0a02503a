// What does the installer take to the car on paper? One value holds all of it: the plan of the job with what only paper
// needs. Text, JSON and one self-contained HTML file are rendered from it. The HTML prints on Letter or A4, reads on a
// phone, works without script and asks nobody for anything.
#pragma once

#include <span>
#include <string>
#include <vector>

#include "report/drawing.h"
#include "report/screen.h"
#include "rules/rules.h"

namespace tapbook {

// State of the catalog the sheet was made from.
struct SheetLedger {
    int notes = 0;        // on this car
    std::string newest;   // day of the newest of them; "" without notes
    std::string catalog;  // what kind of catalog: "shop catalog"; said in the footer
};

// A closed job of this shop on the same car and sound system.
struct EarlierJob {
    int number = 0;
    std::string closed;
    std::optional<int> planned_minutes, taken_minutes;
};

struct Sheet {
    JobPlanAnswer plan;  // job.number 0: a car without a job; no tap (""): nothing is planned; no steps: none are shown
    SheetLedger ledger;
    std::string shop, date;
    std::string address;             // base of the address in the QR code, "http://bench.local:8080"; "" for none
    std::vector<TapFacts> circuits;  // further ones to read, in the order of reading
    std::vector<EarlierJob> earlier;
};

enum class SheetPaper { letter, a4 };
template <>
struct NamedValues<SheetPaper> {
    static constexpr Named<SheetPaper> all[] = {{SheetPaper::letter, "letter"}, {SheetPaper::a4, "a4"}};
};
static_assert(table_is_sound<SheetPaper>());

// What the QR code says: the address in capitals with "/J/" and the code, so that the symbol stays small; the code
// alone without an address, or with one too long for a symbol; "" without a job.
std::string sheet_link(const Sheet& sheet);

// Is there a tap in the plan, so that the install can be drawn?
bool has_plan(const Sheet& sheet);

std::string sheet_text(const Sheet& sheet, const Screen& screen);
std::string sheet_json(const Sheet& sheet);

// One file, the same bytes for the same value: CSS and script inside, no style attribute, no address but the link.
std::string sheet_html(const Sheet& sheet, SheetPaper paper);

// The install of the plan, ready to be laid out: at most 8 pairs, lines and channels. REQUIRES: has_plan().
InstallDrawing drawing_of(const Sheet& sheet);

}  // namespace tapbook
