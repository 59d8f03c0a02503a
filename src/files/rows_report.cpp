// See rows_report.h.
#include "files/rows_report.h"

#include <fmt/format.h>

#include <map>

namespace tapbook {
namespace {

void count(RowsReport& report, RowFate fate) {
    switch (fate) {
        case RowFate::added:
            ++report.added;
            break;
        case RowFate::changed:
            ++report.changed;
            break;
        case RowFate::here:
            ++report.here;
            break;
        case RowFate::refused:
            ++report.refused;
            break;
    }
}

// A batch of rows holds one list of drafts: a spreadsheet has rows of one kind.
const std::vector<DraftFate>& fates_of_rows(const RowFates& fates) {
    if (!fates.notes.empty()) return fates.notes;
    return fates.entries.empty() ? fates.terms : fates.entries;
}

std::string reason_of(const RowReport& row) {
    std::string text;
    for (const auto& [column, complaint] : row.complaints)
        text += fmt::format("{}{}{}{}", text.empty() ? "" : "; ", complaint.message, complaint.hint.empty() ? "" : ": ",
                            complaint.hint);
    return text;
}

}  // namespace

RowsReport rows_report(const ReadRows& rows, const std::string& mapping, const RowFates& fates, RefusedRows refused) {
    RowsReport report;
    report.file = rows.batch.file;
    report.mapping = mapping;
    report.passed_over = rows.passed_over;
    report.unread = rows.unread;
    report.moves = fates.report.moves;
    report.leaves_out_refused = refused == RefusedRows::leave_out;
    report.written = fates.report.written;
    std::map<std::string, AddReport::GradeMove> moves;
    for (const auto& move : fates.report.moves) moves.emplace(move.path, move);
    const auto& of_drafts = fates_of_rows(fates);
    for (const auto& read : rows.rows) {
        RowReport row{read.number, RowFate::refused, read.what, read.complaints, {}};
        if (row.complaints.empty()) {
            const DraftFate& draft = of_drafts[read.draft];
            row.fate = draft.fate;
            if (draft.complaint)
                row.complaints.push_back({rows.column_at(read.number, draft.complaint->place), *draft.complaint});
            if (const auto move = moves.find(row.what); move != moves.end() && row.fate == RowFate::added)
                row.move = move->second;
        }
        count(report, row.fate);
        report.rows.push_back(std::move(row));
    }
    return report;
}

std::string refused_rows(const ReadRows& rows, const RowsReport& report) {
    std::vector<std::pair<int, std::string>> reasons;
    for (const auto& row : report.rows)
        if (row.fate == RowFate::refused) reasons.emplace_back(row.number, reason_of(row));
    return rows_with_reasons(rows, reasons);
}

}  // namespace tapbook
