// How does a job end? Its outcome, and everything that holds it back; then what became of its readings.
#include <fmt/format.h>

#include "page/job_parts.h"
#include "page/pages.h"

namespace tapbook {
namespace {

struct CloseForm {
    std::string outcome, minutes, remarks, outcome_said, minutes_said;
    std::vector<std::string> held_back;  // what the catalog says against it
    bool sure = false;
};

bool is_good(const CloseForm& form) {
    return form.outcome_said.empty() && form.minutes_said.empty() && form.held_back.empty();
}

PageAnswer close_form(const Catalog& catalog, const PageRequest& request, const ShopJob& job, const CloseForm& form) {
    Page page(request, catalog.is_practice(), "Close the job", PagePart::jobs);
    Html& html = page.html();
    if (!is_good(form)) html.begin("span", {{"data-refused", "yes"}}).end();
    if (!form.held_back.empty()) {
        write_telling(html, Telling::wrong, "Not closed: something holds it back.");
        html.begin("ul", {{"class", "plain"}});
        for (const auto& words : form.held_back) html.element("li", words);
        html.end().line();
    }
    write_job_head(html, catalog, job, job.state == JobState::open ? "Close the job" : "This job is closed");
    if (job.state == JobState::closed) {
        begin_form(html, request, job_address(job.code, "open"));
        html.element("p", "Open it again to correct it; closing it then notes only what changed.");
        html.begin("div", {{"class", "act"}});
        write_action(html, request, "Open it again");
        html.end().end().line();
        return page.answer();
    }
    html.element("p", job.visits.size() == 1
                          ? std::string("One place was read: it becomes a note.")
                          : fmt::format("{} places were read: each becomes one note.", job.visits.size()));
    begin_form(html, request, job_address(job.code, "close"), job.code + "-close");
    FormChoices outcomes;
    for (const auto word : spellings<JobOutcome>()) outcomes.emplace_back(word, word);
    write_radios(html, "outcome", "How did it end?", outcomes, form.outcome, form.outcome_said);
    html.begin("div", {{"class", "boxes"}}).line();
    write_form_box(html, {.name = "minutes",
                          .label = "The whole job took",
                          .value = form.minutes,
                          .unit = "min",
                          .complaint = form.minutes_said,
                          .is_number = true});
    write_form_box(html, {.name = "remarks", .label = "Anything else", .value = form.remarks, .is_wide = true});
    html.end().line();
    write_tick(html, "rest", "All that is open on the list as it left is ok", false);
    if (!form.held_back.empty())
        write_tick(html, "sure", "It is right so: leave out what is open, keep odd readings as they are", form.sure);
    html.begin("div", {{"class", "act"}});
    write_action(html, request, "Close the job");
    html.end().end().line();
    return page.answer(is_good(form) ? 200 : 422);
}

PageAnswer close_page(PageDesk& desk, const PageRequest& request) {
    const Catalog& catalog = desk.catalog();
    const AskedJob asked = asked_job(catalog, request);
    CloseForm form;
    form.remarks = asked.job.remarks;
    if (asked.job.taken_minutes) form.minutes = std::to_string(*asked.job.taken_minutes);
    return close_form(catalog, request, asked.job, form);
}

void write_visit(Html& html, const ClosedVisit& visit) {
    const NoteReport& note = visit.note;
    html.begin("article", {{"class", "card"}});
    html.element("h3",
                 place_in_job(note.path).empty() ? std::string("sound system") : std::string(place_in_job(note.path)));
    html.element("p", end_words(visit));
    if (is_change(visit.end)) {
        for (const Question question : questions_of(note.kind))
            write_fact(html, word_of(question), change_words(note.before, note.after, question));
        for (const auto& complaint : note.complaints)
            write_fact(html, complaint.severity == EntrySeverity::info ? "info" : "you said",
                       complaint_words(complaint));
        write_fact(html, "next", note.next);
    }
    html.end().line();
}

PageAnswer closed_page(const Catalog& catalog, const PageRequest& request, const JobCloseReport& report) {
    Page page(request, catalog.is_practice(), "Closed", PagePart::jobs);
    Html& html = page.html();
    html.begin("span", {{"data-saved", report.job.code + "-close"}}).end();
    write_telling(
        html, Telling::done, "Saved: the job is closed.",
        report.visits.empty() ? "Nothing was read on this job, so nothing was noted." : "Its readings are notes now.");
    write_job_head(html, catalog, report.job, "What the readings became");
    for (const auto& visit : report.visits) write_visit(html, visit);
    if (report.job.outcome && !noise_steps(*report.job.outcome).empty()) {
        html.element("h2", "Likeliest first");
        for (const auto& step : noise_steps(*report.job.outcome)) write_fact(html, step.heard, step.look);
    }
    begin_form(html, request, job_address(report.job.code, "open"));
    html.begin("p", {{"class", "ways"}});
    write_link(html, job_address(report.job.code), "To the job", "way");
    write_second_action(html, request, "Undo: open it again");
    html.end().end().line();
    return page.answer();
}

// Every word that may be said to be sure of: the items of the list and the places read.
std::set<std::string, std::less<>> all_sure(const ShopJob& job) {
    std::set<std::string, std::less<>> sure = {"rest"};
    for (const auto& visit : job.visits) sure.emplace(place_in_job(visit.path));
    return sure;
}

PageAnswer close_job(PageDesk& desk, const PageRequest& request) {
    Catalog catalog = desk.catalog_to_write();
    const AskedJob asked = asked_job(catalog, request);
    CloseForm form;
    form.outcome = request.form.text("outcome").value_or("");
    form.minutes = request.form.text("minutes").value_or("");
    form.remarks = nfc(request.form.text("remarks").value_or(""));
    form.sure = request.form.has("sure");
    JobClosing closing;
    const auto outcome = parse_word<JobOutcome>(form.outcome);
    if (!outcome) form.outcome_said = "how did it end? press one";
    closing.outcome = outcome.value_or(JobOutcome::fine);
    if (!form.minutes.empty()) {
        const auto minutes = scaled(form.minutes, 0);
        const auto* number = std::get_if<std::int64_t>(&minutes);
        if (number == nullptr || *number < 0 || *number > 100'000)
            form.minutes_said = "whole minutes, 0 to 100000";
        else
            closing.minutes = static_cast<int>(*number);
    }
    if (!is_utf8(form.remarks) || hidden_character(form.remarks) || form.remarks.size() > most_text_bytes)
        form.held_back.emplace_back("remarks: write them in plain characters on one line");
    closing.remarks = form.remarks;
    if (request.form.has("rest")) closing.left.rest = CheckAnswer::ok;
    if (form.sure) closing.sure = all_sure(asked.job);
    if (!is_good(form)) return close_form(catalog, request, asked.job, form);
    try {
        return closed_page(catalog, request, catalog.close_job(asked.job.number, closing, request.today));
    } catch (const InputRefused& refused) {
        for (const auto& complaint : refused.complaints()) form.held_back.push_back(complaint.message);
        return close_form(catalog, request, asked.job, form);
    }
}

PageAnswer reopen(PageDesk& desk, const PageRequest& request) {
    Catalog catalog = desk.catalog_to_write();
    const AskedJob asked = asked_job(catalog, request);
    if (asked.job.state == JobState::open) return see_other(job_address(asked.job.code));
    catalog.reopen_job(asked.job.number);
    return job_page_with(desk, request, "Open again: correct it, then close it; only what changed is noted anew.", {});
}

constexpr Route list[] = {{PageMethod::get, "/job/{}/close", RouteFor::reader, close_page},
                          {PageMethod::post, "/job/{}/close", RouteFor::paired_phone, close_job},
                          {PageMethod::post, "/job/{}/open", RouteFor::paired_phone, reopen}};

}  // namespace

std::span<const Route> job_close_routes() {
    return list;
}

}  // namespace tapbook
