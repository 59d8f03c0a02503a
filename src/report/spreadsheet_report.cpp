// The rows of a spreadsheet, as text and JSON.
#include "report/spreadsheet_report.h"

#include <fmt/format.h>

#include <algorithm>

#include "report/grade_moves.h"
#include "report/json.h"

namespace tapbook {
namespace {

constexpr std::size_t most_refused_shown = 40;

std::string rows_words(int count) {
    return fmt::format("{} {}", count, count == 1 ? "row" : "rows");
}

bool stands_alone(const RowReport& row) {
    return row.fate == RowFate::refused || row.move;
}

std::string move_words(const AddReport::GradeMove& move) {
    return fmt::format("{}: {} -> {}", move.path, word_of(move.before), word_of(move.after));
}

void print_refused(Paper& paper, const RowReport& row) {
    for (const auto& [column, complaint] : row.complaints) {
        const std::string where = column.empty() ? std::string() : fmt::format(", column \"{}\"", column);
        const std::string way_out = complaint.hint.empty() ? std::string() : fmt::format(" ({})", complaint.hint);
        paper.line(2, fmt::format("row {}{}:", row.number, shown(where)),
                   fmt::format("refused: {}{}", complaint.message, way_out));
    }
}

void print_rows(Paper& paper, const RowsReport& report) {
    std::size_t refused_shown = 0;
    for (std::size_t i = 0; i < report.rows.size();) {
        const RowReport& first = report.rows[i];
        std::size_t end = i + 1;
        if (first.fate == RowFate::refused) {
            if (refused_shown++ < most_refused_shown) print_refused(paper, first);
        } else if (first.move) {
            paper.line(2, fmt::format("row {}:", first.number),
                       fmt::format("{}, grade {}", word_of(first.fate), move_words(*first.move)));
        } else {
            while (end < report.rows.size() && !stands_alone(report.rows[end]) && report.rows[end].fate == first.fate &&
                   report.rows[end].number == report.rows[end - 1].number + 1)
                ++end;
            const int last = report.rows[end - 1].number;
            paper.line(
                2,
                last == first.number ? fmt::format("row {}:", last) : fmt::format("rows {} to {}:", first.number, last),
                word_of(first.fate));
        }
        i = end;
    }
    if (refused_shown > most_refused_shown)
        paper.line(2, "",
                   fmt::format("... and {} more refused rows: --refused FILE writes them down, --json names them all",
                               refused_shown - most_refused_shown));
}

std::string counts_words(const RowsReport& report) {
    std::string text = fmt::format("{}: {} new, {} already here", report.file, rows_words(report.added), report.here);
    if (report.changed > 0) text += fmt::format(", {} changed", report.changed);
    if (report.refused > 0) text += fmt::format(", {} refused", report.refused);
    if (report.passed_over > 0) text += fmt::format("; {} passed over", report.passed_over);
    return text;
}

void write_row(Json& json, const RowReport& row) {
    json.begin_object().key("row").whole(row.number).member("fate", word_of(row.fate));
    json.member("code", row.what.empty() ? std::nullopt : std::optional(row.what)).key("refused").begin_list();
    for (const auto& [column, complaint] : row.complaints)
        json.begin_object()
            .member("column", column.empty() ? std::nullopt : std::optional(column))
            .member("line", std::optional(complaint.place.line))
            .member("message", complaint.message)
            .member("hint", complaint.hint.empty() ? std::nullopt : std::optional(complaint.hint))
            .end_object();
    json.end_list().key("moves_grade").flag(row.move.has_value()).end_object();
}

}  // namespace

std::string refused_rows_words(const RowsReport& report) {
    return fmt::format("{} of {} {} refused: nothing was changed", rows_words(report.refused), report.file,
                       report.refused == 1 ? "is" : "are");
}

std::string rows_text(const RowsReport& report, const Screen& screen) {
    Paper paper(screen);
    print_rows(paper, report);
    if (!report.unread.empty()) {
        std::string list;
        for (const auto& name : report.unread) list += fmt::format("{}\"{}\"", list.empty() ? "" : ", ", name);
        paper.line(
            0, "not read:",
            fmt::format("{} (no key of {} names {})", list, report.mapping, report.unread.size() == 1 ? "it" : "them"));
    }
    paper.line(0, "", counts_words(report));
    if (report.written)
        paper.line(0, "", report.refused > 0 ? "Saved without the refused rows." : "Saved.");
    else if (report.refused > 0 && !report.leaves_out_refused)
        paper.line(0, "", fmt::format("Nothing was written: {}.", refused_rows_hint));
    else
        paper.line(0, "", "Dry run: nothing was written.");
    return paper.take();
}

std::string rows_json(const RowsReport& report) {
    Json json;
    json.begin_object().member("file", report.file).member("mapping", report.mapping);
    json.key("written").flag(report.written).key("skips_refused").flag(report.leaves_out_refused);
    json.key("new").whole(report.added).key("changed").whole(report.changed);
    json.key("already_here").whole(report.here).key("refused").whole(report.refused);
    json.key("passed_over").whole(report.passed_over).member("columns_not_read", report.unread);
    json.key("rows").begin_list();
    for (const auto& row : report.rows) write_row(json, row);
    json.end_list().key("grades");
    write_moves(json, report.moves);
    json.end_object();
    return json_answer("add.rows", json.take());
}

}  // namespace tapbook
