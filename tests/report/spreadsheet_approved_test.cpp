// Do the rows of a spreadsheet, the spreadsheets that are written and the report on the shops' errors still read as
// they were accepted?
#include <catch2/catch.hpp>

#include "approved.h"
#include "report/report.h"
#include "report_cars.h"

using namespace tapbook;
using approval::approve;

namespace {

constexpr Screen wide{Colours::none, 100}, narrow{Colours::none, 60};

RowReport row(int number, RowFate fate) {
    return {number, fate, "orlin/brelk/sedan/2014/base/front-left/radio", {}, {}};
}

RowReport refused(int number, const std::string& column, const std::string& message, const std::string& hint) {
    RowReport report = row(number, RowFate::refused);
    report.what.clear();
    report.complaints = {{column, {{"bay.csv", number, 4, ""}, message, hint}}};
    return report;
}

RowsReport mixed_rows() {
    RowsReport report;
    report.file = "bay.csv";
    report.mapping = "bay.toml";
    report.rows = {row(2, RowFate::added), row(3, RowFate::added), row(4, RowFate::here), row(6, RowFate::here),
                   row(7, RowFate::changed)};
    report.rows.push_back(refused(8, "Plus", "positive \"BL\" is not clear: black or blue?", "write BK or BU"));
    report.rows.push_back(refused(9, "", "date is missing", "date: day of the visit"));
    report.rows.push_back(row(10, RowFate::added));
    report.rows.back().move = AddReport::GradeMove{report.rows[0].what, Grade::one_car, Grade::matched};
    report.moves = {*report.rows.back().move};
    report.added = 3;
    report.here = 2;
    report.changed = 1;
    report.refused = 2;
    report.passed_over = 1;
    report.unread = {"Ticket", "Bay \x1b[2J"};
    return report;
}

RowsReport saved_rows() {
    RowsReport report;
    report.file = "bay.csv";
    report.mapping = "bay.toml";
    for (int number = 2; number < 40; ++number) report.rows.push_back(row(number, RowFate::added));
    report.added = 38;
    report.written = true;
    return report;
}

RowsReport many_refused() {
    RowsReport report;
    report.file = "bay.csv";
    report.mapping = "bay.toml";
    for (int number = 2; number < 45; ++number)
        report.rows.push_back(refused(number, "Day", "date \"x\" is not a day", ""));
    report.refused = 43;
    report.leaves_out_refused = true;
    return report;
}

ShopErrorsAnswer three_shops() {
    ShopErrorsAnswer answer;
    answer.questions = 31;
    answer.shops.push_back({{std::string(32, 'a'), "Tarrowby", true, true, false, 40}, {}});
    answer.shops.back().errors = {std::string(32, 'a'), 30, 29, 0.04, {0.008, 0.167}, true};
    answer.shops.push_back({{std::string(32, 'b'), "Quill \x1b[1m", false, true, false, 9}, {}});
    answer.shops.back().errors = {std::string(32, 'b'), 9, 3, 0.62, {0.35, 0.88}, true};
    answer.shops.push_back({{std::string(32, 'c'), "", false, false, false, 1}, {}});
    answer.shops.back().errors = {std::string(32, 'c'), 1, 1, 0.07, {0.01, 0.84}, false};
    answer.shops.push_back({{std::string(32, 'd'), "Alone", false, false, false, 0}, {}});
    return answer;
}

}  // namespace

TEST_CASE("the rows of a spreadsheet read as accepted") {
    approve("rows-mixed-100", rows_text(mixed_rows(), wide));
    approve("rows-mixed-60", rows_text(mixed_rows(), narrow));
    approve("rows-mixed-json", rows_json(mixed_rows()));
    approve("rows-saved-100", rows_text(saved_rows(), wide));
    approve("rows-many-refused-100", rows_text(many_refused(), wide));
    CHECK(refused_rows_words(mixed_rows()) == "2 rows of bay.csv are refused: nothing was changed");
}

TEST_CASE("the report on the shops' errors reads as accepted and says that no grade knows of it") {
    approve("shop-errors-100", shop_errors_text(three_shops(), wide));
    approve("shop-errors-60", shop_errors_text(three_shops(), narrow));
    approve("shop-errors-json", shop_errors_json(three_shops()));
}

TEST_CASE("jobs as a spreadsheet hold neither customer nor plate nor remarks") {
    ShopJob job;
    job.number = 3;
    job.code = "K7PQ2M";
    job.state = JobState::closed;
    job.started = "2024-05-02";
    job.closed = "2024-05-03";
    job.vehicle = "orlin/brelk/sedan/2014";
    job.system = "base";
    job.year = 2015;
    job.customer = "A. Person";
    job.agreed = "AP";
    job.car = "0b3fc54bfb0748f5d8674beead41e4c9";
    job.remarks = "call A. Person";
    job.plan.tap = "orlin/brelk/sedan/2014/base/front-left/radio";
    job.plan.converter = "=low-one";
    job.outcome = JobOutcome::fine;
    job.taken_minutes = 95;
    const std::string text = jobs_csv(std::vector{job, ShopJob()}, true);
    approve("jobs-csv", text);
    for (const std::string secret : {"Person", "AP", "0b3fc54b"}) CHECK(text.find(secret) == std::string::npos);
}

TEST_CASE("the taps of a plain and of a disputed car as spreadsheets read as accepted") {
    approve("taps-plain-csv", taps_csv(cars::taps_of(cars::plain_car())));
    approve("taps-disputed-csv", taps_csv(cars::taps_of(cars::disputed_car())));
}
