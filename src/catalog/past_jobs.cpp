// How do jobs of a file come in? As they are, under new numbers. Their readings are not typed again: a job with a car
// and a day takes up the notes that this shop wrote on that car that day.
#include <fmt/format.h>

#include <algorithm>

#include "catalog/adding.h"
#include "catalog/job_rows.h"
#include "catalog/ledger_rows.h"

namespace tapbook {
namespace {

// The readings in a note: what is neither of the job nor of the note as such.
Values readings_of(Values values) {
    for (const std::string_view name : {"kind", "path", "date", "year", "initials", "turn", "shop", "car"})
        if (const auto found = values.find(name); found != values.end()) values.erase(found);
    return values;
}

void take_up_notes(Catalog::State& state, ShopJob& job) {
    const std::string system = path_join(job.vehicle, job.system);
    for (const auto& row : ledger_rows(state.database, job.vehicle)) {
        const std::string path = text_field(row.values, "path");
        if (row.withdrawn || text_field(row.values, "car") != job.car ||
            text_field(row.values, "shop") != state.own.id || text_field(row.values, "date") != job.started ||
            path_head(path, system_depth) != system)
            continue;
        const auto kind = word_field<NoteKind>(row.values, "kind").value_or(NoteKind::pair);
        const int turn = static_cast<int>(job.visits.size()) + 1;
        job.visits.push_back({path, kind, job.started, turn, readings_of(row.values), row.id});
    }
}

class PastJobAdding {
  public:
    explicit PastJobAdding(Catalog::State& state, const Catalog& catalog) : state_(state), catalog_(catalog) {}

    int run(std::span<const PastJob> jobs) {
        int added = 0;
        for (const auto& past : jobs) {
            if (has_job_code(state_.database, past.job.code)) continue;
            check(past);
            if (!complaints_.empty()) continue;
            add(past);
            ++added;
        }
        if (!complaints_.empty()) throw InputRefused(std::move(complaints_));
        return added;
    }

  private:
    void need(const PastJob& past, EntryKind kind, std::string_view path) {
        if (path.empty() || catalog_.has_entry(kind, path)) return;
        complaints_.push_back({past.place, fmt::format("there is no {} \"{}\"", word_of(kind), path),
                               "add the file that describes it first"});
    }

    void check(const PastJob& past) {
        const ShopJob& job = past.job;
        need(past, EntryKind::vehicle, job.vehicle);
        if (job.system != unrecorded_system) need(past, EntryKind::system, path_join(job.vehicle, job.system));
        need(past, EntryKind::tap, job.plan.tap);
        if (job.plan.converter != "direct") need(past, EntryKind::converter, job.plan.converter);
        need(past, EntryKind::amplifier, job.plan.amplifier);
    }

    void add(const PastJob& past) {
        ShopJob job = past.job;
        job.number = next_job_number(state_.database);
        if (!past.car_words.empty()) job.car = own_car_token(state_.database, past.car_words);
        if (job.state == JobState::closed && !job.car.empty()) take_up_notes(state_, job);
        put_job(state_.database, job);
    }

    Catalog::State& state_;
    const Catalog& catalog_;
    std::vector<Complaint> complaints_;
};

}  // namespace

int Catalog::add_past_jobs(std::span<const PastJob> jobs) {
    try {
        sqlite::Transaction transaction(state_->database);
        const int added = PastJobAdding(*state_, *this).run(jobs);
        transaction.commit();
        return added;
    } catch (const sqlite::Error& error) {
        throw_catalog_error(error, state_->file);
    }
}

}  // namespace tapbook
