// job plan and job reading: what to do at the car, and what the meter said there.
#include <fmt/format.h>

#include "cli/chosen_job.h"
#include "cli/job_options.h"
#include "cli/note_options.h"
#include "cli/planning.h"
#include "cli/read_place.h"

namespace tapbook {
namespace {

Values typed_readings(NoteKind kind, const Parsed& parsed) {
    try {
        return read_typed_note(kind, typed_note_fields(parsed, MethodSaid::at_most_once));
    } catch (const InputRefused& refused) {
        throw UsageError(refused.what(), refused.complaints().front().hint);
    }
}

}  // namespace

std::vector<OptionSpec> job_reading_options() {
    std::vector<OptionSpec> options = note_field_options();
    std::erase_if(options, [](const OptionSpec& option) {
        return option.name == "--date" || option.name == "--turn" || option.name == "--year" ||
               option.name == "--initials";
    });
    options.push_back({"--same", "", "method, supply, tone, volume and meter as at the place read before"});
    options.push_back({"--forget", "", "throw away what this job has read here before"});
    options.push_back({"--from", "FILE", "a file of readings, as a sheet saves it; \"-\" reads from a pipe"});
    options.push_back({"--dry-run", "", "show what would happen and write nothing"});
    return options;
}

Exit run_job_plan(Session& session, const Parsed& parsed) {
    Catalog catalog = Catalog::open(session.database, Access::write);
    const auto jobs = catalog.jobs();
    const ShopJob job = chosen_job(jobs, parsed.joined_words());
    JobPlanAnswer answer = plan_for(catalog, session, parsed, job, jobs);
    const JobReport report = catalog.plan_job(
        job.number, answer.plan, std::string(path_tail(path_head(answer.plan.tap, system_depth), vehicle_depth)),
        parsed.flag("--dry-run"));
    answer.job = report.job;
    answer.written = report.written;
    session.answer(job_plan_text(answer, session.screen), job_plan_json(answer));
    return Exit::done;
}

Exit run_job_reading(Session& session, const Parsed& parsed) {
    if (parsed.text("--from")) return run_readings_file(session, parsed);
    Catalog catalog = Catalog::open(session.database, Access::write);
    const auto jobs = catalog.jobs();
    std::vector<std::string> words = parsed.words;
    std::string named;
    if (!words.empty() && is_job_word(jobs, words.front())) {
        named = words.front();
        words.erase(words.begin());
    }
    const ShopJob job = chosen_job(jobs, named);
    const CarFacts car = catalog.car(job.vehicle, job.year);
    const bool is_system = parsed.text("--premium").has_value() || parsed.text("--tell").has_value();
    const ReadPlace place = read_place(car, job, fmt::format("{}", fmt::join(words, " ")), is_system);
    const TapLedger before = catalog.ledger_at(place.path);
    JobReading reading{place.path, place.kind, typed_readings(place.kind, parsed), parsed.flag("--same"),
                       parsed.flag("--forget")};
    if (reading.values.empty() && !reading.forget && !reading.same_conditions)
        throw UsageError("the reading says nothing yet",
                         place.kind == NoteKind::pair ? "give colours (--positive, --negative) or volts (--ac, ...)"
                         : place.kind == NoteKind::switched ? "give --wire, or the volts: --key-off, --accessory, --run"
                                                            : "name a tap point, or give --premium yes|no and --tell");
    const JobReport report = catalog.read_at_job(job.number, reading, session.today, parsed.flag("--dry-run"));
    ReadingAnswer answer = reading_answer(report.job, place.path, car, before);
    answer.written = report.written;
    session.answer(reading_text(answer, session.screen), reading_json(answer));
    return Exit::done;
}

}  // namespace tapbook
