// What is a job: one car in the bay, from "as it came" to "as it left"? Kept truth of this shop, never exchanged. What
// it found becomes notes when it is closed. Plain values: no store behind them.
#pragma once

#include <set>

#include "catalog/own_notes.h"
#include "catalog/stock.h"

namespace tapbook {

struct CheckEntry {
    CheckItem item = CheckItem::lamps;
    CheckAnswer answer = CheckAnswer::ok;
    std::string words;
    friend bool operator==(const CheckEntry&, const CheckEntry&) = default;
};

// What is filled into one of the two lists.
struct JobChecks {
    std::vector<CheckEntry> entries;
    std::optional<CheckAnswer> rest;  // for the items not filled yet; on leaving, what the car came without stays none
    std::optional<std::string> agreed;  // the customer's initials
};

// A place that was read, and the note it became.
struct JobVisit {
    std::string path;
    NoteKind kind = NoteKind::pair;
    std::string date;  // of the last changed reading
    int turn = 0;      // order of the last changes
    Values readings;   // fields of a note by their stored names; none when they were forgotten
    std::optional<RecordId> note;
};

struct JobAction {
    int number = 0;
    std::string words, opened, closed;  // closed "" while it is open
};

struct JobPlan {
    std::string tap, converter, amplifier;  // paths; converter may be "direct"; "" for not planned
    std::optional<std::int64_t> lowest_mhz;
    std::optional<int> minutes;  // to reach the tap

    std::string turn_on;                  // path of a tap point, "converter" or "own-input"; "" for the best
    std::optional<std::int64_t> feed_mm;  // main cable, one way, as measured on the car
    std::string feed_size;                // as written: "4", "25mm2", "sae4"; "" for the thinnest good one
    std::optional<Metal> feed_metal;
    std::optional<Insulation> feed_insulation;
    bool feed_in_engine_space = false;
    std::string load;  // what hangs on one output, as written: "4//4"
    bool bridged = false;
    std::optional<std::int64_t> speaker_mw;  // continuous power of what hangs there
};

struct ShopJob {
    int number = 0;
    std::string code;
    JobState state = JobState::open;
    std::string started, closed;  // days; closed "" while it never was
    std::string vehicle, system;  // path; code or "unrecorded"
    std::optional<int> year;
    std::string customer, agreed, car, initials, remarks;  // car: salted token
    JobPlan plan;
    std::optional<int> taken_minutes;
    std::optional<JobOutcome> outcome;
    std::vector<CheckEntry> came, left;  // in the order of the items
    std::vector<JobVisit> visits;        // by path
    std::vector<JobAction> actions;      // by number
};

// An item that left otherwise than it came; absent: not filled.
struct CheckDifference {
    CheckItem item;
    std::optional<CheckEntry> came, left;
};

// Of the items that are filled on both lists, those whose answer or words differ, in order.
std::vector<CheckDifference> differences(const ShopJob& job);

// Fills one of the lists.
void fill_checks(ShopJob& job, CheckList list, const JobChecks& checks);

// The items that a list lacks, in order.
std::vector<CheckItem> missing_items(const std::vector<CheckEntry>& list);

struct JobStart {
    std::string vehicle, system;  // system "" for unrecorded
    std::optional<int> year;
    std::string customer, car_words, initials;
};

// What was read at one place: added to what the job has there.
struct JobReading {
    std::string path;
    NoteKind kind = NoteKind::pair;
    Values values;
    bool same_conditions = false;  // take method, supply, tone, volume and meter from the place read before
    bool forget = false;           // first throw away what the job has there
};

// A job as it lies in a file: one that was worked off elsewhere or earlier.
struct PastJob {
    ShopJob job;  // number, visits' dates and notes are given here
    std::string car_words;
    SourcePlace place;
};

struct JobClosing {
    JobOutcome outcome = JobOutcome::fine;
    std::optional<std::string> remarks;
    std::optional<int> minutes;
    JobChecks left;
    std::set<std::string, std::less<>> sure;  // items knowingly left out ("rest" for all), places that are right so
};

struct JobReport {
    ShopJob job;  // as it is afterwards
    bool written = false;
};

enum class VisitEnd { noted, replaced, unchanged, withdrawn, nothing_to_note };
template <>
struct NamedValues<VisitEnd> {
    static constexpr Named<VisitEnd> all[] = {{VisitEnd::noted, "noted"},
                                              {VisitEnd::replaced, "replaced"},
                                              {VisitEnd::unchanged, "unchanged"},
                                              {VisitEnd::withdrawn, "withdrawn"},
                                              {VisitEnd::nothing_to_note, "nothing to note"}};
};
static_assert(table_is_sound<VisitEnd>());

struct ClosedVisit {
    VisitEnd end = VisitEnd::noted;
    NoteReport note;
};

struct JobCloseReport {
    ShopJob job;
    std::vector<ClosedVisit> visits;  // by path
    std::optional<JobStock> stock;    // absent: no converter was planned
    bool written = false;
};

// The path without the vehicle and system: what a person types for a place of the job.
std::string_view place_in_job(std::string_view path);

// The note that a visit becomes: method from what was read when nobody said it, the job's year and initials, the
// connector side of the tap, earlier work of others. Without car and turn.
Values note_values(const ShopJob& job, const JobVisit& visit, std::optional<ConnectorSide> side);

}  // namespace tapbook
