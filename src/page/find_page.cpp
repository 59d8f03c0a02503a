// Which car is it? Words, a VIN, or the short code of a sheet; as one types where there is script, a plain form where
// there is none.
#include <fmt/format.h>

#include <span>

#include "page/page_html.h"
#include "page/pages.h"

namespace tapbook {
namespace {

constexpr std::size_t most_hits = 30;

std::string typed_words(const PageRequest& request) {
    return request.query.text("words").value_or("");
}

void write_hit(Html& html, const VehicleHit& hit, const std::optional<Vin>& vin, std::string_view words) {
    const VehicleName& car = hit.vehicle;
    auto year = vin ? model_year(*vin) : year_in(words);
    if (year && (*year < car.first_year || *year > car.last_year)) year.reset();
    html.begin("li").begin("a", {{"href", car_address(car.path, year)}, {"class", "row"}});
    html.element("b", fmt::format("{} {} {}", car.make, car.model, car.body)).text(" ");
    html.element("span", years_of(car.first_year, car.last_year), {{"class", "years"}});
    if (!hit.year_fits) html.text(" ").element("span", "not built in that year", {{"class", "quiet"}});
    html.end();
    if (!hit.also.empty()) html.element("span", also_words(hit.also), {{"class", "quiet"}});
    html.end().line();
}

void write_nothing(Html& html, const Catalog& catalog, const FoundVehicles& found, std::string_view words) {
    if (found.no_vin)
        write_telling(html, Telling::wrong, upper_first(found.no_vin->message()),
                      "A car can be found by its make and model as well.");
    else if (found.vin)
        write_telling(html, Telling::wrong,
                      fmt::format("No car's VIN patterns fit this VIN ({}).", vin_remark(*found.vin)),
                      fmt::format("Find it by its name. Vehicle files take vin_patterns = [\"{}\"] (? stands for any "
                                  "character).",
                                  suggested_pattern(*found.vin)));
    else if (catalog.vehicle_names().empty())
        write_telling(html, Telling::wrong, "The catalog holds no cars yet.", "A vehicle file puts one in.");
    else
        write_telling(html, Telling::wrong, fmt::format("No car matches \"{}\".", words), "Try fewer words.");
}

// What the words find; the same for the whole page and for the piece that the script asks for.
void write_found(Html& html, const Catalog& catalog, const std::string& words) {
    const FoundVehicles found = catalog.find(words);
    if (found.hits.empty()) return write_nothing(html, catalog, found, words);
    if (found.vin) html.element("p", vin_remark(*found.vin), {{"class", "quiet"}});
    html.begin("ul", {{"class", "rows"}}).line();
    for (std::size_t i = 0; i < std::min(found.hits.size(), most_hits); ++i)
        write_hit(html, found.hits[i], found.vin, words);
    html.end().line();
    if (found.hits.size() > most_hits)
        html.element("p", fmt::format("{} more: write more of the name.", found.hits.size() - most_hits),
                     {{"class", "quiet"}});
}

// The newest ones; who left so many open finds the others in the list of jobs.
void write_open_jobs(Html& html, const Catalog& catalog) {
    auto jobs = catalog.jobs();
    std::erase_if(jobs, [](const ShopJob& job) { return job.state != JobState::open; });
    if (jobs.empty()) return;
    const auto names = catalog.vehicle_names();
    const std::size_t older = jobs.size() > most_hits ? jobs.size() - most_hits : 0;
    html.begin("section").element("h2", "Open jobs").begin("ul", {{"class", "rows"}}).line();
    for (const auto& job : std::span(jobs).subspan(older)) {
        const auto name =
            std::find_if(names.begin(), names.end(), [&](const VehicleName& one) { return one.path == job.vehicle; });
        const std::string car =
            name == names.end() ? job.vehicle : fmt::format("{} {} {}", name->make, name->model, name->body);
        html.begin("li").begin("a", {{"href", job_address(job.code)}, {"class", "row"}});
        html.element("code", job.code).text(" ").element("b", car).text(" ");
        html.element("span", job.customer, {{"class", "quiet"}}).end().end().line();
    }
    html.end();
    if (older > 0) {
        html.begin("p");
        write_link(html, "/jobs", fmt::format("{} older ones", older), "more");
        html.end();
    }
    html.end().line();
}

// A sheet's code leads to its job, when there is one.
std::optional<std::string> job_of_code(const Catalog& catalog, const std::string& words) {
    const auto code = parse_job_code(words);
    if (!code) return std::nullopt;
    for (const auto& job : catalog.jobs())
        if (job.code == *code) return job_address(*code);
    return std::nullopt;
}

PageAnswer find_page(PageDesk& desk, const PageRequest& request) {
    const Catalog& catalog = desk.catalog();
    const std::string words = typed_words(request);
    if (const auto job = job_of_code(catalog, words)) return see_other(*job);
    Page page(request, catalog.is_practice(), "Find a car", PagePart::find);
    Html& html = page.html();
    html.element("h1", "Which car?");
    html.begin("form", {{"method", "get"}, {"action", "/"}, {"role", "search"}, {"class", "find"}});
    html.begin("label", {{"class", "box wide"}})
        .element("span", "Make, model, year; VIN; code of a sheet", {{"class", "label"}});
    html.empty("input", {{"type", "search"},
                         {"name", "words"},
                         {"autocomplete", "off"},
                         {"autocapitalize", "off"},
                         {"spellcheck", "false"},
                         {"value", words},
                         {"data-fills", "found"}});
    html.end().element("button", "Find", {{"type", "submit"}, {"class", "main"}}).end().line();
    if (words.empty()) write_open_jobs(html, catalog);
    html.begin("section").element("h2", words.empty() ? "All cars" : "Found");
    html.begin("div", {{"id", "found"}, {"aria-live", "polite"}});
    write_found(html, catalog, words);
    html.end().end().line();
    return page.answer();
}

// The list alone, for the script.
PageAnswer found_piece(PageDesk& desk, const PageRequest& request) {
    Html html;
    write_found(html, desk.catalog(), typed_words(request));
    PageAnswer answer;
    answer.body = html.take();
    return answer;
}

constexpr Route list[] = {{PageMethod::get, "/", RouteFor::reader, find_page},
                          {PageMethod::get, "/found", RouteFor::reader, found_piece}};

}  // namespace

std::span<const Route> find_routes() {
    return list;
}

}  // namespace tapbook
