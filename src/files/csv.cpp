// See csv.h. One pass over the bytes; a cell ends at a separator or a line end outside quotes.
#include "files/csv.h"

#include <fmt/format.h>

#include <algorithm>

namespace tapbook {
namespace {

constexpr std::string_view byte_order_mark = "\xEF\xBB\xBF";
constexpr char separators[] = {',', ';', '\t'};
constexpr std::size_t most_shown = 240;

std::size_t line_end_at(std::string_view text, std::size_t at) {
    if (text[at] == '\n') return 1;
    if (text[at] != '\r') return 0;
    return at + 1 < text.size() && text[at + 1] == '\n' ? 2 : 1;
}

class CsvReader {
  public:
    CsvReader(std::string_view text, const std::string& file, const CsvLimits& limits)
        : text_(text), file_(file), limits_(limits) {}

    CsvText read(std::optional<char> separator) {
        check_whole();
        if (text_.starts_with(byte_order_mark)) at_ = start_of_line_ = byte_order_mark.size();
        csv_.separator = separator ? *separator : found_separator();
        while (at_ < text_.size()) {
            if (csv_.rows.size() == limits_.rows)
                refuse(here(), fmt::format("holds more than {} rows", limits_.rows), "split the sheet");
            csv_.rows.push_back(read_row());
        }
        return std::move(csv_);
    }

  private:
    SourcePlace here() const { return place(line_, static_cast<int>(at_ - start_of_line_) + 1); }
    SourcePlace place(int line, int column) const { return {file_, line, column, csv_line(text_, line)}; }

    [[noreturn]] static void refuse(SourcePlace place, std::string message, std::string hint) {
        throw InputRefused({Complaint{std::move(place), std::move(message), std::move(hint)}});
    }

    void check_whole() const {
        const SourcePlace whole{file_, 0, 0, {}};
        if (text_.size() > limits_.bytes)
            refuse(whole, fmt::format("is larger than {} MiB", limits_.bytes / 1024 / 1024), "split the sheet");
        if (!is_utf8(text_) || text_.find('\0') != std::string_view::npos)
            refuse(whole, "is not text in UTF-8",
                   "save it from the spreadsheet as CSV with the character set Unicode (UTF-8)");
    }

    char found_separator() const {
        int counts[std::size(separators)] = {};
        bool quoted = false, is_empty = true;
        for (std::size_t i = at_; i < text_.size(); ++i) {
            if (text_[i] == '"') quoted = !quoted;
            if (quoted) continue;
            if (line_end_at(text_, i) > 0) {
                if (!is_empty) break;
                continue;
            }
            is_empty = false;
            for (std::size_t s = 0; s < std::size(separators); ++s) counts[s] += text_[i] == separators[s] ? 1 : 0;
        }
        const auto most = std::max_element(std::begin(counts), std::end(counts));
        return separators[most - std::begin(counts)];
    }

    // Steps over a line end of `bytes`.
    void next_line(std::size_t bytes) {
        at_ += bytes;
        ++line_;
        start_of_line_ = at_;
    }

    CsvRow read_row() {
        CsvRow row;
        while (true) {
            if (row.cells.size() == limits_.cells_in_row)
                refuse(here(), fmt::format("holds more than {} cells in one row", limits_.cells_in_row),
                       "is the separator right? the mapping can name it: separator = \"semicolon\"");
            row.cells.push_back(read_cell());
            if (at_ == text_.size()) return row;
            if (text_[at_] == csv_.separator) {
                ++at_;
                if (at_ < text_.size()) continue;
                row.cells.push_back({{}, line_, static_cast<int>(at_ - start_of_line_) + 1});
                return row;
            }
            next_line(line_end_at(text_, at_));
            return row;
        }
    }

    CsvCell read_cell() {
        CsvCell cell{{}, line_, static_cast<int>(at_ - start_of_line_) + 1};
        if (at_ < text_.size() && text_[at_] == '"')
            read_quoted(cell);
        else
            read_plain(cell);
        if (cell.text.size() > limits_.bytes_in_cell)
            refuse(place(cell.line, cell.column), fmt::format("a cell longer than {} bytes", limits_.bytes_in_cell),
                   "shorten it");
        return cell;
    }

    bool is_end_of_cell() const {
        return at_ == text_.size() || text_[at_] == csv_.separator || line_end_at(text_, at_) > 0;
    }

    void read_plain(CsvCell& cell) {
        const auto start = at_;
        for (; !is_end_of_cell(); ++at_)
            if (text_[at_] == '"')
                refuse(here(), "a quote inside a cell that does not begin with one",
                       "write the whole cell in quotes and each quote in it twice: \"6.5\"\" speaker\"");
        cell.text = text_.substr(start, at_ - start);
    }

    void read_quoted(CsvCell& cell) {
        const int opened_line = cell.line, opened_column = cell.column;
        for (++at_; at_ < text_.size();) {
            const auto line_end = line_end_at(text_, at_);
            if (line_end > 0) {
                cell.text += text_.substr(at_, line_end);
                next_line(line_end);
            } else if (text_[at_] != '"') {
                cell.text += text_[at_++];
            } else if (at_ + 1 < text_.size() && text_[at_ + 1] == '"') {
                cell.text += '"';
                at_ += 2;
            } else {
                ++at_;
                if (is_end_of_cell()) return;
                refuse(here(), "something stands between a closing quote and the end of its cell",
                       "write each quote inside a cell twice");
            }
        }
        refuse(place(opened_line, opened_column), "this quote is never closed", "close it, or take it away");
    }

    std::string_view text_;
    const std::string& file_;
    const CsvLimits& limits_;
    CsvText csv_;
    std::size_t at_ = 0, start_of_line_ = 0;
    int line_ = 1;
};

}  // namespace

bool CsvRow::is_empty() const {
    return std::all_of(cells.begin(), cells.end(), [](const CsvCell& cell) { return cell.text.empty(); });
}

CsvText read_csv(std::string_view text, const std::string& file, std::optional<char> separator,
                 const CsvLimits& limits) {
    return CsvReader(text, file, limits).read(separator);
}

std::string csv_line(std::string_view text, int line) {
    std::size_t at = text.starts_with(byte_order_mark) ? byte_order_mark.size() : 0;
    for (int number = 1; number < line; ++number) {
        while (at < text.size() && line_end_at(text, at) == 0) ++at;
        if (at == text.size()) return {};
        at += line_end_at(text, at);
    }
    const auto end = std::min(text.find_first_of("\r\n", at), text.size());
    auto part = text.substr(at, std::min(end - at, most_shown));
    while (!is_utf8(part)) part.remove_suffix(1);  // not in the middle of a character
    return std::string(part);
}

}  // namespace tapbook
