// What became of each row of a spreadsheet: what reading refused and what the store did with the rest, put together.
#pragma once

#include "files/csv_rows.h"

namespace tapbook {

struct RowReport {
    int number = 0;  // as the spreadsheet counts
    RowFate fate = RowFate::added;
    std::string what;  // path of what it speaks of; "" when that could not be read
    std::vector<RowComplaint> complaints;
    std::optional<AddReport::GradeMove> move;  // of a new note: the grade of its place moves, by all rows together
};

struct RowsReport {
    std::string file, mapping;
    std::vector<RowReport> rows;  // by number, without those passed over
    int added = 0, changed = 0, here = 0, refused = 0, passed_over = 0;
    std::vector<std::string> unread;          // columns that the mapping does not name
    std::vector<AddReport::GradeMove> moves;  // by path
    bool leaves_out_refused = false;          // refused rows do not hold back the others
    bool written = false;
};

// REQUIRES the fates of rows.batch.
RowsReport rows_report(const ReadRows& rows, const std::string& mapping, const RowFates& fates, RefusedRows refused);

// The refused rows as a spreadsheet, with the reason in a column at the end.
std::string refused_rows(const ReadRows& rows, const RowsReport& report);

}  // namespace tapbook
