// What does each row of a spreadsheet want to put into the catalog? By a mapping each row becomes the table that a TOML
// file would hold, and is read by the same rules; a row that they refuse is named with its column and the reason, and
// does not keep the others from being read.
#pragma once

#include <functional>

#include "files/csv.h"
#include "files/mapping.h"

namespace tapbook {

struct RowComplaint {
    std::string column;  // its name, or "column 3"; "" for the row as a whole
    Complaint complaint;
};

struct ReadRow {
    int number = 0;  // as the spreadsheet counts: the first row of the file is 1
    std::vector<RowComplaint> complaints;
    std::string what;       // path of what it speaks of; "" when that could not be read
    std::size_t draft = 0;  // where its draft stands in the batch's list, when there are no complaints
};

struct ReadRows {
    CsvText csv;
    Batch batch;                            // of the rows without complaints, in order
    std::vector<ReadRow> rows;              // that were not passed over
    int passed_over = 0;                    // empty ones, and those the mapping leaves out
    std::vector<std::string> unread;        // columns that the mapping does not name
    std::vector<std::string> column_names;  // by place; "column 3" where there is no name
    int names_row = 0;

    // The column in which `place` lies, in the row of that number; "" when in none.
    std::string column_at(int number, const SourcePlace& place) const;
};

// The path of the car that words name, or why they name none.
struct RowCar {
    std::string path;
    std::string message, hint;  // when path is ""
};
using RowCarOf = std::function<RowCar(const std::string& words)>;

// `file` is the name used in messages. Words that are no path are handed to `car_of`, each only once. Throws
// InputRefused for what is wrong with the text or the mapping as a whole: read_csv(), a column that is not there.
ReadRows read_rows(std::string_view text, const std::string& file, const Mapping& mapping, const RowCarOf& car_of);

// The text of the spreadsheet with nothing but the row of names and the rows of these numbers, each with
// `reason(number)` in a column at the end. The order stays.
std::string rows_with_reasons(const ReadRows& rows, const std::vector<std::pair<int, std::string>>& reasons);

}  // namespace tapbook
