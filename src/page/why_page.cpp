// Why is this grade what it is? The sum behind it, value by value and shop by shop, and every note: what
// `tapbook note why` says.
#include <fmt/format.h>

#include "page/car_page_parts.h"
#include "page/note_form.h"
#include "page/pages.h"

namespace tapbook {
namespace {

void write_question(Html& html, const WhyAnswer& answer, const WhyQuestion& why) {
    html.begin("section", {{"class", "card stacked"}}).begin("div", {{"class", "head"}});
    html.element("h2", upper_first(spaced(word_of(why.question))));
    write_grade(html, why.sum.standing.grade);
    html.end().element("p", why_standing_words(why), {{"class", "line"}});
    if (why.asked_year && why_year_words(why) != why_standing_words(why))
        write_fact(html, fmt::format("in {}", *answer.year), why_year_words(why));
    for (const auto& value : why.sum.values) {
        html.element("p", why_value_words(why.question, value), {{"class", "value"}});
        html.begin("ul", {{"class", "plain shares"}});
        for (const auto& share : why_shares(answer, value)) html.element("li", share);
        html.end().line();
    }
    for (const auto& demand : why_demands(why)) write_fact(html, demand.name, demand.words);
    html.end().line();
}

void write_notes(Page& page, const WhyAnswer& answer) {
    Html& html = page.html();
    html.begin("section").element("h2", answer.notes.empty() ? "No notes" : "Notes, oldest first");
    html.begin("ul", {{"class", "plain"}}).line();
    std::size_t left = answer.notes.size();
    for (const auto& note : answer.notes) {
        if (page.is_full()) break;
        html.begin("li").element("code", short_id(note.id)).text(" ").element("b", note.date);
        html.text(" " + why_note_words(answer, note)).end().line();
        --left;
    }
    if (left > 0) html.element("li", fmt::format("{} newer ones do not fit here.", left), {{"class", "quiet"}});
    html.end().end().line();
}

// The place that the address names: a tap, or a sound system. Its whole path.
std::string asked_place(const AskedCar& asked, const PageRequest& request) {
    const std::string typed = request.query.text("tap").value_or("");
    const std::string path = fmt::format("{}/{}", asked.facts.vehicle.path, typed);
    bool is_known = typed == unrecorded_system || kind_at(asked.facts, path).has_value();
    for (const auto& system : asked.facts.systems) is_known = is_known || system.code == typed;
    for (const auto& tap : asked.facts.unrecorded) is_known = is_known || tap.code == path;
    if (!is_known)
        throw PageRefused(404, fmt::format("this car has no tap \"{}\"", shown(typed)), "choose one on the car's page");
    return path;
}

PageAnswer why_page(PageDesk& desk, const PageRequest& request) {
    const Catalog& catalog = desk.catalog();
    const AskedCar asked = asked_car(catalog, request);
    const CarFacts& car = asked.facts;
    const std::string path = asked_place(asked, request);
    const WhyAnswer answer = why_answer(catalog.ledger_at(path), car.year);
    Page page(request, catalog.is_practice(), "Why this grade", PagePart::find);
    Html& html = page.html();
    html.element("h1", "Why this grade?").begin("p");
    write_link(html, car_address(car.vehicle.path, car.year, asked.system), car_title(car.vehicle, car.year), "more");
    html.end().element("h2", path_tail(path, vehicle_depth)).line();
    for (const auto& why : answer.questions) write_question(html, answer, why);
    html.begin("section", {{"class", "stacked"}});
    write_fact(html, "next", answer.next);
    write_fact(html, "cars", why_cars_words);
    html.end().line();
    write_notes(page, answer);
    return page.answer();
}

constexpr Route list[] = {{PageMethod::get, "/why/{}/{}/{}/{}", RouteFor::reader, why_page}};

}  // namespace

std::span<const Route> why_routes() {
    return list;
}

}  // namespace tapbook
