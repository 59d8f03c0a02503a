// See shelf_parts.h: one part, the form to book on it, and its history.
#include <fmt/format.h>

#include "page/shelf_parts.h"

namespace tapbook {
namespace {

constexpr std::size_t most_jobs = 40;

// The open jobs, newest first, for what is taken by hand.
FormChoices open_jobs(const Catalog& catalog) {
    FormChoices choices = {{"", "no job"}};
    const auto jobs = catalog.jobs();
    for (auto job = jobs.rbegin(); job != jobs.rend() && choices.size() <= most_jobs; ++job)
        if (job->state == JobState::open)
            choices.emplace_back(job->code, fmt::format("{} {}", job->code, job->vehicle));
    return choices;
}

void write_form(Html& html, const Catalog& catalog, const PageRequest& request, const StockRow& row,
                const BookingForm& form) {
    FormChoices bookings;
    for (const auto word : {Booking::receive, Booking::use, Booking::correct, Booking::order, Booking::cancel})
        bookings.emplace_back(word_of(word), word_of(word));
    begin_form(html, request, counted_address(row.part), "shelf-" + row.part);
    write_hidden(html, "last", std::to_string(last_movement(row)));
    write_radios(html, "booking", "What is booked", bookings, form.booking, form.booking_said);
    html.begin("div", {{"class", "boxes"}}).line();
    write_form_box(
        html,
        {.name = "pieces", .label = "Pieces", .value = form.pieces, .complaint = form.pieces_said, .is_number = true});
    html.end().line();
    html.element("p",
                 "receive: they came in. use: taken off the shelf. correct: counted, so many lie there. order, cancel: "
                 "on their way, or no more.",
                 {{"class", "quiet said"}});
    html.begin("div", {{"class", "boxes"}}).line();
    write_form_box(html, {.name = "words",
                          .label = "To remember beside it",
                          .value = form.words,
                          .complaint = form.words_said,
                          .is_wide = true});
    if (const auto jobs = open_jobs(catalog); jobs.size() > 1) {
        write_select(html, "job", "Taken for (use)", jobs, form.job);
        if (!form.job_said.empty()) html.element("span", form.job_said, {{"class", "complaint"}});
    }
    html.end().line().begin("div", {{"class", "act"}});
    write_action(html, request, "Book");
    html.end().end().line();
}

void write_undo(Html& html, const PageRequest& request, const StockRow& row) {
    begin_form(html, request, "/shelf/undo");
    write_hidden(html, "part", row.part);
    write_hidden(html, "movement", std::to_string(last_movement(row)));
    html.begin("p", {{"class", "ways"}});
    write_second_action(html, request, "Undo");
    html.end().end().line();
}

void write_ways(Html& html, const CountedPart& part) {
    html.begin("p", {{"class", "ways"}});
    if (!part.next.empty()) write_link(html, counted_address(part.next), "Next: " + part.next, "way");
    write_link(html, "/shelf/count", "To the list", "way");
    html.end().line();
}

void write_history(Page& page, const StockRow& row) {
    Html& html = page.html();
    html.begin("section").element("h2", "Booked before, newest first");
    if (row.movements.empty()) html.element("p", "nothing was booked yet", {{"class", "quiet"}});
    html.begin("ul", {{"class", "plain"}}).line();
    for (auto movement = row.movements.rbegin(); movement != row.movements.rend(); ++movement) {
        if (page.is_full()) {
            html.element("li", fmt::format("and {} older", row.movements.rend() - movement), {{"class", "quiet"}});
            break;
        }
        html.element("li", movement_words(*movement)).line();
    }
    html.end().end().line();
}

}  // namespace

std::string counted_address(std::string_view part) {
    return "/shelf/count/" + encoded_path(part);
}

int last_movement(const StockRow& row) {
    return row.movements.empty() ? 0 : row.movements.back().number;
}

std::string last_booked_words(const StockRow& row) {
    const StockMovement& last = row.movements.back();
    Terms before = row.terms;
    before.on_order = row.terms.on_order.value_or(0) - last.on_order_change;
    before.on_hand = row.terms.on_hand.value_or(0) - last.on_hand_change;
    if (last.kind == MovementKind::counted && row.movements.size() == 1) before.on_hand.reset();
    return booked_words(before, row.terms);
}

CountedPart counted_part(const Catalog& catalog, const std::string& path) {
    const auto rows = catalog.stock();
    for (std::size_t i = 0; i < rows.size(); ++i)
        if (rows[i].part == path) return {rows[i], i + 1 < rows.size() ? rows[i + 1].part : std::string()};
    for (const auto& amplifier : catalog.amplifiers()) {
        if (amplifier.path != path) continue;
        CountedPart part;
        part.row.part = path;
        part.row.maker = amplifier.maker;
        part.row.name = amplifier.name;
        part.row.kind = EntryKind::amplifier;
        return part;
    }
    throw PageRefused(404, fmt::format("there is no part \"{}\"", shown(path)), "the list for counting shows them");
}

PageAnswer counted_page(const Catalog& catalog, const PageRequest& request, const CountedPart& part,
                        const BookingForm& form) {
    const StockRow& row = part.row;
    Page page(request, catalog.is_practice(), row.part, PagePart::shelf);
    Html& html = page.html();
    const bool is_done = form.telling && form.telling->telling == Telling::done;
    if (form.telling) {
        html.begin("span", {{is_done ? "data-saved" : "data-refused", is_done ? "shelf-" + row.part : "yes"}}).end();
        write_telling(html, form.telling->telling, form.telling->title, form.telling->text);
    }
    if (form.can_undo) write_undo(html, request, row);
    html.element("h1", row.part).element("p", stock_name_words(row)).line();
    html.element("p", lying_words(row.terms), {{"class", "lying"}}).line();
    if (is_done) write_ways(html, part);
    write_form(html, catalog, request, row, form);
    if (!is_done) write_ways(html, part);
    write_history(page, row);
    return page.answer(form.status);
}

}  // namespace tapbook
