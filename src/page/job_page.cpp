// What is this job, and what comes next? Its plan with the steps to tick off, what was read, what is still undone.
#include <fmt/format.h>

#include <algorithm>

#include "page/job_parts.h"
#include "page/pages.h"

namespace tapbook {
namespace {

void write_facts(Html& html, const ShopJob& job) {
    html.begin("p", {{"class", "code"}}).text(job.code).end();
    const std::string state =
        job.state == JobState::open
            ? fmt::format("open since {}", job.started)
            : fmt::format("closed on {}{}", job.closed,
                          job.outcome ? fmt::format(", {}", word_of(*job.outcome)) : std::string());
    write_fact(html, "job", fmt::format("{}, {}", job.number, state));
    write_fact(html, "customer", job.customer);
    write_fact(html, "by", job.initials);
    write_fact(html, "agreed", job.agreed);
    write_fact(html, "remarks", job.remarks);
    if (job.taken_minutes) write_fact(html, "took", fmt::format("{} min", *job.taken_minutes));
}

std::string list_state(const std::vector<CheckEntry>& list) {
    const std::size_t missing = missing_items(list).size();
    if (missing == 0) return "filled";
    return list.empty() ? "not filled yet" : fmt::format("{} left to fill", missing);
}

// What can be done, in the order in which it is done.
void write_next(Html& html, const ShopJob& job) {
    const auto row = [&](std::string_view part, std::string_view words, const std::string& state) {
        html.begin("li").begin("a", {{"href", job_address(job.code, part)}, {"class", "row"}});
        html.element("b", words).text(" ").element("span", state, {{"class", "quiet"}}).end().end().line();
    };
    html.begin("nav", {{"aria-label", "Job"}}).begin("ul", {{"class", "rows"}}).line();
    row("came", "As it came", list_state(job.came));
    row("plan", "Plan", job.plan.tap.empty() ? "not chosen yet" : std::string(place_in_job(job.plan.tap)));
    row("read", "Read a tap", job.visits.empty() ? "nothing read yet" : fmt::format("{} read", job.visits.size()));
    row("left", "As it left", list_state(job.left));
    row("close", job.state == JobState::open ? "Close" : "Closed", "its readings become notes");
    if (!job.plan.tap.empty()) {
        row("drawing", "Drawing", "");
        row("sheet", "Sheet", "to print");
    }
    html.end().end().line();
}

// A step that ends with what is typed on the command line leads to the page that does it instead: its words without the
// command, the page of the job, and what the link says. The part is "" when there is no such page.
struct StepWords {
    std::string what, part, link;
};

StepWords step_words(const std::string& what) {
    constexpr std::string_view command = " (tapbook job ";
    const auto at = what.find(command);
    if (at == std::string::npos || what.back() != ')') return {what, {}, {}};
    const auto word = at + command.size();
    const std::string part = what.substr(word, what.find(' ', word) - word);
    if (part == "came") return {what.substr(0, at), part, "As it came"};
    if (part == "close") return {what.substr(0, at), part, "Close"};
    return {what, {}, {}};
}

void write_step(Html& html, const ShopJob& job, const JobPlanAnswer& plan, const PlanStep& step, int number) {
    html.begin("li", {{"class", "step"}}).begin("label", {{"class", "tick"}});
    html.empty("input", {{"type", "checkbox"}, {"data-step", step.id}});
    const StepWords words = step_words(step.what);
    html.element("span", fmt::format("{}. {}", number, words.what)).end().line();
    if (!words.part.empty()) {
        html.begin("p", {{"class", "readings"}});
        write_link(html, job_address(job.code, words.part), words.link, "more");
        html.end();
    }
    for (const auto& caution : step.cautions) write_caution(caution.title, caution.text, html);
    if (!step.readings.empty()) {
        html.begin("ul", {{"class", "readings"}}).line();
        for (const auto& reading : step.readings) {
            html.begin("li").element("b", range_words(reading.range), {{"class", "expected"}});
            html.text(fmt::format(" {}{}", reading.what, reading.why.empty() ? "" : fmt::format(" ({})", reading.why)));
            html.end().line();
        }
        html.begin("li");
        write_link(html, address(job_address(job.code, "read"), {{"at", std::string(place_in_job(plan.plan.tap))}}),
                   "Write the readings down", "more");
        html.end().end();
    }
    html.end().line();
}

void write_phase(Html& html, PowerPhase phase) {
    const std::string_view word = word_of(phase);
    html.begin("h3").element("span", word.substr(0, 1), {{"class", "letter"}}).text(word.substr(1)).end();
}

void write_steps(Html& html, const ShopJob& job, const JobPlanAnswer& plan) {
    html.begin("section", {{"class", "steps"}, {"data-ticks", job.code}}).element("h2", "Steps").line();
    html.element("p", "Ticks stay on this phone.", {{"class", "quiet"}}).line();
    std::optional<PowerPhase> phase;
    int number = 0;
    for (const auto& step : plan.steps) {
        if (phase != step.phase) {
            if (phase) html.end().end();
            html.begin("section", {{"class", "phase"}});
            write_phase(html, step.phase);
            html.begin("ol").line();
        }
        phase = step.phase;
        write_step(html, job, plan, step, ++number);
    }
    if (phase) html.end().end();
    html.end().line();
}

void write_plan_fact(Html& html, const SheetFact& fact) {
    html.begin("div", {{"class", "fact"}}).element("span", fact.label, {{"class", "of"}}).begin("div");
    html.element("b", fact.value);
    if (fact.verdict) {
        html.text(" ");
        write_verdict(html, *fact.verdict);
    }
    if (!fact.conductors.empty()) write_conductors(fact.conductors, html);
    for (const auto& line : fact.rests_on) html.element("p", line, {{"class", "quiet"}});
    html.end().end().line();
}

void write_plan(PageDesk& desk, const Catalog& catalog, const AskedJob& asked, Html& html) {
    if (asked.job.plan.tap.empty()) return;
    try {
        const JobPlanAnswer plan = plan_of_job(desk, catalog, asked);
        html.begin("section", {{"class", "card plan"}}).element("h2", "Plan").line();
        for (const auto& fact : sheet_facts(sheet_of_job(catalog, plan, asked.jobs, {}))) write_plan_fact(html, fact);
        for (const auto& finding : plan.install.plan_findings)
            if (finding.effect == Effect::stop || finding.effect == Effect::care)
                write_fact(html, word_of(finding.effect), finding.says);
        html.end().line();
        write_steps(html, asked.job, plan);
    } catch (const PlanRefused& refused) {
        write_telling(html, Telling::wrong, upper_first(refused.what()),
                      refused.way_out().empty() ? "Choose the plan anew." : upper_first(refused.way_out()));
    }
}

void write_visits(Html& html, const ShopJob& job) {
    if (job.visits.empty()) return;
    html.begin("section").element("h2", "Read on this job").begin("ul", {{"class", "rows"}}).line();
    for (const auto& visit : job.visits) {
        const std::string place(place_in_job(visit.path));
        const std::string at = visit.kind == NoteKind::system ? std::string() : place;
        html.begin("li").begin(
            "a", {{"href", address(job_address(job.code, "read"), {{"at", at}, {"kind", at.empty() ? "system" : ""}})},
                  {"class", "row"}});
        html.element("b", place.empty() ? std::string("sound system") : place).text(" ");
        std::string words = fmt::format("{} value{}", visit.readings.size(), visit.readings.size() == 1 ? "" : "s");
        if (visit.note) words += fmt::format(", note {}", short_id(*visit.note));
        html.element("span", words, {{"class", "quiet"}}).end().end().line();
    }
    html.end().end().line();
}

void write_differences(Html& html, const ShopJob& job) {
    const auto different = differences(job);
    if (different.empty()) return;
    html.begin("section").element("h2", "Left otherwise than it came");
    for (const auto& one : different)
        write_fact(html, word_of(one.item),
                   fmt::format("came {}; left {}", checked_words(*one.came), checked_words(*one.left)));
    html.end().line();
}

void write_actions(Html& html, const PageRequest& request, const ShopJob& job) {
    if (job.actions.empty() && job.state != JobState::open) return;
    html.begin("section").element("h2", "Done for a while only");
    html.element("p", "A pulled fuse, an unplugged module: the job does not close while one is open.",
                 {{"class", "quiet"}});
    for (const auto& action : job.actions) {
        if (!action.closed.empty()) {
            write_fact(html, "put back", fmt::format("{} ({})", action.words, action.closed));
            continue;
        }
        begin_form(html, request, job_address(job.code, "action"));
        write_hidden(html, "done", std::to_string(action.number));
        html.element("p", fmt::format("{} (since {})", action.words, action.opened));
        write_second_action(html, request, "It is put back");
        html.end().line();
    }
    if (job.state == JobState::open) {
        begin_form(html, request, job_address(job.code, "action"), fmt::format("{}-action", job.code));
        write_form_box(html, {.name = "words", .label = "What was done"});
        html.begin("p", {{"class", "ways"}});
        write_second_action(html, request, "Write it down");
        html.end().end().line();
    }
    html.end().line();
}

PageAnswer job_page(PageDesk& desk, const PageRequest& request) {
    return job_page_with(desk, request, {}, {});
}

// A code from a sheet, however it was typed.
PageAnswer code_page(PageDesk& desk, const PageRequest& request) {
    return see_other(job_address(asked_job(desk.catalog(), request).job.code));
}

PageAnswer action_done(PageDesk& desk, const PageRequest& request) {
    Catalog catalog = desk.catalog_to_write();
    const AskedJob asked = asked_job(catalog, request);
    if (const auto done = request.form.text("done")) {
        const auto number = scaled(*done, 0);
        const auto* which = std::get_if<std::int64_t>(&number);
        if (which == nullptr || *which < 1 || *which > 100000) throw PageRefused(400, "there is no such action");
        catalog.end_action(asked.job.number, static_cast<int>(*which), request.today);
        return job_page_with(desk, request, "Saved: it is put back.", {});
    }
    const std::string words = nfc(request.form.text("words").value_or(""));
    if (folded(words).empty() || hidden_character(words) || words.size() > most_text_bytes)
        throw PageRefused(422, "write what was done in a few plain words", "for example: pulled fuse 31");
    catalog.start_action(asked.job.number, words, request.today);
    return job_page_with(desk, request, "Saved: it is open until it is put back.",
                         fmt::format("{}-action", asked.job.code));
}

constexpr Route list[] = {{PageMethod::get, "/job/{}", RouteFor::reader, job_page},
                          {PageMethod::get, "/j/{}", RouteFor::reader, code_page},
                          {PageMethod::get, "/J/{}", RouteFor::reader, code_page},
                          {PageMethod::post, "/job/{}/action", RouteFor::paired_phone, action_done}};

}  // namespace

std::span<const Route> job_routes() {
    return list;
}

AskedJob asked_job(const Catalog& catalog, const PageRequest& request) {
    const std::string& typed = request.caught.front();
    AskedJob asked{catalog.jobs(), {}};
    const auto code = parse_job_code(typed);
    for (const auto& job : asked.jobs)
        if ((code && job.code == *code) || std::to_string(job.number) == typed) {
            asked.job = job;
            return asked;
        }
    throw PageRefused(404, fmt::format("there is no job {}", shown(typed)), "the list of jobs shows all of them");
}

JobPlanAnswer plan_of_job(PageDesk& desk, const Catalog& catalog, const AskedJob& asked) {
    const ShopJob& job = asked.job;
    JobFacts facts{catalog.car(job.vehicle, job.year), catalog.converters(), {}, catalog.is_practice()};
    for (const auto& one : catalog.amplifiers())
        if (one.path == job.plan.amplifier) facts.amplifier = one;
    PlanWish wish;
    wish.system = job.system;
    wish.said = job.plan;
    if (job.plan.lowest_mhz) wish.lowest = millihertz(*job.plan.lowest_mhz);
    return planned_job(facts, job, wish, asked.jobs, desk.rules());
}

std::string car_of_job(std::span<const VehicleName> names, const ShopJob& job) {
    std::string car = job.vehicle;
    for (const auto& name : names)
        if (name.path == job.vehicle) car = fmt::format("{} {} {}", name.make, name.model, name.body);
    return fmt::format("{}{}, {}", car, job.year ? fmt::format(" {}", *job.year) : std::string(), job.system);
}

void write_job_head(Html& html, const Catalog& catalog, const ShopJob& job, std::string_view title) {
    html.element("h1", title).begin("p");
    write_link(html, job_address(job.code),
               fmt::format("Job {}: {}", job.code, car_of_job(catalog.vehicle_names(), job)), "more");
    html.end().line();
}

PageAnswer job_page_with(PageDesk& desk, const PageRequest& request, const std::string& done,
                         const std::string& saved) {
    const Catalog& catalog = desk.catalog();
    const AskedJob asked = asked_job(catalog, request);
    Page page(request, catalog.is_practice(), fmt::format("Job {}", asked.job.code), PagePart::jobs);
    Html& html = page.html();
    if (!done.empty()) write_telling(html, Telling::done, done);
    if (!saved.empty()) html.begin("span", {{"data-saved", saved}}).end();
    html.element("h1", car_of_job(catalog.vehicle_names(), asked.job)).line();
    write_facts(html, asked.job);
    html.begin("p");
    write_link(html, car_address(asked.job.vehicle, asked.job.year), "What is known of this car", "more");
    html.end();
    write_next(html, asked.job);
    write_plan(desk, catalog, asked, html);
    write_visits(html, asked.job);
    write_differences(html, asked.job);
    write_actions(html, request, asked.job);
    return page.answer();
}

}  // namespace tapbook
