// How does a job change while the car is in the bay? Each change reads the job, changes it in memory and writes it
// back, in one transaction.
#include <fmt/format.h>

#include <algorithm>

#include "catalog/adding.h"
#include "catalog/job_rows.h"

namespace tapbook {
namespace {

// What carries over to the next place of the same job.
constexpr std::string_view conditions[] = {"method",      "supply_mv",     "tone_mhz", "tone_mdb",
                                           "full_volume", "controls_flat", "true_rms", "speaker_connected"};

template <class Change>
JobReport changed_job(Catalog::State& state, int number, bool dry_run, Change change) {
    return in_one_transaction(
        state,
        [&] {
            ShopJob job = read_job_row(state.database, number);
            change(job);
            put_job(state.database, job);
            return JobReport{read_job_row(state.database, number), false};
        },
        [&](const auto&) { return !dry_run; });
}

const CheckEntry* find_entry(const std::vector<CheckEntry>& list, CheckItem item) {
    const auto found = std::find_if(list.begin(), list.end(), [&](const CheckEntry& e) { return e.item == item; });
    return found == list.end() ? nullptr : &*found;
}

void put_entry(std::vector<CheckEntry>& list, const CheckEntry& entry) {
    std::erase_if(list, [&](const CheckEntry& e) { return e.item == entry.item; });
    const auto after = std::find_if(list.begin(), list.end(), [&](const CheckEntry& e) { return e.item > entry.item; });
    list.insert(after, entry);
}

std::string new_code(sqlite::Database& database, const RandomSource& random) {
    constexpr int most_draws = 1000;
    for (int draw = 0; draw < most_draws; ++draw) {
        std::array<unsigned char, job_code_length> bytes{};
        random(bytes.data(), bytes.size());
        if (const auto code = job_code(bytes); code && !has_job_code(database, *code)) return *code;
    }
    throw CatalogError(CatalogTrouble::input_output, "no free job code was drawn", "try again");
}

// The visit read last at another place, whose conditions may count here too.
const JobVisit* last_other_visit(const ShopJob& job, const std::string& path) {
    const JobVisit* last = nullptr;
    for (const auto& visit : job.visits)
        if (visit.path != path && visit.kind == NoteKind::pair && (last == nullptr || visit.turn > last->turn))
            last = &visit;
    return last;
}

void take_over_conditions(const ShopJob& job, JobVisit& visit) {
    const JobVisit* last = last_other_visit(job, visit.path);
    if (last == nullptr)
        throw InputRefused({{place_of_job(job), "no other place was read yet, so there are no conditions to take over",
                             "say them here: --supply, --tone-hz, --tone-db, --full-volume, ..."}});
    for (const auto& row : note_fields()) {
        const auto found = last->readings.find(row.field.stored);
        const bool is_condition =
            std::find(std::begin(conditions), std::end(conditions), row.field.stored) != std::end(conditions);
        if (is_condition && found != last->readings.end() && applies_to(row, visit.kind))
            visit.readings.try_emplace(std::string(row.field.stored), found->second);
    }
}

void take_reading(ShopJob& job, const JobReading& reading, const std::string& today) {
    auto found = std::find_if(job.visits.begin(), job.visits.end(),
                              [&](const JobVisit& visit) { return visit.path >= reading.path; });
    if (found == job.visits.end() || found->path != reading.path)
        found = job.visits.insert(found, {reading.path, reading.kind, today, 0, {}, {}});
    JobVisit& visit = *found;
    const Values before = visit.readings;
    if (reading.forget) visit.readings.clear();
    for (const auto& [name, value] : reading.values) visit.readings[name] = value;
    if (reading.same_conditions) take_over_conditions(job, visit);
    if (visit.readings == before && visit.turn > 0) return;
    int last = 0;
    for (const auto& other : job.visits) last = std::max(last, other.turn);
    visit.turn = last + 1;
    visit.date = today;
    if (visit.readings.empty() && !visit.note) job.visits.erase(found);
}

}  // namespace

SourcePlace place_of_job(const ShopJob& job) {
    return {fmt::format("job {}", job.number), 0, 0, {}};
}

void need_open(const ShopJob& job) {
    if (job.state == JobState::open) return;
    throw InputRefused({{place_of_job(job), fmt::format("was closed on {}", job.closed),
                         fmt::format("`tapbook job open {}` opens it again", job.number)}});
}

void fill_checks(ShopJob& job, CheckList list, const JobChecks& checks) {
    auto& filled = list == CheckList::came ? job.came : job.left;
    for (const auto& entry : checks.entries) put_entry(filled, entry);
    if (checks.agreed) job.agreed = *checks.agreed;
    if (!checks.rest) return;
    for (const CheckItem item : missing_items(filled)) {
        const CheckEntry* came = list == CheckList::left ? find_entry(job.came, item) : nullptr;
        const bool stays_none = came != nullptr && came->answer == CheckAnswer::none;
        put_entry(filled, {item, stays_none ? CheckAnswer::none : *checks.rest, {}});
    }
}

std::vector<CheckItem> missing_items(const std::vector<CheckEntry>& list) {
    std::vector<CheckItem> missing;
    for (const auto& named : words_of<CheckItem>())
        if (find_entry(list, named.value) == nullptr) missing.push_back(named.value);
    return missing;
}

std::vector<CheckDifference> differences(const ShopJob& job) {
    std::vector<CheckDifference> list;
    for (const auto& came : job.came)
        if (const CheckEntry* left = find_entry(job.left, came.item); left != nullptr && !(*left == came))
            list.push_back({came.item, came, *left});
    return list;
}

std::vector<ShopJob> Catalog::jobs() const {
    try {
        return read_jobs(state_->database);
    } catch (const sqlite::Error& error) {
        throw_catalog_error(error, state_->file);
    }
}

JobReport Catalog::start_job(const JobStart& start, const std::string& today, const RandomSource& random,
                             bool dry_run) {
    return in_one_transaction(
        *state_,
        [&] {
            ShopJob job;
            job.number = next_job_number(state_->database);
            job.code = new_code(state_->database, random);
            job.started = today;
            job.vehicle = start.vehicle;
            job.system = start.system.empty() ? std::string(unrecorded_system) : start.system;
            job.year = start.year;
            job.customer = start.customer;
            job.initials = start.initials;
            if (!start.car_words.empty()) job.car = own_car_token(state_->database, start.car_words);
            put_job(state_->database, job);
            return JobReport{std::move(job), false};
        },
        [&](const JobReport&) { return !dry_run; });
}

JobReport Catalog::check_job(int number, CheckList list, const JobChecks& checks, bool dry_run) {
    return changed_job(*state_, number, dry_run, [&](ShopJob& job) {
        need_open(job);
        fill_checks(job, list, checks);
    });
}

JobReport Catalog::plan_job(int number, const JobPlan& plan, const std::string& system, bool dry_run) {
    return changed_job(*state_, number, dry_run, [&](ShopJob& job) {
        need_open(job);
        job.plan = plan;
        job.system = system;
    });
}

JobReport Catalog::read_all_at_job(int number, std::span<const JobReading> readings, const std::string& today,
                                   bool dry_run) {
    return changed_job(*state_, number, dry_run, [&](ShopJob& job) {
        need_open(job);
        for (const JobReading& reading : readings) take_reading(job, reading, today);
    });
}

JobReport Catalog::read_at_job(int number, const JobReading& reading, const std::string& today, bool dry_run) {
    return read_all_at_job(number, {&reading, 1}, today, dry_run);
}

JobReport Catalog::start_action(int number, const std::string& words, const std::string& today, bool dry_run) {
    return changed_job(*state_, number, dry_run, [&](ShopJob& job) {
        need_open(job);
        const int next = job.actions.empty() ? 1 : job.actions.back().number + 1;
        job.actions.push_back({next, words, today, {}});
    });
}

JobReport Catalog::end_action(int number, int action, const std::string& today, bool dry_run) {
    return changed_job(*state_, number, dry_run, [&](ShopJob& job) {
        need_open(job);
        const auto found = std::find_if(job.actions.begin(), job.actions.end(),
                                        [&](const JobAction& one) { return one.number == action; });
        if (found == job.actions.end())
            throw InputRefused({{place_of_job(job), fmt::format("has no temporary action {}", action),
                                 fmt::format("`tapbook job show {}` lists them", number)}});
        if (found->closed.empty()) found->closed = today;
    });
}

JobReport Catalog::reopen_job(int number, bool dry_run) {
    return changed_job(*state_, number, dry_run, [&](ShopJob& job) { job.state = JobState::open; });
}

}  // namespace tapbook
