// Tap points and jobs as spreadsheets: one row each, numbers as numbers, nothing that is computed here.
#include <fmt/format.h>

#include "report/spreadsheet_report.h"

namespace tapbook {
namespace {

using Cells = std::vector<CsvValue>;

void add_texts(Cells& cells, std::initializer_list<std::string> texts) {
    for (const auto& text : texts) cells.emplace_back(text);
}

template <class Quantity, class Unit>
CsvValue number_in(const std::optional<Quantity>& value, Unit unit) {
    if (!value) return std::string();
    return CsvNumber{fmt::format("{:.3f}", value->in(unit))};
}

CsvValue whole(const std::optional<int>& value) {
    if (!value) return std::string();
    return CsvNumber{std::to_string(*value)};
}

template <class Enum>
std::string word_or_nothing(const std::optional<Enum>& value) {
    return value ? std::string(word_of(*value)) : std::string();
}

std::string lines_of(const TextList& list) {
    std::string text;
    for (const auto& item : list) text += (text.empty() ? "" : "\n") + item;
    return text;
}

// What is at one place: colour and cavity of a pair's conductor.
void add_conductor(Cells& cells, const std::optional<WireColour>& colour, const Standing& cavity) {
    add_texts(cells, {colour ? code(*colour) : std::string(), colour ? words(*colour) : std::string(),
                      cavity.value.value_or("")});
}

void add_place(Cells& cells, const TapFacts& facts) {
    add_texts(cells, {facts.code, facts.system, std::string(word_of(facts.circuit.role)),
                      word_or_nothing(facts.circuit.position), facts.tap.place, facts.tap.connector});
}

void add_way(Cells& cells, const TapFacts& facts, bool practice) {
    TextList hazards;
    for (const Hazard hazard : facts.tap.hazards) hazards.emplace_back(word_of(hazard));
    cells.emplace_back(lines_of(facts.tap.panels));
    cells.push_back(whole(facts.tap.minutes));
    cells.emplace_back(lines_of(hazards));
    cells.emplace_back(std::string(practice ? "yes" : ""));
}

void add_pair_row(CsvSheet& sheet, const TapAnswer& tap, bool practice) {
    const PairStanding& pair = tap.facts.pair;
    Cells cells;
    add_place(cells, tap.facts);
    add_conductor(cells, pair.positive, pair.positive_cavity);
    add_conductor(cells, pair.negative, pair.negative_cavity);
    add_texts(cells, {std::string(word_of(pair.pair.grade)), std::string(word_of(pair.polarity.grade)),
                      pair.drive.value.value_or(std::string(word_of(tap.facts.circuit.output.drive))),
                      std::string(word_of(pair.drive.grade))});
    for (const auto& volts : {tap.signal.clean.low, tap.signal.clean.likely, tap.signal.clean.high})
        cells.push_back(number_in(volts, rms_volts));
    add_texts(cells, {"", ""});
    cells.push_back(whole(pair.notes));
    add_way(cells, tap.facts, practice);
    sheet.row(cells);
}

void add_power_row(CsvSheet& sheet, const TapFacts& facts, bool practice) {
    const SwitchedStanding& power = facts.switched;
    Cells cells;
    add_place(cells, facts);
    add_conductor(cells, power.colour, Standing());
    add_texts(cells, {"", "", "", std::string(word_of(power.circuit.grade)), "", "", "", "", "", ""});
    cells.emplace_back(power.circuit.value.value_or(""));
    cells.push_back(number_in(facts.circuit.fuse, amps));
    cells.push_back(whole(power.notes));
    add_way(cells, facts, practice);
    sheet.row(cells);
}

constexpr const char* tap_columns[] = {"code",
                                       "system",
                                       "role",
                                       "position",
                                       "place",
                                       "connector",
                                       "positive",
                                       "positive words",
                                       "positive cavity",
                                       "negative",
                                       "negative words",
                                       "negative cavity",
                                       "grade",
                                       "polarity grade",
                                       "drive",
                                       "drive grade",
                                       "clean V RMS low",
                                       "clean V RMS likely",
                                       "clean V RMS high",
                                       "live",
                                       "fuse A",
                                       "notes",
                                       "panels",
                                       "minutes",
                                       "hazards",
                                       "practice"};

constexpr const char* job_columns[] = {"number",        "code",        "state", "started",   "closed",    "vehicle",
                                       "year",          "system",      "tap",   "converter", "amplifier", "outcome",
                                       "minutes taken", "places read", "notes", "practice"};

template <std::size_t size>
CsvSheet with_columns(const char* const (&names)[size]) {
    CsvSheet sheet;
    Cells cells;
    for (const char* name : names) cells.emplace_back(std::string(name));
    sheet.row(cells);
    return sheet;
}

}  // namespace

std::string taps_csv(const TapsAnswer& answer) {
    CsvSheet sheet = with_columns(tap_columns);
    for (const auto& place : answer.places) {
        for (const auto& tap : place.pairs) add_pair_row(sheet, tap, answer.practice);
        for (const auto& power : place.power) add_power_row(sheet, power, answer.practice);
        for (const auto& other : place.others) add_power_row(sheet, other, answer.practice);
    }
    for (const auto& tap : answer.unrecorded) add_pair_row(sheet, tap, answer.practice);
    return sheet.take();
}

std::string jobs_csv(std::span<const ShopJob> jobs, bool practice) {
    CsvSheet sheet = with_columns(job_columns);
    for (const auto& job : jobs) {
        int notes = 0;
        for (const auto& visit : job.visits) notes += visit.note ? 1 : 0;
        Cells cells = {CsvNumber{std::to_string(job.number)}};
        add_texts(cells, {job.code, std::string(word_of(job.state)), job.started, job.closed, job.vehicle});
        cells.push_back(whole(job.year));
        add_texts(cells,
                  {job.system, job.plan.tap, job.plan.converter, job.plan.amplifier, word_or_nothing(job.outcome)});
        cells.push_back(whole(job.taken_minutes));
        cells.push_back(whole(static_cast<int>(job.visits.size())));
        cells.push_back(whole(notes));
        cells.emplace_back(std::string(practice ? "yes" : ""));
        sheet.row(cells);
    }
    return sheet.take();
}

}  // namespace tapbook
