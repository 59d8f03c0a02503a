// What was found at this tap, without a job? One note: how, colours, readings; checks beside the boxes, undo in the
// message that says it is saved, and the next circuit.
#include <fmt/format.h>

#include "page/car_page_parts.h"
#include "page/note_form.h"
#include "page/pages.h"

namespace tapbook {
namespace {

// The tap of the car that the form or the address names: its path below the vehicle.
struct NotedTap {
    AskedCar asked;
    std::string path;
    NoteKind kind = NoteKind::pair;
};

NotedTap noted_tap(const Catalog& catalog, const PageRequest& request, const FormFields& fields) {
    NotedTap tap{asked_car(catalog, request), {}, NoteKind::pair};
    const std::string typed = fields.text("tap").value_or("");
    tap.path = fmt::format("{}/{}", tap.asked.facts.vehicle.path, typed);
    if (fields.text("kind").value_or("") == "system") {
        bool is_known = typed == unrecorded_system;
        for (const auto& one : tap.asked.facts.systems) is_known = is_known || one.code == typed;
        if (!is_known) throw PageRefused(404, "this car has no such sound system", "choose one on the car's page");
        tap.kind = NoteKind::system;
        return tap;
    }
    const auto kind = kind_at(tap.asked.facts, tap.path);
    if (!kind)
        throw PageRefused(404, fmt::format("this car has no tap \"{}\"", shown(typed)), "choose one on the car's page");
    tap.kind = *kind;
    return tap;
}

std::string tap_words(const NotedTap& tap) {
    return std::string(path_tail(tap.path, vehicle_depth));
}

// Beside the boxes of the table: whose car it is, and who looked.
struct WhoForm {
    std::string year, car, initials;
    std::string year_said, car_said, initials_said;
    bool sure = false, asks_sure = false;
};

void write_form(Html& html, const PageRequest& request, const NotedTap& tap, const NoteForm& form, const WhoForm& who) {
    begin_form(html, request, "/note/" + encoded_path(tap.asked.facts.vehicle.path), "note-" + tap.path);
    write_hidden(html, "tap", tap_words(tap));
    if (tap.kind == NoteKind::system) write_hidden(html, "kind", "system");
    write_note_form(html, form);
    html.begin("div", {{"class", "boxes"}}).line();
    write_form_box(html, {.name = "year",
                          .label = "Model year of this car",
                          .value = who.year,
                          .complaint = who.year_said,
                          .is_number = true});
    write_form_box(html, {.name = "car",
                          .label = "Plate or VIN",
                          .value = who.car,
                          .complaint = who.car_said,
                          .remark = "only a salted token of it is stored"});
    write_form_box(
        html, {.name = "initials", .label = "Your initials", .value = who.initials, .complaint = who.initials_said});
    html.end().line();
    if (who.asks_sure) write_tick(html, "sure", "Yes, it is what I found", who.sure);
    html.begin("div", {{"class", "act"}});
    write_action(html, request, "Save and next circuit", "next");
    write_second_action(html, request, "Save", "stay");
    html.end().end().line();
}

void write_head(Html& html, const NotedTap& tap, std::string_view title) {
    const CarFacts& car = tap.asked.facts;
    html.element("h1", title).begin("p");
    write_link(html, car_address(car.vehicle.path, car.year, tap.asked.system), car_title(car.vehicle, car.year),
               "more");
    html.end().line();
}

WhoForm who_before(const PageRequest& request, const NotedTap& tap) {
    WhoForm who;
    who.initials = request.kept_text("initials");
    if (tap.asked.facts.year) who.year = std::to_string(*tap.asked.facts.year);
    return who;
}

PageAnswer note_page(PageDesk& desk, const PageRequest& request) {
    const Catalog& catalog = desk.catalog();
    const NotedTap tap = noted_tap(catalog, request, request.query);
    Page page(request, catalog.is_practice(), "Note " + tap_words(tap), PagePart::find);
    write_head(page.html(), tap, "Note what you found");
    page.html().element("h2", tap_words(tap));
    NoteForm form;
    form.kind = tap.kind;
    if (const std::string method = request.kept_text("method"); !method.empty()) form.typed["method"] = method;
    write_form(page.html(), request, tap, form, who_before(request, tap));
    return page.answer();
}

PageAnswer refused_note(const Catalog& catalog, const PageRequest& request, const NotedTap& tap, const NoteForm& form,
                        const WhoForm& who, std::string_view why) {
    Page page(request, catalog.is_practice(), "Not saved", PagePart::find);
    Html& html = page.html();
    html.begin("span", {{"data-refused", "yes"}}).end();
    write_telling(html, Telling::wrong, "Not saved yet.", why);
    write_head(html, tap, "Note what you found");
    html.element("h2", tap_words(tap));
    write_form(html, request, tap, form, who);
    return page.answer(422);
}

bool is_plain(const std::string& text) {
    return is_utf8(text) && !hidden_character(text) && text.size() <= most_text_bytes;
}

WhoForm typed_who(const FormFields& fields, const Vehicle& car, Values& values) {
    WhoForm who;
    who.year = fields.text("year").value_or("");
    who.car = fields.text("car").value_or("");
    who.initials = nfc(fields.text("initials").value_or(""));
    who.sure = fields.has("sure");
    if (!who.year.empty()) {
        const auto year = parse_model_year(who.year);
        if (const auto* refusal = std::get_if<YearRefusal>(&year))
            who.year_said = refusal->message();
        else if (std::get<int>(year) < car.first_year || std::get<int>(year) > car.last_year)
            who.year_said = fmt::format("this car was built from {} to {}", car.first_year, car.last_year);
        else
            values["year"] = std::int64_t{std::get<int>(year)};
    }
    if (!is_plain(who.initials))
        who.initials_said = "write them in plain characters";
    else if (!who.initials.empty())
        values["initials"] = who.initials;
    if (!is_plain(who.car) || (!who.car.empty() && folded(who.car).empty()))
        who.car_said = "write the plate or VIN in letters and digits";
    return who;
}

void write_next(Html& html, const PageRequest& request, const NotedTap& tap, const NoteForm& form, const WhoForm& who) {
    const auto next = next_place(tap.asked.facts, tap.path, {});
    html.begin("p", {{"class", "ways"}});
    write_link(html, car_address(tap.asked.facts.vehicle.path, tap.asked.facts.year, tap.asked.system), "To the car",
               "way");
    html.end();
    if (!next || request.form.text("then").value_or("") != "next") return;
    NotedTap there{tap.asked, *next, kind_at(tap.asked.facts, *next).value_or(NoteKind::pair)};
    html.element("h2", "Next: " + tap_words(there));
    NoteForm empty;
    empty.kind = there.kind;
    if (const auto method = form.typed.find("method"); method != form.typed.end())
        empty.typed["method"] = method->second;
    WhoForm same = who;
    same.sure = same.asks_sure = false;
    write_form(html, request, there, empty, same);
}

PageAnswer saved_note(const Catalog& catalog, const PageRequest& request, const NotedTap& tap, const NoteForm& form,
                      const WhoForm& who, const NoteReport& report) {
    Page page(request, catalog.is_practice(), "Saved", PagePart::find);
    Html& html = page.html();
    html.begin("span", {{"data-saved", "note-" + tap.path}}).end();
    if (report.already_here)
        write_telling(html, Telling::done, fmt::format("Noted today already as {}.", short_id(report.id)),
                      "Nothing was added. A second car needs its plate.");
    else
        write_telling(html, Telling::done, fmt::format("Saved: note {}.", short_id(report.id)), report.next);
    write_head(html, tap, tap_words(tap));
    for (const Question question : questions_of(report.kind))
        write_fact(html, word_of(question), change_words(report.before, report.after, question));
    for (const auto& complaint : report.complaints)
        write_fact(html, complaint.severity == EntrySeverity::info ? "info" : "you said", complaint_words(complaint));
    if (report.written) {
        begin_form(html, request, "/undo");
        write_hidden(html, "note", to_hex(report.id));
        html.begin("p", {{"class", "ways"}});
        write_second_action(html, request, "Undo");
        html.end().end().line();
    }
    write_next(html, request, tap, form, who);
    PageAnswer answer = page.answer();
    if (!who.initials.empty()) answer.keep.emplace_back("initials", who.initials);
    if (const auto method = form.typed.find("method"); method != form.typed.end())
        answer.keep.emplace_back("method", method->second);
    return answer;
}

// What the checks say, beside the boxes; the tick when it is only a question.
void put_checks(const NoteReport& report, NoteForm& form, WhoForm& who) {
    bool is_final = false;
    for (const auto& complaint : report.complaints) {
        if (complaint.severity == EntrySeverity::info) continue;
        is_final = is_final || complaint.severity == EntrySeverity::refused;
        if (complaint.field == "car")
            who.car_said = complaint_words(complaint);
        else
            put_complaint(form, complaint);
    }
    who.asks_sure = !is_final;
}

PageAnswer save_note(PageDesk& desk, const PageRequest& request) {
    Catalog catalog = desk.catalog_to_write();
    const NotedTap tap = noted_tap(catalog, request, request.form);
    NoteForm form = typed_note_form(tap.kind, request.form);
    NoteDraft draft;
    draft.values = read_note_form(form);
    const bool says = says_something(draft.values, tap.kind);
    WhoForm who = typed_who(request.form, tap.asked.facts.vehicle, draft.values);
    if (!form.typed.contains("method")) form.complaints["method"] = "how was it found? press one";
    if (!form.complaints.empty() || !who.year_said.empty() || !who.car_said.empty() || !who.initials_said.empty())
        return refused_note(catalog, request, tap, form, who, "Something cannot be taken: see below.");
    if (!says)
        return refused_note(catalog, request, tap, form, who, "The note says nothing yet: give colours or a reading.");
    draft.values["kind"] = std::string(word_of(tap.kind));
    draft.values["path"] = tap.path;
    draft.car_words = who.car;
    draft.place.file = "note";
    try {
        const NoteReport report =
            catalog.take_note(draft, {fmt::format("note on {}", tap.path), who.sure, false}, request.today);
        if (!report.is_refused) return saved_note(catalog, request, tap, form, who, report);
        put_checks(report, form, who);
        return refused_note(catalog, request, tap, form, who,
                            who.asks_sure
                                ? "A check asks back. If it is what you found, say so below and save again: a "
                                  "reading that disproves the catalog is worth more than one that agrees."
                                : "A check says that it cannot be so: see below.");
    } catch (const InputRefused& refused) {
        return refused_note(catalog, request, tap, form, who, refused.what());
    }
}

// Undoes the last action, and only when it is the one that the message spoke of.
PageAnswer undo_page(PageDesk& desk, const PageRequest& request) {
    Catalog catalog = desk.catalog_to_write();
    const auto found = catalog.notes_by_id(request.form.text("note").value_or(""));
    if (found.size() != 1) throw PageRefused(404, "that note is not here", "nothing was undone");
    const UndoReport would = catalog.undo(request.today, true);
    if (would.words != fmt::format("note on {}", found.front().path) || would.notes_withdrawn != 1)
        throw PageRefused(409, "something else was saved since: nothing was undone",
                          "withdraw the note by its id with `tapbook note withdraw`");
    const UndoReport report = catalog.undo(request.today);
    Page page(request, catalog.is_practice(), "Undone", PagePart::find);
    write_telling(page.html(), Telling::done, fmt::format("Undone: {}.", report.words),
                  "The note is withdrawn. What was right is noted again.");
    page.html().begin("p", {{"class", "ways"}});
    write_link(page.html(), car_address(path_head(found.front().path, vehicle_depth)), "To the car", "way");
    page.html().end();
    return page.answer();
}

constexpr Route list[] = {{PageMethod::get, "/note/{}/{}/{}/{}", RouteFor::reader, note_page},
                          {PageMethod::post, "/note/{}/{}/{}/{}", RouteFor::paired_phone, save_note},
                          {PageMethod::post, "/undo", RouteFor::paired_phone, undo_page}};

}  // namespace

std::span<const Route> note_routes() {
    return list;
}

}  // namespace tapbook
