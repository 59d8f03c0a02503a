// job reading --from: what was typed into a sheet at the car comes into the job, all of it or nothing.
#include <fmt/format.h>

#include "cli/chosen_job.h"
#include "cli/job_options.h"
#include "cli/read_place.h"

namespace tapbook {
namespace {

// The job the file names, which must be the one that was typed, if any was.
ShopJob job_of(const ReadingsFile& file, const std::vector<ShopJob>& jobs, const std::string& typed) {
    const auto refuse = [&](const std::string& message, const std::string& hint) {
        throw InputRefused({Complaint{file.code_place, message, hint}});
    };
    const auto code = parse_job_code(file.code);
    const ShopJob* found = nullptr;
    for (const auto& job : jobs)
        if (code && job.code == *code) found = &job;
    if (found == nullptr)
        refuse(fmt::format("no job here has the code \"{}\"", shown(file.code)),
               "`tapbook job list --all` shows all jobs");
    if (!typed.empty() && chosen_job(jobs, typed).number != found->number)
        refuse(fmt::format("the file belongs to job {}, not to {}", found->number, shown(typed)),
               "leave the job out, or take its own file");
    return *found;
}

bool is_of_system(const Values& values) {
    return values.contains("premium") || values.contains("tell");
}

JobReading reading_of(const CarFacts& car, const ShopJob& job, const FileReading& reading) {
    const auto refuse = [&](const std::string& message, const std::string& hint) {
        throw InputRefused({Complaint{reading.place, message, hint}});
    };
    ReadPlace place;
    try {
        const bool is_system = is_of_system(reading.values) && reading.at == job.system;
        place = read_place(car, job, is_system ? std::string() : reading.at, is_system);
    } catch (const NoAnswer& error) {
        refuse(error.what(), error.hint());
    } catch (const UsageError& error) {
        refuse(error.what(), error.hint());
    }
    for (const auto& row : note_fields())
        if (reading.values.contains(std::string(row.field.stored)) && !applies_to(row, place.kind))
            refuse(fmt::format("{} does not belong to {}", row.field.name, shown(reading.at)),
                   fmt::format("it is read as {}", word_of(place.kind)));
    return {place.path, place.kind, reading.values, false, false};
}

// The file brings the readings: nothing else is read beside it.
void check_alone(const Parsed& parsed) {
    for (const auto& option : job_reading_options())
        if (option.name != "--from" && option.name != "--dry-run" &&
            (parsed.text(option.name) || parsed.flag(option.name)))
            throw UsageError(fmt::format("{} beside --from", option.name),
                             "the file brings the readings; type the others after it");
}

}  // namespace

Exit run_readings_file(Session& session, const Parsed& parsed) {
    check_alone(parsed);
    Catalog catalog = Catalog::open(session.database, Access::write);
    const std::string name = parsed.text("--from").value_or("-");
    const ReadingsFile file = read_readings(read_file(name), name == "-" ? "standard input" : name);
    const ShopJob job = job_of(file, catalog.jobs(), parsed.joined_words());
    const CarFacts car = catalog.car(job.vehicle, job.year);
    std::vector<JobReading> readings;
    std::vector<TapLedger> before;
    for (const auto& reading : file.readings) {
        readings.push_back(reading_of(car, job, reading));
        before.push_back(catalog.ledger_at(readings.back().path));
    }
    const JobReport report = catalog.read_all_at_job(job.number, readings, session.today, parsed.flag("--dry-run"));
    std::vector<ReadingAnswer> answers;
    for (std::size_t i = 0; i < readings.size(); ++i) {
        answers.push_back(reading_answer(report.job, readings[i].path, car, before[i]));
        answers.back().written = report.written;
    }
    session.answer(readings_text(answers, session.screen), readings_json(report, answers));
    return Exit::done;
}

}  // namespace tapbook
