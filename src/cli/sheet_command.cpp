// sheet: the page for the car, from a job's plan or for a car without a job.
#include <fmt/format.h>

#include <algorithm>

#include "cli/chosen.h"
#include "cli/chosen_job.h"
#include "cli/chromium.h"
#include "cli/planning.h"

namespace tapbook {
namespace {

constexpr std::size_t most_address = 200;

// A car without a job: nothing is stored of it.
ShopJob job_without_number(const Catalog& catalog, const Parsed& parsed) {
    const ChosenCar chosen = chosen_car_of(catalog, parsed, parsed.joined_words());
    ShopJob job;
    job.vehicle = chosen.vehicle.path;
    job.year = chosen.year;
    const CarFacts car = catalog.car(job.vehicle, job.year);
    check_system(car, parsed.text("--system").value_or(""));
    if (!parsed.text("--system") && car.systems.size() > 1) {
        std::string list;
        for (const auto& system : car.systems)
            list += fmt::format("\n  {:<10} {}", system.code, shown(system.entry.name));
        throw UsageError(
            fmt::format("this car came with {} sound systems; say which with --system:{}", car.systems.size(), list),
            "tapbook taps tells how to recognise each");
    }
    if (!car.systems.empty()) job.system = parsed.text("--system").value_or(car.systems.front().code);
    return job;
}

ShopJob job_of_sheet(const Catalog& catalog, const std::vector<ShopJob>& jobs, const Parsed& parsed) {
    const bool is_job = parsed.words.empty() || (parsed.words.size() == 1 && is_job_word(jobs, parsed.words.front()));
    if (!is_job) return job_without_number(catalog, parsed);
    const ShopJob job = chosen_job(jobs, parsed.joined_words());
    if (parsed.text("--year"))
        throw UsageError(fmt::format("--year belongs to a car, and job {} has its own", job.number), "leave it out");
    if (job.plan.tap.empty() && !parsed.text("--tap"))
        throw NoAnswer(fmt::format("job {} has no plan yet: no tap is chosen", job.number),
                       fmt::format("tapbook job plan {} chooses tap and converter, or say --tap here", job.number));
    return job;
}

std::vector<std::string> split_names(const std::string& typed) {
    std::vector<std::string> names(1);
    for (const char one : typed) {
        if (one == ',')
            names.emplace_back();
        else
            names.back() += one;
    }
    return names;
}

[[noreturn]] void refuse_twice(const std::string& code) {
    throw UsageError(fmt::format("{} stands on the sheet twice", shown(path_tail(code, system_depth))),
                     "name each circuit once; those of the plan are on it already");
}

// Further circuits to read, in the order typed; "all" for every one of the sound system. Those of the plan may be
// there.
std::vector<TapFacts> further_circuits(const CarFacts& car, const std::string& system, const std::string& typed) {
    std::vector<TapFacts> list;
    if (typed == "all") {
        for (const auto& tap : car.taps)
            if (tap.system == system) list.push_back(tap);
        return list;
    }
    for (const auto& name : split_names(typed)) {
        if (name.empty())
            throw UsageError(fmt::format("--read \"{}\" has an empty name", shown(typed)),
                             "tap points with commas between, or all");
        const std::string code = chosen_tap(car, system, name);
        const auto is_it = [&](const TapFacts& tap) { return tap.code == code; };
        if (std::any_of(list.begin(), list.end(), is_it)) refuse_twice(code);
        list.push_back(*std::find_if(car.taps.begin(), car.taps.end(), is_it));
    }
    return list;
}

// Takes those of the plan out of "all"; one that was named is refused.
void leave_out_planned(std::vector<TapFacts>& circuits, const JobPlanAnswer& plan, bool all) {
    const auto is_planned = [&](const TapFacts& tap) {
        return std::any_of(plan.conductors.begin(), plan.conductors.end(),
                           [&](const PlannedConductor& one) { return one.tap == tap.code; });
    };
    const auto found = std::find_if(circuits.begin(), circuits.end(), is_planned);
    if (!all && found != circuits.end()) refuse_twice(found->code);
    std::erase_if(circuits, is_planned);
}

std::string typed_address(const Parsed& parsed) {
    const std::string address = parsed.text("--address").value_or("");
    const bool is_web = address.starts_with("http://") || address.starts_with("https://");
    const bool is_plain = std::all_of(address.begin(), address.end(), [](char c) { return c > ' ' && c < '\x7f'; });
    if (!address.empty() && (!is_web || !is_plain || address.size() > most_address))
        throw UsageError(fmt::format("--address \"{}\" is no address of a page", shown(address)),
                         fmt::format("write it like http://bench.local:8080, at most {} characters", most_address));
    return address;
}

Sheet sheet_of(const Catalog& catalog, const Session& session, const Parsed& parsed) {
    const std::string address = typed_address(parsed);
    const auto jobs = catalog.jobs();
    const ShopJob job = job_of_sheet(catalog, jobs, parsed);
    const std::string read = parsed.text("--read").value_or("");
    std::vector<TapFacts> circuits;
    if (parsed.text("--read"))
        circuits =
            further_circuits(catalog.car(job.vehicle, job.year), parsed.text("--system").value_or(job.system), read);
    Sheet sheet = sheet_of_job(catalog, plan_for(catalog, session, parsed, job, jobs), jobs, session.today);
    sheet.address = address;
    sheet.circuits = std::move(circuits);
    leave_out_planned(sheet.circuits, sheet.plan, read == "all");
    return sheet;
}

// What is written into files, ready made; nothing is written before all of it is.
struct Made {
    std::string option, place, text;
};

std::vector<Made> made_files(const Sheet& sheet, SheetPaper paper, const Parsed& parsed) {
    std::vector<Made> made;
    if (const auto place = parsed.text("--html")) made.push_back({"page", *place, sheet_html(sheet, paper)});
    if (const auto place = parsed.text("--drawing"))
        made.push_back(
            {"drawing", *place,
             install_drawing_svg(drawing_of(sheet), paper == SheetPaper::a4 ? DrawingPage::a4 : DrawingPage::letter)});
    if (const auto place = parsed.text("--pdf")) made.push_back({"PDF", *place, pdf_of_html(sheet_html(sheet, paper))});
    return made;
}

}  // namespace

Exit run_sheet(Session& session, const Parsed& parsed) {
    const auto paper = parsed.word<SheetPaper>("--paper").value_or(SheetPaper::a4);
    session.database = reading_place(session);
    const Catalog catalog = Catalog::open(session.database, Access::read);
    const Sheet sheet = sheet_of(catalog, session, parsed);
    const auto made = made_files(sheet, paper, parsed);
    std::vector<FileToWrite> files;
    std::string written;
    for (const auto& one : made) {
        if (one.place == "-") {
            if (made.size() > 1 || session.json)
                throw UsageError("\"-\" writes one thing only", "leave --json and the other files out");
            session.out += one.text;
            return Exit::done;
        }
        files.push_back({one.place, one.text});
        written += fmt::format("{}: {}\n", one.option, one.place);
    }
    write_files(files, parsed.flag("--replace") ? Existing::replace : Existing::refuse);
    session.answer([&] { return made.empty() ? sheet_text(sheet, session.screen) : written; },
                   [&] { return sheet_json(sheet); });
    return Exit::done;
}

}  // namespace tapbook
