// What a note or a withdrawal changed: grade before and after of each question, then what to do next.
#include <fmt/format.h>

#include "report/grade_moves.h"
#include "report/json.h"
#include "report/notes_report.h"
#include "report/said.h"

namespace tapbook {
namespace {

void print_changes(Paper& paper, NoteKind kind, const NotedStanding& before, const NotedStanding& after) {
    for (const Question question : questions_of(kind))
        paper.line(2, fmt::format("{:<9}", word_of(question)), change_words(before, after, question));
}

void write_changes(Json& json, NoteKind kind, const NotedStanding& before, const NotedStanding& after) {
    json.key("grades").begin_list();
    for (const Question question : questions_of(kind)) {
        json.begin_object()
            .member("what", word_of(question))
            .member("before", word_of(standing_on(before, question).grade))
            .member("after", word_of(standing_on(after, question).grade))
            .member("value", standing_on(after, question).value)
            .member("line", line_on(after, question))
            .end_object();
    }
    json.end_list();
}

std::string saved_words(bool written) {
    return written ? "Saved." : "Dry run: nothing was written.";
}

}  // namespace

std::string short_id(const RecordId& id) {
    return to_hex(id).substr(0, 8);
}

std::string note_text(const NoteReport& report, const Screen& screen) {
    Paper paper(screen);
    if (report.already_here) {
        paper.line(0, "", fmt::format("Noted today already as {}: {}", short_id(report.id), report.path));
        paper.line(0, "", "Nothing was added. A second car needs its plate: --car PLATE.");
        return paper.take();
    }
    paper.heading(fmt::format("Note {} on {}", short_id(report.id), report.path));
    print_changes(paper, report.kind, report.before, report.after);
    for (const auto& complaint : report.complaints)
        paper.line(2, fmt::format("{:<9}", complaint.severity == EntrySeverity::info ? "info" : "you said"),
                   complaint.severity == EntrySeverity::info ? complaint.text : "sure: " + complaint.text);
    paper.line(2, "next     ", report.next);
    paper.line(0, "", saved_words(report.written));
    return paper.take();
}

std::string note_json(const NoteReport& report) {
    Json json;
    json.begin_object().member("id", to_hex(report.id)).member("code", report.path);
    json.member("kind", word_of(report.kind)).key("written").flag(report.written);
    json.key("already_here").flag(report.already_here);
    write_changes(json, report.kind, report.before, report.after);
    json.key("said").begin_list();
    for (const auto& complaint : report.complaints)
        json.begin_object()
            .member("severity", word_of(complaint.severity))
            .member("field", complaint.field)
            .member("text", complaint.text)
            .end_object();
    json.end_list().member("next", report.next).end_object();
    return json_answer("note", json.take());
}

std::string withdraw_text(const WithdrawReport& report, const Screen& screen) {
    Paper paper(screen);
    if (report.was_withdrawn) {
        paper.line(0, "",
                   fmt::format("Note {} on {} was withdrawn already ({}, {}). Nothing was added.",
                               short_id(report.note), report.path, report.earlier_reason, report.earlier_date));
        return paper.take();
    }
    paper.heading(
        fmt::format("Withdrawn: note {} on {} ({})", short_id(report.note), report.path, word_of(report.reason)));
    print_changes(paper, report.kind, report.before, report.after);
    paper.line(2, "final    ", "a withdrawal is never taken back; what was right is noted again");
    paper.line(0, "", saved_words(report.written));
    return paper.take();
}

std::string withdraw_json(const WithdrawReport& report) {
    Json json;
    json.begin_object().member("id", to_hex(report.note)).member("code", report.path);
    json.member("reason", report.was_withdrawn ? std::string_view(report.earlier_reason) : word_of(report.reason));
    json.key("written").flag(report.written).key("already_withdrawn").flag(report.was_withdrawn);
    write_changes(json, report.kind, report.before, report.after);
    json.end_object();
    return json_answer("note.withdraw", json.take());
}

std::string undo_text(const UndoReport& report, const Screen& screen) {
    Paper paper(screen);
    paper.heading(fmt::format("Undo: {} ({})", report.words, report.date));
    for (const auto& text : report.lines) paper.line(2, "", text);
    for (const auto& move : report.moves)
        paper.line(2, "grade", fmt::format("{}: {} -> {}", move.path, word_of(move.before), word_of(move.after)));
    if (report.notes_withdrawn > 0)
        paper.line(2, "", "Withdrawals are final: a note that was right is noted again and gets a new id.");
    paper.line(0, "", saved_words(report.written));
    return paper.take();
}

std::string undo_json(const UndoReport& report) {
    Json json;
    json.begin_object().member("words", report.words).member("date", report.date);
    json.key("written").flag(report.written);
    json.member("notes_withdrawn", std::optional(report.notes_withdrawn))
        .member("entries_put_back", std::optional(report.entries_put_back))
        .member("entries_retired", std::optional(report.entries_retired))
        .member("terms_restored", std::optional(report.terms_restored));
    json.member("lines", report.lines).key("grades");
    write_moves(json, report.moves);
    json.end_object();
    return json_answer("undo", json.take());
}

}  // namespace tapbook
