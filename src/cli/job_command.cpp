// job start, came, left, action, close, open, list, show: what happens to a job between the key and the bill.
#include <fmt/format.h>

#include "cli/chosen.h"
#include "cli/chosen_job.h"

namespace tapbook {
namespace {

constexpr std::int64_t most_minutes = 100000;

// A typed name that is stored as it is. Throws UsageError.
std::string plain_text(const Parsed& parsed, std::string_view option) {
    const std::string text = parsed.text(option).value_or("");
    if (!is_utf8(text) || hidden_character(text) || (parsed.text(option) && text.empty()))
        throw UsageError(fmt::format("{}: write it in plain characters", option));
    if (text.size() > most_text_bytes)
        throw UsageError(fmt::format("{} is longer than {} bytes", option, most_text_bytes), "shorten it");
    return nfc(text);
}

JobScreen screen_of(const Catalog& catalog, const ShopJob& job) {
    return {car_words_of(catalog, job), catalog.is_practice()};
}

void answer_job(Session& session, const Catalog& catalog, const JobReport& report, JobPart part) {
    session.answer(job_text(report, part, screen_of(catalog, report.job), session.screen), job_json(report));
}

Exit fill_list(Session& session, const Parsed& parsed, CheckList list) {
    Catalog catalog = Catalog::open(session.database, Access::write);
    const JobWords words = job_and_items(parsed.words);
    const ShopJob job = chosen_job(catalog.jobs(), words.job);
    JobChecks checks = typed_checks(words.items);
    if (parsed.text("--agreed")) checks.agreed = plain_text(parsed, "--agreed");
    const bool is_question = words.items.empty() && !checks.agreed;
    const JobReport report =
        is_question ? JobReport{job, false} : catalog.check_job(job.number, list, checks, parsed.flag("--dry-run"));
    const bool came = list == CheckList::came;
    const JobPart part =
        is_question ? (came ? JobPart::came : JobPart::left) : (came ? JobPart::came_filled : JobPart::left_filled);
    answer_job(session, catalog, report, part);
    return Exit::done;
}

std::set<std::string, std::less<>> typed_sure(const Parsed& parsed) {
    std::set<std::string, std::less<>> sure;
    const std::string typed = parsed.text("--sure").value_or("");
    for (std::string_view rest = typed; !rest.empty();) {
        const auto end = std::min(rest.find(','), rest.size());
        sure.emplace(rest.substr(0, end));
        rest.remove_prefix(std::min(end + 1, rest.size()));
    }
    return sure;
}

}  // namespace

Exit run_job_start(Session& session, const Parsed& parsed) {
    Catalog catalog = Catalog::open(session.database, Access::write);
    const std::string words = parsed.joined_words();
    const ChosenCar chosen = chosen_car_of(catalog, parsed, words);
    JobStart start;
    start.vehicle = chosen.vehicle.path;
    start.year = chosen.year;
    const CarFacts facts = catalog.car_layout(start.vehicle);
    start.system =
        parsed.text("--system")
            .value_or(facts.systems.size() == 1 ? facts.systems.front().code : std::string(unrecorded_system));
    if (start.system != unrecorded_system) check_system(facts, start.system);
    start.customer = plain_text(parsed, "--customer");
    start.initials = plain_text(parsed, "--initials");
    start.car_words = parsed.text("--car").value_or(chosen.vin ? chosen.vin->text() : "");
    if (parsed.text("--car") && folded(start.car_words).empty())
        throw UsageError("--car: write the plate or VIN", "only a salted token of it is stored");
    const JobReport report = catalog.start_job(start, session.today, system_random(), parsed.flag("--dry-run"));
    answer_job(session, catalog, report, JobPart::started);
    return Exit::done;
}

Exit run_job_came(Session& session, const Parsed& parsed) {
    return fill_list(session, parsed, CheckList::came);
}

Exit run_job_left(Session& session, const Parsed& parsed) {
    return fill_list(session, parsed, CheckList::left);
}

Exit run_job_action(Session& session, const Parsed& parsed) {
    Catalog catalog = Catalog::open(session.database, Access::write);
    const auto jobs = catalog.jobs();
    const auto done = parsed.number("--done", 0, 1, 100000);
    std::vector<std::string> words = parsed.words;
    std::string named;
    if (!words.empty() && (done || is_job_word(jobs, words.front()))) {
        named = words.front();
        words.erase(words.begin());
    }
    if (done && !words.empty())
        throw UsageError("--done closes an action: no words belong to it", "tapbook job action JOB --done N");
    const std::string action = fmt::format("{}", fmt::join(words, " "));
    if (!done && action.find_first_not_of(' ') == std::string::npos)
        throw UsageError("what was done for a while?", "for example: tapbook job action \"pulled fuse 31\"");
    const ShopJob job = chosen_job(jobs, named);
    constexpr const char* action_words = "what was done";
    Parsed joined;
    joined.values[action_words] = action;
    const bool dry_run = parsed.flag("--dry-run");
    const JobReport report =
        done ? catalog.end_action(job.number, static_cast<int>(*done), session.today, dry_run)
             : catalog.start_action(job.number, plain_text(joined, action_words), session.today, dry_run);
    answer_job(session, catalog, report, JobPart::actions);
    return Exit::done;
}

Exit run_job_close(Session& session, const Parsed& parsed) {
    const auto outcome = parsed.word<JobOutcome>("--outcome");
    if (!outcome) throw UsageError("how did it end? Say --outcome", "fine, noise, thump or comeback");
    Catalog catalog = Catalog::open(session.database, Access::write);
    const JobWords words = job_and_items(parsed.words);
    const ShopJob job = chosen_job(catalog.jobs(), words.job);
    JobClosing closing;
    closing.outcome = *outcome;
    closing.left = typed_checks(words.items);
    if (parsed.text("--remarks")) closing.remarks = plain_text(parsed, "--remarks");
    if (const auto minutes = parsed.number("--minutes", 0, 0, most_minutes))
        closing.minutes = static_cast<int>(*minutes);
    closing.sure = typed_sure(parsed);
    const JobCloseReport report = catalog.close_job(job.number, closing, session.today, parsed.flag("--dry-run"));
    session.answer(job_close_text(report, screen_of(catalog, report.job), session.screen), job_close_json(report));
    return Exit::done;
}

Exit run_job_open(Session& session, const Parsed& parsed) {
    Catalog catalog = Catalog::open(session.database, Access::write);
    const ShopJob job = chosen_job(catalog.jobs(), parsed.words.front());
    if (job.state == JobState::open)
        throw NoAnswer(fmt::format("job {} is open already", job.number),
                       fmt::format("`tapbook job show {}` shows it", job.number));
    answer_job(session, catalog, catalog.reopen_job(job.number, parsed.flag("--dry-run")), JobPart::reopened);
    return Exit::done;
}

Exit run_job_list(Session& session, const Parsed& parsed) {
    session.database = reading_place(session);
    const Catalog catalog = Catalog::open(session.database, Access::read);
    std::vector<ListedJob> list;
    std::size_t closed = 0;
    for (const auto& job : catalog.jobs()) {
        if (job.state == JobState::open || parsed.flag("--all"))
            list.push_back({job, car_words_of(catalog, job)});
        else
            ++closed;
    }
    session.answer(job_list_text(list, closed, catalog.is_practice(), session.screen), job_list_json(list));
    return Exit::done;
}

Exit run_job_show(Session& session, const Parsed& parsed) {
    session.database = reading_place(session);
    const Catalog catalog = Catalog::open(session.database, Access::read);
    const ShopJob job = chosen_job(catalog.jobs(), parsed.joined_words());
    answer_job(session, catalog, {job, false}, JobPart::all);
    return Exit::done;
}

}  // namespace tapbook
