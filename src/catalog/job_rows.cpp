// Jobs in and out of their tables: a job is read whole and written whole, so that what is in memory is what is stored.
#include "catalog/job_rows.h"

#include <fmt/format.h>

#include <algorithm>
#include <limits>

namespace tapbook {
namespace {

std::string text_or_empty(const sqlite::Statement& rows, int column) {
    return std::string(rows.optional_text(column).value_or(""));
}

std::optional<int> small(const sqlite::Statement& rows, int column) {
    const auto number = rows.optional_integer(column);
    return number ? std::optional(static_cast<int>(*number)) : std::nullopt;
}

std::optional<std::string> or_null(const std::string& text) {
    return text.empty() ? std::nullopt : std::optional(text);
}

// Jobs from the first to the last number, both included.
struct JobRange {
    int first, last;
};

// The part of a plan that schema version 6 has first.
constexpr std::int32_t first_version_with_install = 6;
constexpr std::string_view install_columns =
    ", turn_on, feed_mm, feed_size, feed_metal, feed_insulation, feed_in_engine_space, load, bridged, speaker_mw";

void read_install(const sqlite::Statement& rows, int first, JobPlan& plan) {
    plan.turn_on = text_or_empty(rows, first);
    plan.feed_mm = rows.optional_integer(first + 1);
    plan.feed_size = text_or_empty(rows, first + 2);
    plan.feed_metal = parse_word<Metal>(text_or_empty(rows, first + 3));
    plan.feed_insulation = parse_word<Insulation>(text_or_empty(rows, first + 4));
    plan.feed_in_engine_space = rows.optional_integer(first + 5) == 1;
    plan.load = text_or_empty(rows, first + 6);
    plan.bridged = rows.optional_integer(first + 7) == 1;
    plan.speaker_mw = rows.optional_integer(first + 8);
}

std::vector<ShopJob> job_heads(sqlite::Database& database, JobRange range) {
    std::vector<ShopJob> jobs;
    const bool has_install = database.user_version() >= first_version_with_install;
    auto rows = database.prepare(
        fmt::format("SELECT number, code, state, started, closed, vehicle, year, system, customer, agreed, "
                    "car, initials, tap, converter, amplifier, lowest_mhz, planned_minutes, taken_minutes, "
                    "outcome, remarks{} FROM job WHERE number >= ?1 AND number <= ?2 ORDER BY number",
                    has_install ? install_columns : std::string_view()));
    for (rows.bind_all(range.first, range.last); rows.step();) {
        ShopJob job;
        job.number = static_cast<int>(rows.integer(0));
        job.code = rows.text(1);
        job.state = parse_word<JobState>(rows.text(2)).value_or(JobState::open);
        job.started = rows.text(3);
        job.closed = text_or_empty(rows, 4);
        job.vehicle = rows.text(5);
        job.year = small(rows, 6);
        job.system = rows.text(7);
        job.customer = text_or_empty(rows, 8);
        job.agreed = text_or_empty(rows, 9);
        job.car = text_or_empty(rows, 10);
        job.initials = text_or_empty(rows, 11);
        job.plan.tap = text_or_empty(rows, 12);
        job.plan.converter = text_or_empty(rows, 13);
        job.plan.amplifier = text_or_empty(rows, 14);
        job.plan.lowest_mhz = rows.optional_integer(15);
        job.plan.minutes = small(rows, 16);
        if (has_install) read_install(rows, 20, job.plan);
        job.taken_minutes = small(rows, 17);
        job.outcome = parse_word<JobOutcome>(rows.optional_text(18).value_or(""));
        job.remarks = text_or_empty(rows, 19);
        jobs.push_back(std::move(job));
    }
    return jobs;
}

ShopJob* find_job(std::vector<ShopJob>& jobs, std::int64_t number) {
    const auto found = std::lower_bound(jobs.begin(), jobs.end(), number,
                                        [](const ShopJob& job, std::int64_t wanted) { return job.number < wanted; });
    return found == jobs.end() || found->number != number ? nullptr : &*found;
}

void read_checks(sqlite::Database& database, std::vector<ShopJob>& jobs, JobRange range) {
    auto rows = database.prepare("SELECT job, list, item, answer, words FROM job_check WHERE job >= ?1 AND job <= ?2");
    for (rows.bind_all(range.first, range.last); rows.step();) {
        ShopJob* job = find_job(jobs, rows.integer(0));
        const auto list = parse_word<CheckList>(rows.text(1));
        const auto item = parse_word<CheckItem>(rows.text(2));
        const auto answer = parse_word<CheckAnswer>(rows.text(3));
        if (job == nullptr || !list || !item || !answer) continue;
        (*list == CheckList::came ? job->came : job->left).push_back({*item, *answer, std::string(rows.text(4))});
    }
    for (auto& job : jobs)
        for (auto* list : {&job.came, &job.left})
            std::sort(list->begin(), list->end(),
                      [](const CheckEntry& a, const CheckEntry& b) { return a.item < b.item; });
}

const Field* field_stored_as(std::string_view name) {
    for (const auto& row : note_fields())
        if (row.field.stored == name) return &row.field;
    return nullptr;
}

void read_visits(sqlite::Database& database, std::vector<ShopJob>& jobs, JobRange range) {
    auto rows = database.prepare(
        "SELECT job, path, kind, date, turn, note FROM job_visit"
        " WHERE job >= ?1 AND job <= ?2 ORDER BY job, path");
    for (rows.bind_all(range.first, range.last); rows.step();) {
        ShopJob* job = find_job(jobs, rows.integer(0));
        if (job == nullptr) continue;
        JobVisit visit{std::string(rows.text(1)),
                       parse_word<NoteKind>(rows.text(2)).value_or(NoteKind::pair),
                       std::string(rows.text(3)),
                       static_cast<int>(rows.integer(4)),
                       {},
                       {}};
        if (const auto note = rows.optional_blob(5)) {
            RecordId id{};
            if (from_hex(hex_of(*note), id)) visit.note = id;
        }
        job->visits.push_back(std::move(visit));
    }
    auto values = database.prepare("SELECT job, path, field, value FROM job_reading WHERE job >= ?1 AND job <= ?2");
    for (values.bind_all(range.first, range.last); values.step();) {
        ShopJob* job = find_job(jobs, values.integer(0));
        const Field* field = field_stored_as(values.text(2));
        if (job == nullptr || field == nullptr) continue;
        for (auto& visit : job->visits)
            if (visit.path == values.text(1)) put_cell(*field, values.value(3), visit.readings, CellStyle::entry);
    }
}

void read_actions(sqlite::Database& database, std::vector<ShopJob>& jobs, JobRange range) {
    auto rows = database.prepare(
        "SELECT job, number, words, opened, closed FROM job_action"
        " WHERE job >= ?1 AND job <= ?2 ORDER BY job, number");
    for (rows.bind_all(range.first, range.last); rows.step();)
        if (ShopJob* job = find_job(jobs, rows.integer(0)))
            job->actions.push_back({static_cast<int>(rows.integer(1)), std::string(rows.text(2)),
                                    std::string(rows.text(3)), text_or_empty(rows, 4)});
}

bool has_job_tables(sqlite::Database& database) {
    return database.prepare("SELECT 1 FROM sqlite_schema WHERE type = 'table' AND name = 'job_reading'").step();
}

void put_checks(sqlite::Database& database, const ShopJob& job) {
    auto put = database.prepare("INSERT INTO job_check (job, list, item, answer, words) VALUES (?1, ?2, ?3, ?4, ?5)");
    for (const auto list : {CheckList::came, CheckList::left})
        for (const auto& entry : list == CheckList::came ? job.came : job.left) {
            put.bind_all(job.number, word_of(list), word_of(entry.item), word_of(entry.answer), entry.words);
            put.run();
        }
}

void put_visits(sqlite::Database& database, const ShopJob& job) {
    auto put = database.prepare(
        "INSERT INTO job_visit (job, path, kind, date, turn, note) VALUES (?1, ?2, ?3, ?4, ?5, "
        "?6)");
    auto read = database.prepare("INSERT INTO job_reading (job, path, field, value) VALUES (?1, ?2, ?3, ?4)");
    for (const auto& visit : job.visits) {
        std::optional<sqlite::BlobView> note;
        if (visit.note)
            note = sqlite::BlobView{{reinterpret_cast<const char*>(visit.note->data()), visit.note->size()}};
        put.bind_all(job.number, visit.path, word_of(visit.kind), visit.date, visit.turn, note);
        put.run();
        for (const auto& [name, value] : visit.readings) {
            const Field* field = field_stored_as(name);
            if (field == nullptr) continue;
            read.bind_all(job.number, visit.path, name, cell_of(*field, visit.readings, CellStyle::entry));
            read.run();
        }
    }
}

void put_actions(sqlite::Database& database, const ShopJob& job) {
    auto put = database.prepare(
        "INSERT INTO job_action (job, number, words, opened, closed) VALUES (?1, ?2, ?3, ?4, "
        "?5)");
    for (const auto& action : job.actions) {
        put.bind_all(job.number, action.number, action.words, action.opened, or_null(action.closed));
        put.run();
    }
}

std::vector<ShopJob> read_range(sqlite::Database& database, JobRange range) {
    if (!has_job_tables(database)) return {};
    auto jobs = job_heads(database, range);
    read_checks(database, jobs, range);
    read_visits(database, jobs, range);
    read_actions(database, jobs, range);
    return jobs;
}

std::optional<std::int64_t> one_or_null(bool flag) {
    return flag ? std::optional<std::int64_t>(1) : std::nullopt;
}

template <class Enum>
std::optional<std::string> word_or_null(const std::optional<Enum>& value) {
    return value ? std::optional(std::string(word_of(*value))) : std::nullopt;
}

void put_install(sqlite::Database& database, const ShopJob& job) {
    const JobPlan& plan = job.plan;
    auto put = database.prepare(
        "UPDATE job SET turn_on = ?2, feed_mm = ?3, feed_size = ?4, feed_metal = ?5, feed_insulation = ?6, "
        "feed_in_engine_space = ?7, load = ?8, bridged = ?9, speaker_mw = ?10 WHERE number = ?1");
    put.bind_all(job.number, or_null(plan.turn_on), plan.feed_mm, or_null(plan.feed_size),
                 word_or_null(plan.feed_metal), word_or_null(plan.feed_insulation),
                 one_or_null(plan.feed_in_engine_space), or_null(plan.load), one_or_null(plan.bridged),
                 plan.speaker_mw);
    put.run();
}

}  // namespace

std::vector<ShopJob> read_jobs(sqlite::Database& database) {
    return read_range(database, {0, std::numeric_limits<int>::max()});
}

ShopJob read_job_row(sqlite::Database& database, int number) {
    auto found = read_range(database, {number, number});
    if (!found.empty()) return std::move(found.front());
    throw CatalogError(CatalogTrouble::not_found, fmt::format("there is no job {}", number),
                       "tapbook job list --all shows all jobs");
}

void put_job(sqlite::Database& database, const ShopJob& job) {
    for (const std::string_view table : {"job_check", "job_visit", "job_reading", "job_action"}) {
        auto clear = database.prepare(fmt::format("DELETE FROM {} WHERE job = ?1", table));
        clear.bind_all(job.number);
        clear.run();
    }
    auto put = database.prepare(
        "INSERT OR REPLACE INTO job (number, code, state, started, closed, vehicle, year, system, customer, agreed, "
        "car, "
        "initials, tap, converter, amplifier, lowest_mhz, planned_minutes, taken_minutes, outcome, remarks) VALUES "
        "(?1, "
        "?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11, ?12, ?13, ?14, ?15, ?16, ?17, ?18, ?19, ?20)");
    put.bind_all(job.number, job.code, word_of(job.state), job.started, or_null(job.closed), job.vehicle, job.year,
                 job.system, or_null(job.customer), or_null(job.agreed), or_null(job.car), or_null(job.initials),
                 or_null(job.plan.tap), or_null(job.plan.converter), or_null(job.plan.amplifier), job.plan.lowest_mhz,
                 job.plan.minutes, job.taken_minutes, word_or_null(job.outcome), or_null(job.remarks));
    put.run();
    put_install(database, job);
    put_checks(database, job);
    put_visits(database, job);
    put_actions(database, job);
}

int next_job_number(sqlite::Database& database) {
    auto rows = database.prepare("SELECT coalesce(max(number), 0) + 1 FROM job");
    rows.step();
    return static_cast<int>(rows.integer(0));
}

bool has_job_code(sqlite::Database& database, std::string_view code) {
    auto rows = database.prepare("SELECT 1 FROM job WHERE code = ?1");
    rows.bind_all(code);
    return rows.step();
}

}  // namespace tapbook
