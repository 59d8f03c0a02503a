// Do the jobs fit themselves? Words are of their tables, lists and readings belong to a job that is there, and the note
// a place became is in the ledger.
#include <fmt/format.h>

#include <algorithm>
#include <set>

#include "catalog/check_rows.h"

namespace tapbook {
namespace {

template <class Enum>
bool is_word(const sqlite::Value& cell) {
    return parse_word<Enum>(text_of_cell(cell)).has_value();
}

template <class Enum>
bool is_word_or_absent(const sqlite::Value& cell) {
    return std::holds_alternative<std::monostate>(cell) || is_word<Enum>(cell);
}

// Rows of a table of a job's parts: `query` gives job.number, a name for the row, and whether it is sound.
void check_parts(RowCheck& check, const std::set<std::int64_t>& jobs, std::string_view what, std::string_view query) {
    auto rows = check.database.prepare(query);
    while (rows.step()) {
        ++check.findings.report().other_rows;
        const auto job = number_of_cell(rows.value(0)).value_or(0);
        const std::string name = fmt::format("job {}: {}", job, text_of_cell(rows.value(1)));
        if (!jobs.contains(job)) check.findings.fact(fmt::format("{} of a job that is gone", what), name);
        if (number_of_cell(rows.value(2)) != 1) check.findings.fact(fmt::format("{} that make no sense", what), name);
    }
}

void check_visits(RowCheck& check) {
    auto rows = check.database.prepare("SELECT job, path, kind, note FROM job_visit");
    while (rows.step()) {
        const std::string name =
            fmt::format("job {}: {}", number_of_cell(rows.value(0)).value_or(0), text_of_cell(rows.value(1)));
        if (!is_word<NoteKind>(rows.value(2))) check.findings.fact("places of a job that make no sense", name);
        const std::string note = bytes_of_cell(rows.value(3));
        if (note.empty()) continue;
        RecordId id{};
        const bool is_id = from_hex(hex_of(note), id) && note.size() == id.size();
        const auto holds = [&](const std::vector<RecordId>& ids) {
            return std::binary_search(ids.begin(), ids.end(), id);
        };
        if (!is_id || (!holds(check.present) && !holds(check.broken)))
            check.findings.fact("notes of a job that are gone", name);
    }
}

}  // namespace

void check_jobs(RowCheck& check) {
    std::sort(check.present.begin(), check.present.end());
    std::sort(check.broken.begin(), check.broken.end());
    std::set<std::int64_t> jobs;
    auto rows = check.database.prepare("SELECT number, code, state, outcome, vehicle FROM job");
    while (rows.step()) {
        ++check.findings.report().other_rows;
        const auto number = number_of_cell(rows.value(0)).value_or(0);
        jobs.insert(number);
        const bool is_sound = is_word<JobState>(rows.value(2)) && is_word_or_absent<JobOutcome>(rows.value(3)) &&
                              path_parts(text_of_cell(rows.value(4))).size() == vehicle_depth;
        if (!is_sound)
            check.findings.fact("jobs that make no sense",
                                fmt::format("job {}, {}", number, text_of_cell(rows.value(1))));
    }
    check_parts(check, jobs, "items of a list",
                "SELECT job, list || ' ' || item, list IN ('came', 'left') AND answer IN ('ok', 'bad', 'none') FROM "
                "job_check");
    check_parts(check, jobs, "places read", "SELECT job, path, turn >= 0 FROM job_visit");
    check_parts(check, jobs, "readings",
                "SELECT job, path || ' ' || field, EXISTS (SELECT 1 FROM job_visit WHERE job_visit.job = "
                "job_reading.job AND job_visit.path = job_reading.path) FROM job_reading");
    check_parts(check, jobs, "temporary actions",
                "SELECT job, words, number > 0 AND (closed IS NULL OR closed >= opened) FROM job_action");
    check_visits(check);
}

}  // namespace tapbook
