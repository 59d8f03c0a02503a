// Is the sheet still the one that somebody has looked at and accepted?
#include "approved.h"
#include "sheet_plans.h"

using namespace tapbook;

TEST_CASE("the plain sheet is as approved: text, JSON, and HTML on Letter and A4") {
    const Sheet sheet = sheets::plain();
    approval::approve("sheet-plain-100", sheet_text(sheet, {}));
    approval::approve("sheet-plain-60", sheet_text(sheet, {Colours::none, 60}));
    approval::approve("sheet-plain-json", sheet_json(sheet));
    approval::approve("sheet-plain-letter-html", sheet_html(sheet, SheetPaper::letter));
    approval::approve("sheet-plain-a4-html", sheet_html(sheet, SheetPaper::a4));
}

TEST_CASE("a sheet with many cautions on a practice car is as approved") {
    approval::approve("sheet-cautious-100", sheet_text(sheets::cautious(), {}));
    approval::approve("sheet-cautious-html", sheet_html(sheets::cautious(), SheetPaper::a4));
}

TEST_CASE("a sheet with a disputed pair and no converter is as approved") {
    approval::approve("sheet-disputed-100", sheet_text(sheets::disputed(), {}));
    approval::approve("sheet-disputed-json", sheet_json(sheets::disputed()));
    approval::approve("sheet-disputed-html", sheet_html(sheets::disputed(), SheetPaper::letter));
}

TEST_CASE("a sheet for a car without a job is as approved") {
    approval::approve("sheet-without-job-100", sheet_text(sheets::without_job(), {}));
    approval::approve("sheet-without-job-json", sheet_json(sheets::without_job()));
    approval::approve("sheet-without-job-html", sheet_html(sheets::without_job(), SheetPaper::letter));
}
