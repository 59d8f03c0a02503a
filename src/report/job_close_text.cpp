// What closing a job did: a line for each place with the grades that moved, what to do next, and the short list when it
// ended with a noise.
#include <fmt/format.h>

#include "report/job_report.h"
#include "report/notes_report.h"
#include "report/said.h"
#include "report/stock_report.h"

namespace tapbook {
namespace {

void print_visit(Paper& paper, const ClosedVisit& visit) {
    const NoteReport& note = visit.note;
    paper.line(0, fmt::format("{} ", place_in_job(note.path)), end_words(visit), Weight::strong);
    if (!is_change(visit.end)) return;
    for (const Question question : questions_of(note.kind))
        paper.line(2, fmt::format("{:<9}", word_of(question)), change_words(note.before, note.after, question));
    for (const auto& complaint : note.complaints)
        paper.line(2, fmt::format("{:<9}", complaint.severity == EntrySeverity::info ? "info" : "you said"),
                   complaint.severity == EntrySeverity::info ? complaint.text : "sure: " + complaint.text);
    paper.line(2, "next     ", note.next);
}

void print_noise(Paper& paper, JobOutcome outcome) {
    const auto steps = noise_steps(outcome);
    if (steps.empty()) return;
    paper.line(0, "", "Likeliest first:");
    for (const auto& step : steps) paper.line(2, fmt::format("{}:", step.heard), step.look);
}

}  // namespace

std::string job_close_text(const JobCloseReport& report, const JobScreen& head, const Screen& screen) {
    const ShopJob& job = report.job;
    Paper paper(screen);
    paper.heading(fmt::format("Job {}  {} closed: {}, {}{}", job.number, job.code, head.car,
                              job.outcome ? word_of(*job.outcome) : "", head.practice ? "   [practice]" : ""));
    for (const auto& visit : report.visits) print_visit(paper, visit);
    if (report.visits.empty()) paper.line(0, "", "Nothing was read on this job, so nothing was noted.");
    const auto different = differences(job);
    if (!different.empty()) paper.line(0, "", "Left otherwise than it came:");
    for (const auto& difference : different)
        paper.line(
            2, fmt::format("{:<13}", word_of(difference.item)),
            fmt::format("came {}, left {}{}{}", word_of(difference.came->answer), word_of(difference.left->answer),
                        difference.left->words.empty() ? "" : ": ", difference.left->words),
            Weight::strong);
    if (report.stock) paper.line(0, "shelf ", job_stock_words(*report.stock));
    if (job.outcome) print_noise(paper, *job.outcome);
    paper.line(0, "", report.written ? "Saved." : "Dry run: nothing was written.");
    return paper.take();
}

std::string job_close_json(const JobCloseReport& report) {
    Json json;
    json.begin_object().key("job");
    write_job(json, report.job);
    json.key("notes").begin_list();
    for (const auto& visit : report.visits) {
        const NoteReport& note = visit.note;
        json.begin_object().member("code", note.path).member("end", word_of(visit.end));
        json.member("id", visit.end == VisitEnd::nothing_to_note ? std::nullopt : std::optional(to_hex(note.id)));
        json.key("grades").begin_list();
        for (const Question question : questions_of(note.kind))
            json.begin_object()
                .member("what", word_of(question))
                .member("before", word_of(standing_on(note.before, question).grade))
                .member("after", word_of(standing_on(note.after, question).grade))
                .end_object();
        json.end_list().member("next", note.next).end_object();
    }
    json.end_list().key("look_at").begin_list();
    if (report.job.outcome)
        for (const auto& step : noise_steps(*report.job.outcome))
            json.begin_object().member("heard", step.heard).member("look", step.look).end_object();
    json.end_list();
    write_job_stock(json, report.stock);
    json.key("written").flag(report.written).end_object();
    return json_answer("job.close", json.take());
}

}  // namespace tapbook
