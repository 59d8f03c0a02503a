// Which jobs are there, and how does one begin? The list, and the form that starts a job on a car.
#include <fmt/format.h>

#include "page/car_page_parts.h"
#include "page/job_parts.h"
#include "page/pages.h"

namespace tapbook {
namespace {

constexpr std::size_t jobs_on_a_page = 60;

void write_row(Html& html, std::span<const VehicleName> names, const ShopJob& job) {
    html.begin("li").begin("a", {{"href", job_address(job.code)}, {"class", "row"}});
    html.element("code", job.code).text(" ").element("b", car_of_job(names, job)).text(" ");
    const std::string state = job.state == JobState::open ? fmt::format("open since {}", job.started)
                              : job.outcome               ? fmt::format("{}, {}", word_of(*job.outcome), job.closed)
                                                          : fmt::format("closed {}", job.closed);
    html.element("span", job.customer.empty() ? state : fmt::format("{}; {}", state, job.customer),
                 {{"class", "quiet"}});
    html.end().end().line();
}

// Those of one state, newest first.
void write_list(Html& html, std::span<const VehicleName> names, const std::vector<ShopJob>& jobs, JobState state,
                std::string_view title) {
    html.begin("section").element("h2", title).line();
    std::size_t count = 0;
    for (auto job = jobs.rbegin(); job != jobs.rend(); ++job) {
        if (job->state != state) continue;
        if (count++ == 0) html.begin("ul", {{"class", "rows"}}).line();
        if (count <= jobs_on_a_page) write_row(html, names, *job);
    }
    if (count > 0) html.end();
    if (count == 0) html.element("p", "None.", {{"class", "quiet"}});
    if (count > jobs_on_a_page)
        html.element("p", fmt::format("{} older ones: find them by their code.", count - jobs_on_a_page),
                     {{"class", "quiet"}});
    html.end().line();
}

PageAnswer jobs_page(PageDesk& desk, const PageRequest& request) {
    const Catalog& catalog = desk.catalog();
    Page page(request, catalog.is_practice(), "Jobs", PagePart::jobs);
    page.html().element("h1", "Jobs").begin("p");
    page.html()
        .text("A job starts from its car: find the car, then Start a job.")
        .end()
        .begin("p", {{"class", "ways"}});
    write_link(page.html(), "/", "Find the car", "way");
    page.html().end().line();
    const auto jobs = catalog.jobs();
    const auto names = catalog.vehicle_names();
    write_list(page.html(), names, jobs, JobState::open, "Open");
    write_list(page.html(), names, jobs, JobState::closed, "Closed");
    return page.answer();
}

struct StartForm {
    std::string system, year, customer, car, initials;
    std::string year_said, text_said;  // complaints
};

StartForm typed_form(const FormFields& form, const StartForm& otherwise) {
    StartForm typed;
    typed.system = form.text("system").value_or(otherwise.system);
    typed.year = form.text("year").value_or(otherwise.year);
    typed.customer = form.text("customer").value_or("");
    typed.car = form.text("car").value_or("");
    typed.initials = form.text("initials").value_or(otherwise.initials);
    return typed;
}

PageAnswer start_form(const Catalog& catalog, const PageRequest& request, const AskedCar& asked, const StartForm& form,
                      int status) {
    const CarFacts& car = asked.facts;
    Page page(request, catalog.is_practice(), "Start a job", PagePart::jobs);
    Html& html = page.html();
    html.element("h1", "Start a job").begin("p");
    write_link(html, car_address(car.vehicle.path, car.year, asked.system), car_title(car.vehicle, car.year), "more");
    html.end().line();
    if (status != 200) write_telling(html, Telling::wrong, "Not started yet: see below.");
    FormChoices systems = {{std::string(unrecorded_system), "not known yet"}};
    for (const auto& one : car.systems) systems.emplace_back(one.code, one.entry.name);
    begin_form(html, request, "/jobs/new/" + encoded_path(car.vehicle.path), "start-" + car.vehicle.path);
    html.begin("div", {{"class", "boxes"}}).line();
    write_select(html, "system", "Sound system", systems, form.system);
    write_form_box(
        html,
        {.name = "year", .label = "Model year", .value = form.year, .complaint = form.year_said, .is_number = true});
    write_form_box(html,
                   {.name = "initials", .label = "Your initials", .value = form.initials, .complaint = form.text_said});
    write_form_box(html, {.name = "customer",
                          .label = "Customer",
                          .value = form.customer,
                          .remark = "the shop's own reference; it never leaves this catalog"});
    write_form_box(
        html,
        {.name = "car", .label = "Plate or VIN", .value = form.car, .remark = "only a salted token of it is stored"});
    html.end().begin("div", {{"class", "act"}});
    write_action(html, request, "Start the job");
    html.end().end().line();
    return page.answer(status);
}

std::string system_by_default(const AskedCar& asked) {
    if (!asked.system.empty()) return asked.system;
    return asked.facts.systems.size() == 1 ? asked.facts.systems.front().code : std::string(unrecorded_system);
}

PageAnswer start_page(PageDesk& desk, const PageRequest& request) {
    const Catalog& catalog = desk.catalog();
    const AskedCar asked = asked_car(catalog, request);
    StartForm form;
    form.system = system_by_default(asked);
    form.year = asked.facts.year ? std::to_string(*asked.facts.year) : std::string();
    form.initials = request.kept_text("initials");
    return start_form(catalog, request, asked, form, 200);
}

// The year typed; a complaint in the form when it is none of the car's.
std::optional<int> typed_year(StartForm& form, const Vehicle& car) {
    if (form.year.empty()) return std::nullopt;
    const auto year = parse_model_year(form.year);
    if (const auto* refusal = std::get_if<YearRefusal>(&year)) {
        form.year_said = refusal->message();
        return std::nullopt;
    }
    const int typed = std::get<int>(year);
    if (typed < car.first_year || typed > car.last_year)
        form.year_said = fmt::format("this car was built from {} to {}", car.first_year, car.last_year);
    return typed;
}

bool is_plain(const std::string& text) {
    return is_utf8(text) && !hidden_character(text) && text.size() <= most_text_bytes;
}

PageAnswer start_job(PageDesk& desk, const PageRequest& request) {
    Catalog catalog = desk.catalog_to_write();
    const AskedCar asked = asked_car(catalog, request);
    StartForm form = typed_form(request.form, {});
    JobStart start;
    start.vehicle = asked.facts.vehicle.path;
    start.year = typed_year(form, asked.facts.vehicle);
    start.system = form.system;
    start.customer = nfc(form.customer);
    start.initials = nfc(form.initials);
    start.car_words = form.car;
    bool is_known = form.system == unrecorded_system;
    for (const auto& one : asked.facts.systems) is_known = is_known || one.code == form.system;
    if (!is_known) throw PageRefused(400, "this car has no such sound system", "go back and choose one of the list");
    if (!is_plain(form.customer) || !is_plain(form.initials) || !is_plain(form.car))
        form.text_said = "write customer, initials and plate in plain characters";
    if (!form.car.empty() && folded(form.car).empty()) form.text_said = "the plate or VIN needs letters or digits";
    if (!form.year_said.empty() || !form.text_said.empty()) return start_form(catalog, request, asked, form, 422);
    const JobReport report = catalog.start_job(start, request.today, desk.random());
    PageAnswer answer = see_other(job_address(report.job.code, "came"));
    if (!start.initials.empty()) answer.keep.emplace_back("initials", start.initials);
    return answer;
}

constexpr Route list[] = {{PageMethod::get, "/jobs", RouteFor::reader, jobs_page},
                          {PageMethod::get, "/jobs/new/{}/{}/{}/{}", RouteFor::reader, start_page},
                          {PageMethod::post, "/jobs/new/{}/{}/{}/{}", RouteFor::paired_phone, start_job}};

}  // namespace

std::span<const Route> job_start_routes() {
    return list;
}

}  // namespace tapbook
