// What do reading a spreadsheet, writing one and the report on the shops' errors answer?
#pragma once

#include <span>
#include <string>

#include "files/files.h"
#include "report/screen.h"

namespace tapbook {

// Rows that follow each other and had the same fate share a line; refused ones, and those that move a grade, have their
// own.
std::string rows_text(const RowsReport& report, const Screen& screen);
std::string rows_json(const RowsReport& report);

// What holds the rows back, in one sentence, and the way out. REQUIRES refused rows.
std::string refused_rows_words(const RowsReport& report);
inline constexpr std::string_view refused_rows_hint =
    "correct them and add the file again, or say --skip-refused: then the others go in without them";

// A car's tap points as they stand, one row for each: what taps shows. Not read back.
std::string taps_csv(const TapsAnswer& answer);

// The jobs without customer, plate and remarks. Not read back.
std::string jobs_csv(std::span<const ShopJob> jobs, bool practice);

// How often each shop errs.
struct ShopErrorsAnswer {
    struct Row {
        ShopRow shop;
        ShopErrors errors;  // answers 0: nothing shared
    };
    std::vector<Row> shops;     // this one first
    std::size_t questions = 0;  // that two shops or more have looked at
};
std::string shop_errors_text(const ShopErrorsAnswer& answer, const Screen& screen);
std::string shop_errors_json(const ShopErrorsAnswer& answer);

}  // namespace tapbook
