// What is known of one car before a panel comes off? Systems with their tells, then the tap points by place in the
// order of reaching them.
#include "page/car_page_parts.h"

#include <fmt/format.h>

#include <algorithm>

#include "page/pages.h"

namespace tapbook {
namespace {

std::optional<int> asked_year(const PageRequest& request) {
    const std::string typed = request.query.text("year").value_or("");
    if (typed.empty()) return std::nullopt;
    const auto year = parse_model_year(typed);
    if (const auto* refusal = std::get_if<YearRefusal>(&year)) throw PageRefused(400, refusal->message());
    return std::get<int>(year);
}

void check_year(const Vehicle& car, std::optional<int> asked) {
    if (!asked || (*asked >= car.first_year && *asked <= car.last_year)) return;
    throw PageRefused(404,
                      fmt::format("the {} {} was built from {} to {}, not in {}", car.make, car.model, car.first_year,
                                  car.last_year, *asked),
                      "leave the year out, or find another car");
}

void write_years(Html& html, const CarFacts& facts, const std::string& system) {
    const Vehicle& car = facts.vehicle;
    if (car.first_year == car.last_year) return;
    FormChoices years = {{"", "any year"}};
    for (int year = car.first_year; year <= car.last_year; ++year)
        years.emplace_back(std::to_string(year), std::to_string(year));
    html.begin("form", {{"method", "get"}, {"action", car_address(car.path)}, {"class", "narrow"}});
    write_select(html, "year", "Model year", years, facts.year ? std::to_string(*facts.year) : "");
    if (!system.empty()) write_hidden(html, "system", system);
    html.element("button", "Show", {{"type", "submit"}}).end().line();
}

void write_ways(Html& html, const CarFacts& facts, const std::string& system, const PageRequest& request) {
    const std::string& path = facts.vehicle.path;
    const std::string year = facts.year ? std::to_string(*facts.year) : std::string();
    html.begin("p", {{"class", "ways"}});
    write_link(html, address("/advice/" + encoded_path(path), {{"system", system}, {"year", year}}), "Which converter",
               "way");
    write_link(html, address("/jobs/new/" + encoded_path(path), {{"system", system}, {"year", year}}),
               request.phone ? "Start a job" : "Job", "way");
    write_link(html, address("/changes/" + encoded_path(path)), "What changed", "way");
    html.end().line();
}

// Notes on cars whose system nobody wrote down.
void write_unrecorded(Page& page, const TapsAnswer& answer) {
    Html& html = page.html();
    const auto& system = answer.car.unrecorded_system;
    if (answer.unrecorded.empty() && !system) return;
    html.begin("section", {{"class", "place"}});
    html.element("h2", "Seen on cars whose system was not written down");
    html.element("p", "It counts for none of the systems.", {{"class", "quiet"}});
    if (system) {
        html.element("p", premium_line(system->premium));
        for (const auto& tell : system->noted_tells) write_fact(html, "tell seen", tell);
    }
    std::size_t left = answer.unrecorded.size();
    for (const auto& tap : answer.unrecorded) {
        if (page.is_full()) break;
        write_pair_tap(html, answer, tap);
        --left;
    }
    if (left > 0) html.element("p", fmt::format("{} more do not fit here.", left), {{"class", "quiet"}});
    html.end().line();
}

constexpr std::size_t most_unknown = 40;

void write_unknown(Html& html, const TapsAnswer& answer) {
    if (answer.unknown.empty()) return;
    html.begin("section").element("h2", "Nobody has recorded").begin("ul", {{"class", "plain"}});
    const std::size_t count = std::min(answer.unknown.size(), most_unknown);
    for (std::size_t i = 0; i < count; ++i) html.element("li", answer.unknown[i]);
    if (count < answer.unknown.size()) html.element("li", fmt::format("and {} more", answer.unknown.size() - count));
    html.end().end().line();
}

// The number in the address from which tap on the page begins.
std::size_t asked_from(const PageRequest& request) {
    const auto typed = scaled(request.query.text("from").value_or("0"), 0);
    const auto* number = std::get_if<std::int64_t>(&typed);
    return number != nullptr && *number > 0 ? static_cast<std::size_t>(*number) : 0;
}

void write_further(Page& page, const CarFacts& facts, const std::string& system, std::size_t from, std::size_t left) {
    page.html().begin("p", {{"class", "ways"}});
    write_link(page.html(),
               address("/car/" + encoded_path(facts.vehicle.path),
                       {{"year", facts.year ? std::to_string(*facts.year) : std::string()},
                        {"system", system},
                        {"from", std::to_string(from)}}),
               left == 1 ? std::string("One further tap") : fmt::format("{} further taps", left), "way");
    page.html().end().line();
}

// Taps place by place, from the number in the address on while the page has room; then the way to the others.
void write_places(Page& page, const TapsAnswer& answer, const std::string& system) {
    const std::size_t from = asked_from(page.request());
    std::size_t number = 0, all = 0;
    for (const auto& place : answer.places) all += place.pairs.size() + place.power.size();
    for (const auto& place : answer.places) {
        const std::size_t taps = place.pairs.size() + place.power.size();
        if (number + taps <= from && taps > 0) {
            number += taps;
            continue;
        }
        if (number > from && page.is_full()) return write_further(page, answer.car, system, number, all - number);
        const std::size_t skipped = from > number ? from - number : 0;
        const std::size_t shown_ones = write_place(page, answer, place, skipped);
        if (skipped + shown_ones < taps)
            return write_further(page, answer.car, system, number + skipped + shown_ones,
                                 all - number - skipped - shown_ones);
        number += taps;
    }
}

PageAnswer car_page(PageDesk& desk, const PageRequest& request) {
    const Catalog& catalog = desk.catalog();
    auto [facts, system] = asked_car(catalog, request);
    const TapsAnswer answer = taps_answer(std::move(facts), system, catalog.is_practice());
    const std::optional<int> year = answer.car.year;
    const Vehicle& car = answer.car.vehicle;
    Page page(request, answer.practice, car_title(car, year), PagePart::find);
    Html& html = page.html();
    html.begin("h1").text(fmt::format("{} {} {} ", car.make, car.model, car.body));
    html.element("span", year ? std::to_string(*year) : years_of(car.first_year, car.last_year), {{"class", "years"}});
    html.end().line();
    if (!answer.car.also.empty())
        html.element("p", fmt::format("{}, {}", car.path, also_words(answer.car.also)), {{"class", "quiet"}});
    write_years(html, answer.car, system);
    for (const auto& caution : answer.cautions) write_caution(caution.title, caution.text, html);
    html.line();
    write_systems(html, answer, system);
    write_ways(html, answer.car, system, request);
    write_places(page, answer, system);
    write_unrecorded(page, answer);
    write_unknown(html, answer);
    write_fact(html, "Remark", car.remarks);
    return page.answer();
}

constexpr Route list[] = {{PageMethod::get, "/car/{}/{}/{}/{}", RouteFor::reader, car_page}};

}  // namespace

AskedCar asked_car(const Catalog& catalog, const PageRequest& request) {
    const std::string path = fmt::format("{}", fmt::join(request.caught.begin(), request.caught.begin() + 4, "/"));
    if (!catalog.has_entry(EntryKind::vehicle, path))
        throw PageRefused(404, "there is no such car in the catalog", "find it by its name");
    AskedCar asked;
    asked.facts = catalog.car(path, asked_year(request));
    asked.system = request.query.text("system").value_or("");
    const auto& systems = asked.facts.systems;
    const bool is_known = asked.system.empty() || std::any_of(systems.begin(), systems.end(), [&](const auto& one) {
                              return one.code == asked.system;
                          });
    if (!is_known)
        throw PageRefused(404, fmt::format("this car has no sound system \"{}\"", shown(asked.system)),
                          "choose one of those that the car's page lists");
    check_year(asked.facts.vehicle, asked.facts.year);
    return asked;
}

std::span<const Route> car_routes() {
    return list;
}

}  // namespace tapbook
