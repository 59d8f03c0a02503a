// What does a spreadsheet saved as text say, cell by cell, and where? Comma-separated values as in RFC 4180: cells in
// double quotes may hold separators, line ends and doubled quotes; the separator may also be a semicolon or a tab;
// lines end with CR LF, LF or CR; a byte order mark at the start is dropped. Nothing is trimmed and no row is left out.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "catalog/catalog.h"

namespace tapbook {

struct CsvCell {
    std::string text;
    int line = 0, column = 0;  // of its first character or quote, from 1; the column in bytes
};

struct CsvRow {
    std::vector<CsvCell> cells;  // one or more; an empty line is one empty cell

    bool is_empty() const;  // every cell is
};

struct CsvText {
    char separator = ',';
    std::vector<CsvRow> rows;  // row 1 first, as a spreadsheet counts them
};

struct CsvLimits {
    std::size_t bytes = 16 * 1024 * 1024;
    std::size_t rows = 100'000;
    std::size_t cells_in_row = 256;
    std::size_t bytes_in_cell = 32'767;  // what the common spreadsheet programs hold
};

// Throws InputRefused with the place: not UTF-8, a limit, a quote inside a cell that does not begin with one, something
// between a closing quote and the separator, a quote that is never closed. Without `separator` the first row that is
// not empty tells: of comma, semicolon and tab the most frequent outside quotes; the comma when there is none.
CsvText read_csv(std::string_view text, const std::string& file, std::optional<char> separator = {},
                 const CsvLimits& limits = {});

// The line of the text, for a message; at most 240 bytes. "" when there is none of that number.
std::string csv_line(std::string_view text, int line);

}  // namespace tapbook
