// What did the meter say at this tap, and what does it mean? The form of a reading, its explanation at once, undo, and
// the next circuit.
#include <fmt/format.h>

#include <algorithm>

#include "page/job_parts.h"
#include "page/note_form.h"
#include "page/pages.h"

namespace tapbook {
namespace {

// The place of the job that the address names; its sound system with kind=system.
struct ReadAt {
    CarFacts car;
    std::string path;
    NoteKind kind = NoteKind::pair;
};

std::string system_path(const ShopJob& job) {
    return path_join(job.vehicle, job.system);
}

ReadAt read_at_place(const Catalog& catalog, const ShopJob& job, const FormFields& fields) {
    ReadAt place{catalog.car(job.vehicle, job.year), {}, NoteKind::pair};
    if (fields.text("kind").value_or("") == "system") {
        place.path = system_path(job);
        place.kind = NoteKind::system;
        return place;
    }
    const std::string at = fields.text("at").value_or("");
    place.path = at.empty() ? job.plan.tap : fmt::format("{}/{}", system_path(job), at);
    if (place.path.empty()) return place;
    const auto kind = kind_at(place.car, place.path);
    if (!kind) throw PageRefused(404, fmt::format("this job has no tap \"{}\"", shown(at)), "choose one of the list");
    place.kind = *kind;
    return place;
}

std::string form_name(const ShopJob& job, std::string_view path) {
    return fmt::format("{}-{}", job.code, path_tail(path, vehicle_depth));
}

const JobVisit* visit_at(const ShopJob& job, std::string_view path) {
    for (const auto& visit : job.visits)
        if (visit.path == path) return &visit;
    return nullptr;
}

std::vector<std::string> places_read(const ShopJob& job) {
    std::vector<std::string> done;
    for (const auto& visit : job.visits)
        if (!visit.readings.empty()) done.push_back(visit.path);
    return done;
}

// Every place of the car's system that can be read.
void write_choice_of_places(Html& html, const ShopJob& job, const CarFacts& car) {
    const auto done = places_read(job);
    html.begin("ul", {{"class", "rows"}}).line();
    const auto row = [&](const std::string& at, std::string_view kind, const std::string& name,
                         const std::string& where, bool is_done) {
        html.begin("li").begin(
            "a", {{"href", address(job_address(job.code, "read"), {{"at", at}, {"kind", std::string(kind)}})},
                  {"class", "row"}});
        html.element("b", name).text(" ").element("span", is_done ? where + "; read" : where, {{"class", "quiet"}});
        html.end().end().line();
    };
    row({}, "system", "the sound system itself", "separate amplifier or not",
        std::find(done.begin(), done.end(), system_path(job)) != done.end());
    const bool is_unrecorded = job.system == unrecorded_system;
    std::vector<std::string> told;
    for (const auto& tap : car.taps) {
        const std::string at(path_tail(tap.code, system_depth));
        const bool is_told = std::find(told.begin(), told.end(), at) != told.end();
        if ((!is_unrecorded && tap.system != job.system) || is_told) continue;
        if (!carries_signal(tap.circuit.role) && !is_power(tap.circuit.role)) continue;
        told.push_back(at);
        row(at, "", circuit_words(tap), tap.tap.place,
            std::find(done.begin(), done.end(), fmt::format("{}/{}", system_path(job), at)) != done.end());
    }
    html.end().line();
}

// What is known of the place, to be held against what is found.
void write_known(Html& html, const CarFacts& car, const ReadAt& place) {
    for (const auto& tap : car.taps) {
        if (tap.code != place.path) continue;
        html.begin("section", {{"class", "card"}}).begin("div", {{"class", "head"}});
        html.element("h2", circuit_words(tap));
        write_grade(html, place.kind == NoteKind::pair ? tap.pair.pair.grade : tap.switched.circuit.grade);
        html.end().element("p", place_words(tap), {{"class", "quiet"}});
        write_conductors(place.kind == NoteKind::pair ? conductors_of(tap.pair) : conductor_of(tap.switched), html);
        for (const auto& line : grade_lines(tap)) html.element("p", line, {{"class", "line"}});
        for (const Hazard hazard : tap.tap.hazards) {
            const auto text = hazard_text(hazard);
            write_caution(text.title, text.caution, html);
        }
        html.end().line();
    }
}

void write_reading_form(Html& html, const PageRequest& request, const ShopJob& job, const ReadAt& place,
                        const NoteForm& form) {
    begin_form(html, request, job_address(job.code, "read"), form_name(job, place.path));
    if (place.kind == NoteKind::system)
        write_hidden(html, "kind", "system");
    else
        write_hidden(html, "at", path_tail(place.path, system_depth));
    write_note_form(html, form);
    html.begin("div", {{"class", "act"}});
    write_action(html, request, "Save and next circuit", "next");
    write_second_action(html, request, "Save", "stay");
    html.end().end().line();
}

// What was typed before, else method and conditions of the place read last.
NoteForm form_at(const ShopJob& job, const ReadAt& place, const PageRequest& request) {
    if (const JobVisit* visit = visit_at(job, place.path); visit != nullptr && !visit->readings.empty())
        return note_form_of(place.kind, visit->readings);
    NoteForm form;
    form.kind = place.kind;
    if (const std::string method = request.kept_text("method"); !method.empty()) form.typed["method"] = method;
    if (place.kind == NoteKind::pair)
        if (const std::string volume = request.kept_text("full_volume"); !volume.empty())
            form.typed["full_volume"] = volume;
    return form;
}

void write_explained(Html& html, const ReadingAnswer& answer) {
    if (answer.verdict && answer.verdict->stop)
        write_telling(html, Telling::stop, "STOP: do not connect anything",
                      fmt::format("It reads as {}.", spaced(word_of(answer.verdict->reads_as))));
    html.begin("section", {{"class", "card"}}).element("h2", "What it means").line();
    for (const auto& complaint : answer.complaints)
        if (complaint.severity != EntrySeverity::info)
            write_caution(severity_words(complaint.severity), complaint_words(complaint), html);
    if (answer.verdict) {
        write_fact(html, "reads as", spaced(word_of(answer.verdict->reads_as)));
        for (const auto sentence : answer.verdict->says()) html.element("p", sentence);
    }
    if (answer.live) write_fact(html, "live", spaced(word_of(*answer.live)));
    for (const auto& compared : answer.compared) {
        html.begin("p", {{"class", "said"}}).element("span", compared.predicted.what).text(": ");
        html.element("b", fmt::format("{:g} V", static_cast<double>(compared.millivolts) / 1000));
        html.text(fmt::format(", {}", against_words(compared)));
        if (!compared.means.empty()) html.text(". ").element("b", compared.means);
        html.end().line();
    }
    for (const auto& complaint : answer.complaints)
        if (complaint.severity == EntrySeverity::info) write_fact(html, "info", complaint_words(complaint));
    write_fact(html, "catalog", answer.catalog_line);
    if (!answer.to_read.empty()) write_fact(html, "not read yet", fmt::format("{}", fmt::join(answer.to_read, ", ")));
    html.end().line();
}

// Undo: the place gets what it had before.
void write_undo(Html& html, const PageRequest& request, const ShopJob& job, const ReadAt& place,
                const NoteForm& before) {
    begin_form(html, request, job_address(job.code, "read"));
    if (place.kind == NoteKind::system)
        write_hidden(html, "kind", "system");
    else
        write_hidden(html, "at", path_tail(place.path, system_depth));
    for (const auto& [name, text] : before.typed) write_hidden(html, name, text);
    html.begin("p", {{"class", "ways"}});
    write_second_action(html, request, "Undo", "undo");
    html.end().end().line();
}

std::string name_of(const ReadAt& place) {
    return place.kind == NoteKind::system ? "the sound system" : std::string(path_tail(place.path, system_depth));
}

PageAnswer read_page(PageDesk& desk, const PageRequest& request) {
    const Catalog& catalog = desk.catalog();
    const AskedJob asked = asked_job(catalog, request);
    const ShopJob& job = asked.job;
    const ReadAt place = read_at_place(catalog, job, request.query);
    const bool is_list = !request.query.has("at") && !request.query.has("kind");
    Page page(request, catalog.is_practice(), is_list ? "Read a tap" : "Read " + name_of(place), PagePart::jobs);
    Html& html = page.html();
    write_job_head(html, catalog, job, is_list ? "Which tap was read?" : "Read " + name_of(place));
    if (is_list) {
        write_choice_of_places(html, job, place.car);
        return page.answer();
    }
    write_known(html, place.car, place);
    if (job.state == JobState::open)
        write_reading_form(html, request, job, place, form_at(job, place, request));
    else
        html.element("p", "This job is closed: open it again to correct it.");
    return page.answer();
}

PageAnswer refused_reading(PageDesk& desk, const PageRequest& request, const ShopJob& job, const ReadAt& place,
                           const NoteForm& form, std::string_view why) {
    const Catalog& catalog = desk.catalog();
    Page page(request, catalog.is_practice(), "Not saved", PagePart::jobs);
    Html& html = page.html();
    html.begin("span", {{"data-refused", "yes"}}).end();
    write_telling(html, Telling::wrong, "Not saved yet.", why);
    write_job_head(html, catalog, job, "Read " + name_of(place));
    write_reading_form(html, request, job, place, form);
    return page.answer(422);
}

void keep_conditions(PageAnswer& answer, const NoteForm& form) {
    for (const std::string_view name : {"method", "full_volume"})
        if (const auto found = form.typed.find(name); found != form.typed.end())
            answer.keep.emplace_back(name, found->second);
}

// After saving: what it means, undo, and the next circuit where that was asked for.
PageAnswer saved_reading(const Catalog& catalog, const PageRequest& request, const ShopJob& job, const ReadAt& place,
                         const ReadingAnswer& explained, const NoteForm& before, const NoteForm& form) {
    const bool wants_next = request.form.text("then").value_or("") == "next";
    const auto next = next_place(place.car, place.path, places_read(job));
    Page page(request, catalog.is_practice(), "Saved", PagePart::jobs);
    Html& html = page.html();
    html.begin("span", {{"data-saved", form_name(job, place.path)}}).end();
    write_telling(html, Telling::done, fmt::format("Saved: {}", name_of(place)),
                  "It becomes a note when the job is closed.");
    write_job_head(html, catalog, job, wants_next && next ? "Next circuit" : "Reading");
    write_explained(html, explained);
    write_undo(html, request, job, place, before);
    const bool must_stop = explained.verdict && explained.verdict->stop;
    if (next && wants_next && !must_stop) {
        const ReadAt there{place.car, *next, kind_at(place.car, *next).value_or(NoteKind::pair)};
        html.element("h2", "Next: " + name_of(there));
        write_known(html, place.car, there);
        NoteForm empty;
        empty.kind = there.kind;
        for (const std::string_view name : {"method", "full_volume"})
            if (const auto found = form.typed.find(name); found != form.typed.end())
                empty.typed[std::string(name)] = found->second;
        write_reading_form(html, request, job, there, empty);
    } else {
        html.begin("p", {{"class", "ways"}});
        if (next)
            write_link(html,
                       address(job_address(job.code, "read"), {{"at", std::string(path_tail(*next, system_depth))}}),
                       "Next circuit", "way");
        write_link(html, job_address(job.code), "To the job", "way");
        html.end();
    }
    PageAnswer answer = page.answer();
    keep_conditions(answer, form);
    return answer;
}

PageAnswer save_reading(PageDesk& desk, const PageRequest& request) {
    Catalog catalog = desk.catalog_to_write();
    const AskedJob asked = asked_job(catalog, request);
    const ReadAt place = read_at_place(catalog, asked.job, request.form);
    if (place.path.empty()) throw PageRefused(400, "which tap was read?", "choose one of the list");
    NoteForm form = typed_note_form(place.kind, request.form);
    const bool is_undo = request.form.text("then").value_or("") == "undo";
    JobReading reading{place.path, place.kind, read_note_form(form), false, true};
    if (!form.complaints.empty())
        return refused_reading(desk, request, asked.job, place, form, "Something cannot be read: see below.");
    if (!is_undo && !says_something(reading.values, place.kind))
        return refused_reading(desk, request, asked.job, place, form,
                               "The reading says nothing yet: give colours or volts.");
    const TapLedger ledger = catalog.ledger_at(place.path);
    const JobVisit* visit = visit_at(asked.job, place.path);
    const NoteForm before = note_form_of(place.kind, visit != nullptr ? visit->readings : Values{});
    // What the page does not show (hazards, photo) stays as it was read before.
    if (visit != nullptr)
        for (const auto& [name, value] : visit->readings)
            if (!reading.values.contains(name) && name != "kind" && name != "path")
                for (const std::string_view kept : {"hazards", "photo"})
                    if (name == kept) reading.values[name] = value;
    const JobReport report = catalog.read_at_job(asked.job.number, reading, request.today);
    ReadingAnswer explained = reading_answer(report.job, place.path, place.car, ledger);
    explained.written = report.written;
    if (is_undo)
        return see_other(
            address(job_address(asked.job.code, "read"), {{"at", std::string(path_tail(place.path, system_depth))},
                                                          {"kind", place.kind == NoteKind::system ? "system" : ""}}));
    return saved_reading(catalog, request, report.job, place, explained, before, form);
}

constexpr Route list[] = {{PageMethod::get, "/job/{}/read", RouteFor::reader, read_page},
                          {PageMethod::post, "/job/{}/read", RouteFor::paired_phone, save_reading}};

}  // namespace

std::span<const Route> reading_routes() {
    return list;
}

}  // namespace tapbook
