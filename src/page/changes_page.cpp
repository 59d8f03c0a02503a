// What changed on this car since last time? Since this shop's last job on it, or since a day that is typed.
#include <fmt/format.h>

#include <algorithm>

#include "page/car_page_parts.h"
#include "page/pages.h"

namespace tapbook {
namespace {

// The day of this shop's last closed job on the car; "" without one.
std::string last_time(const Catalog& catalog, const std::string& vehicle) {
    std::string last;
    for (const auto& job : catalog.jobs())
        if (job.vehicle == vehicle && job.state == JobState::closed) last = std::max(last, job.closed);
    return last;
}

std::vector<TapLedger> ledgers_of(const Catalog& catalog, const CarFacts& car) {
    std::vector<TapLedger> ledgers;
    for (const auto& system : car.systems)
        ledgers.push_back(catalog.ledger_at(path_join(car.vehicle.path, system.code)));
    for (const auto& tap : car.taps)
        if (carries_signal(tap.circuit.role) || is_power(tap.circuit.role))
            ledgers.push_back(catalog.ledger_at(tap.code));
    for (const auto& tap : car.unrecorded) ledgers.push_back(catalog.ledger_at(tap.code));
    return ledgers;
}

void write_note(Html& html, const WhyNote& note, const std::map<std::string, std::string>& shops) {
    const auto name = shops.find(note.shop);
    std::string who = name == shops.end() ? "shop " + note.shop.substr(0, 8) : name->second;
    if (!note.initials.empty()) who += ", " + note.initials;
    html.begin("li").element("b", note.date).text(fmt::format(" {}: {}", who, note.says));
    std::string how = note.method;
    if (note.year) how += fmt::format(", a {} car", *note.year);
    if (note.fate != NoteFate::counts) how += fmt::format("; {}", word_of(note.fate));
    html.text(" ").element("span", how, {{"class", "quiet"}}).end();
}

void write_changed(Html& html, const ChangedPlace& place, const std::map<std::string, std::string>& shops) {
    html.begin("article", {{"class", "card"}}).begin("div", {{"class", "head"}});
    html.element("h3", path_tail(place.path, vehicle_depth));
    if (place.is_moved) html.element("b", "CHANGED", {{"class", "grade proven"}});
    html.end();
    for (const Question question : questions_of(place.kind))
        write_fact(html, word_of(question), change_words(place.before, place.after, question));
    html.begin("ul", {{"class", "plain"}});
    for (const auto& note : place.notes) write_note(html, note, shops);
    html.end().end().line();
}

PageAnswer changes_page(PageDesk& desk, const PageRequest& request) {
    const Catalog& catalog = desk.catalog();
    const AskedCar asked = asked_car(catalog, request);
    const Vehicle& car = asked.facts.vehicle;
    const std::string typed = request.query.text("since").value_or("");
    const std::string last = last_time(catalog, car.path);
    const std::string since = typed.empty() ? last : typed;
    Page page(request, catalog.is_practice(), "What changed", PagePart::find);
    Html& html = page.html();
    html.element("h1", "What changed?").begin("p");
    write_link(html, car_address(car.path, asked.facts.year), car_title(car, asked.facts.year), "more");
    html.end();
    const bool is_day = since.empty() || day_number(since);
    html.begin("form", {{"method", "get"}, {"action", "/changes/" + encoded_path(car.path)}, {"class", "narrow"}});
    write_form_box(html, {.name = "since",
                          .label = "Since",
                          .value = since,
                          .complaint = is_day ? "" : "write the day like 2026-05-02"});
    html.element("button", "Show", {{"type", "submit"}}).end().line();
    html.element("p",
                 last.empty() ? "This shop has closed no job on this car yet."
                              : fmt::format("Last job of this shop on this car: {}.", last),
                 {{"class", "quiet"}});
    if (!is_day) return page.answer(400);
    const std::vector<TapLedger> ledgers = ledgers_of(catalog, asked.facts);
    std::map<std::string, std::string> shops;
    for (const auto& ledger : ledgers) shops.insert(ledger.shop_names.begin(), ledger.shop_names.end());
    const ChangesAnswer answer = changes_since(ledgers, since, asked.facts.year);
    if (answer.places.empty())
        html.element("p", since.empty() ? "Nothing is noted on this car yet."
                                        : fmt::format("No note on this car since {}.", since));
    for (const auto& place : answer.places) {
        if (page.is_full()) {
            html.element("p", "More changed than fits here: choose a later day.", {{"class", "quiet"}});
            break;
        }
        write_changed(html, place, shops);
    }
    return page.answer();
}

constexpr Route list[] = {{PageMethod::get, "/changes/{}/{}/{}/{}", RouteFor::reader, changes_page}};

}  // namespace

std::span<const Route> changes_routes() {
    return list;
}

}  // namespace tapbook
