// job plan and job reading: what to do at the car, and what the meter said there.
#include <fmt/format.h>

#include <algorithm>

#include "cli/chosen.h"
#include "cli/chosen_job.h"
#include "cli/job_options.h"
#include "cli/note_options.h"

namespace tapbook {
namespace {

Amplifier named_amplifier(const Catalog& catalog, const std::string& words) {
    const auto all = catalog.amplifiers();
    std::vector<std::string_view> codes;
    for (const auto& amplifier : all) {
        codes.push_back(amplifier.path);
        if (amplifier.path == words || folded(amplifier.name) == folded(words)) return amplifier;
    }
    const auto near = nearest(words, codes);
    throw NoAnswer(fmt::format("there is no amplifier \"{}\"", shown(words)),
                   near ? fmt::format("did you mean {}?", *near) : "tapbook add FILE.toml puts amplifiers in");
}

// The words of a part's first stop: why it is not planned.
std::string first_stop(const JudgedCandidate& part) {
    for (const auto& finding : part.findings)
        if (finding.effect == Effect::stop) return finding.says;
    return {};
}

const JudgedCandidate& needed_part(const Advice& advice, const std::string& named) {
    const JudgedCandidate* part = planned_part(advice, named);
    if (part == nullptr && !named.empty()) {
        std::vector<std::string_view> known;
        for (const auto& candidate : advice.candidates) known.push_back(candidate.converter);
        const auto near = nearest(named, known);
        throw NoAnswer(fmt::format("there is no converter \"{}\"", shown(named)),
                       near ? fmt::format("did you mean {}?", *near) : "tapbook advise lists them");
    }
    if (part == nullptr)
        throw NoAnswer("no converter fits this tap, so nothing was planned",
                       "tapbook advise VEHICLE --why says why; another tap: --tap");
    if (part->verdict == Verdict::no)
        throw NoAnswer(fmt::format("{} does not fit: {}", part->converter, first_stop(*part)),
                       advice.best ? fmt::format("the best that fits is {}", *advice.best) : "nothing fits this tap");
    return *part;
}

Advice advice_for(const Catalog& catalog, const Session& session, const Parsed& parsed, const ShopJob& job) {
    JobFacts facts{catalog.car(job.vehicle, job.year), catalog.converters(), {}, catalog.is_practice()};
    const std::string amplifier = parsed.text("--amp").value_or(job.plan.amplifier);
    if (!amplifier.empty()) facts.amplifier = named_amplifier(catalog, amplifier);
    AdviseRequest request;
    request.system = system_of_job(facts.car, job, parsed);
    if (request.system == unrecorded_system)
        throw UsageError(
            fmt::format("the sound system of job {} is not recorded: find out which one it is", job.number),
            "then say --system CODE; tapbook taps tells how to recognise each");
    const auto tap = parsed.text("--tap");
    request.tap = tap ? chosen_tap(facts.car, request.system, *tap) : std::string();
    if (const auto lowest = parsed.number("--lowest-hz", 3, 1000, 20000000)) request.lowest = millihertz(*lowest);
    RuleBook rules = rules_beside(session.database);
    try {
        return advise(facts, request, rules);
    } catch (const AdviseError& error) {
        throw NoAnswer(error.what(), "tapbook taps shows what is recorded of this car");
    }
}

// What the words after the job name: a tap point, or the sound system for none.
struct ReadPlace {
    std::string path;
    NoteKind kind = NoteKind::pair;
};

// A tap of a car whose system is not known lends its name from any system.
std::string tap_below_unrecorded(const CarFacts& car, const std::string& words) {
    CarFacts merged;
    merged.vehicle = car.vehicle;
    for (TapFacts tap : car.taps) {
        tap.system = unrecorded_system;
        tap.code = fmt::format("{}/{}/{}", car.vehicle.path, unrecorded_system, path_tail(tap.code, system_depth));
        const bool is_there = std::any_of(merged.taps.begin(), merged.taps.end(),
                                          [&](const TapFacts& other) { return other.code == tap.code; });
        if (!is_there) merged.taps.push_back(std::move(tap));
    }
    return chosen_tap(merged, std::string(unrecorded_system), words);
}

ReadPlace read_place(const CarFacts& car, const ShopJob& job, const std::string& words, bool is_system) {
    if (words.empty() && is_system) return {path_join(job.vehicle, job.system), NoteKind::system};
    if (words.empty() && job.plan.tap.empty())
        throw UsageError("which tap was read?", "name it, as tapbook taps lists it; or plan the job first");
    if (words.empty()) return {job.plan.tap, NoteKind::pair};
    const bool is_unrecorded = job.system == unrecorded_system;
    ReadPlace place{is_unrecorded ? tap_below_unrecorded(car, words) : chosen_tap(car, job.system, words)};
    for (const auto& tap : car.taps)
        if (path_tail(tap.code, system_depth) == path_tail(place.path, system_depth) &&
            (is_unrecorded || tap.code == place.path))
            place.kind = carries_signal(tap.circuit.role) ? NoteKind::pair : NoteKind::switched;
    return place;
}

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
    options.push_back({"--dry-run", "", "show what would happen and write nothing"});
    return options;
}

Exit run_job_plan(Session& session, const Parsed& parsed) {
    Catalog catalog = Catalog::open(session.database, Access::write);
    const ShopJob job = chosen_job(catalog.jobs(), parsed.joined_words());
    const Advice advice = advice_for(catalog, session, parsed, job);
    const JudgedCandidate& part = needed_part(advice, parsed.text("--converter").value_or(""));
    const JobReport report =
        catalog.plan_job(job.number, plan_of(advice, part), advice.system.code, parsed.flag("--dry-run"));
    JobPlanAnswer answer = plan_answer(report.job, advice, part);
    answer.written = report.written;
    session.answer(job_plan_text(answer, session.screen), job_plan_json(answer));
    return Exit::done;
}

Exit run_job_reading(Session& session, const Parsed& parsed) {
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
