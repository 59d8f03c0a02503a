// How are values written so that a spreadsheet shows them and runs none of them? RFC 4180 with a byte order mark, so
// that spreadsheet programs take it for UTF-8, and CR LF. A text that a spreadsheet would take for a formula is quoted
// and begins with an apostrophe, which csv_text_of() takes off again.
#pragma once

#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace tapbook {

// A text, or a number as written by unscaled() or fmt: digits with a sign and a point. A number is never taken for a
// formula and stands as it is.
struct CsvNumber {
    std::string written;
};
using CsvValue = std::variant<std::string, CsvNumber>;

class CsvSheet {
  public:
    explicit CsvSheet(char separator = ',');
    void row(const std::vector<CsvValue>& cells);
    std::string take() { return std::move(out_); }

  private:
    void cell(const CsvValue& value);
    char separator_;
    std::string out_;
};

// The text as a cell may hold it: with an apostrophe before = + - @ tab CR LF, their wide forms, and before an
// apostrophe.
std::string guarded(std::string_view text);

// What a cell says: the text without the apostrophe that guarded() put before it. guarded() and back is the same text.
std::string_view unguarded(std::string_view cell);

}  // namespace tapbook
