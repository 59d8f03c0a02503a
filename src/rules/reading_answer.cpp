// See reading_answer.h.
#include "rules/reading_answer.h"

#include <algorithm>

namespace tapbook {
namespace {

std::optional<std::int64_t> millivolts_of(const Values& values, std::string_view stored) {
    const auto* number = find_value<std::int64_t>(values, stored);
    return number == nullptr ? std::nullopt : std::optional(*number);
}

std::optional<MeterVerdict> verdict_on(const Values& values) {
    const auto positive = millivolts_of(values, "dc_positive_mv"), negative = millivolts_of(values, "dc_negative_mv");
    const auto ac = millivolts_of(values, "ac_mv");
    if (!positive || !negative || !ac) return std::nullopt;
    MeterReadings readings;
    readings.dc_positive_mv = *positive;
    readings.dc_negative_mv = *negative;
    readings.ac_mv = *ac;
    readings.supply_mv = millivolts_of(values, "supply_mv");
    readings.ac_positive_mv = millivolts_of(values, "ac_positive_mv");
    readings.ac_negative_mv = millivolts_of(values, "ac_negative_mv");
    readings.full_volume = flag_field(values, "full_volume");
    return judge(readings);
}

const TapFacts* tap_at(const CarFacts& car, std::string_view path) {
    for (const auto* list : {&car.taps, &car.unrecorded})
        for (const auto& tap : *list)
            if (tap.code == path) return &tap;
    return nullptr;
}

// Volts read with music or below the full volume step may lie below what is predicted for it.
bool counts_as_low(const Values& values, std::string_view field) {
    if (!field.starts_with("ac")) return true;
    return flag_field(values, "full_volume").value_or(true) && !flag_field(values, "music").value_or(false);
}

void compare(ReadingAnswer& answer, const CarFacts& car, const TapFacts& tap) {
    constexpr double any_music_hz = 60;
    const auto lowest = answer.job.plan.lowest_mhz;
    const auto* tone = find_value<std::int64_t>(answer.readings, "tone_mhz");
    const auto* level = find_value<std::int64_t>(answer.readings, "tone_mdb");
    const Hertz note = tone != nullptr ? millihertz(*tone) : lowest ? millihertz(*lowest) : hertz(any_music_hz);
    const auto list = predicted_readings(predict_tap(car, tap, note), effective_output(tap), note,
                                         level != nullptr ? thousandths_dbfs(*level) : dbfs(0));
    for (const auto& predicted : list) {
        const auto read = millivolts_of(answer.readings, predicted.stored);
        if (!read) continue;
        Against against = held_against(predicted.range, *read);
        if (against == Against::below && !counts_as_low(answer.readings, predicted.field))
            against = Against::other_volume;
        answer.compared.push_back({predicted, *read, against, meaning_of(predicted.field, against)});
    }
}

std::string line_of(const CarFacts& car, const std::string& path, NoteKind kind) {
    if (kind == NoteKind::system) {
        for (const auto& system : car.systems)
            if (system.entry.path == path) return premium_line(system.premium);
        return {};
    }
    const TapFacts* tap = tap_at(car, path);
    if (tap == nullptr) return {};
    return kind == NoteKind::pair ? standing_line(tap->pair) : switched_line(tap->switched);
}

struct Wanted {
    std::string_view stored, words;
};

constexpr Wanted pair_wanted[] = {{"positive", "colours"},
                                  {"supply_mv", "supply"},
                                  {"dc_positive_mv", "d.c. of the positive conductor"},
                                  {"dc_negative_mv", "d.c. of the negative conductor"},
                                  {"ac_mv", "a.c. across the pair"},
                                  {"tone_mhz", "tone in Hz"},
                                  {"tone_mdb", "tone in dB"},
                                  {"full_volume", "was it the full volume step"},
                                  {"speaker_connected", "was the speaker connected"},
                                  {"controls_flat", "were the controls flat"},
                                  {"polarity_method", "polarity"}};
constexpr Wanted power_wanted[] = {{"wire", "colour"},
                                   {"key_off_mv", "volts with the key off"},
                                   {"accessory_mv", "volts in accessory"},
                                   {"run_mv", "volts in run"},
                                   {"crank_mv", "volts while cranking"}};
constexpr Wanted system_wanted[] = {{"premium", "is there a separate amplifier"}, {"tell", "what showed it"}};

std::span<const Wanted> wanted_of(NoteKind kind) {
    switch (kind) {
        case NoteKind::pair:
            return pair_wanted;
        case NoteKind::switched:
            return power_wanted;
        case NoteKind::system:
            break;
    }
    return system_wanted;
}

}  // namespace

ReadingAnswer reading_answer(const ShopJob& job, const std::string& path, const CarFacts& car,
                             const TapLedger& before) {
    ReadingAnswer answer;
    answer.job = job;
    answer.path = path;
    answer.practice = before.practice;
    answer.catalog_line = line_of(car, path, before.kind);
    const auto found =
        std::find_if(job.visits.begin(), job.visits.end(), [&](const JobVisit& visit) { return visit.path == path; });
    if (found == job.visits.end()) return answer;
    answer.kind = found->kind;
    answer.readings = found->readings;
    const TapFacts* tap = tap_at(car, path);
    Values values = note_values(job, *found, tap != nullptr ? tap->tap.side : std::nullopt);
    if (!job.car.empty()) values["car"] = job.car;
    const Note note = note_of(values, {});
    if (answer.kind == NoteKind::pair) {
        answer.verdict = verdict_on(answer.readings);
        if (tap != nullptr) compare(answer, car, *tap);
    }
    if (answer.kind == NoteKind::switched) answer.live = switched_class(note);
    answer.complaints = check_note(values, tap != nullptr ? &tap->circuit.output : nullptr);
    const auto more = check_against_ledger(note, before.live(), before.witnesses, {});
    answer.complaints.insert(answer.complaints.end(), more.begin(), more.end());
    for (const auto& wanted : wanted_of(answer.kind))
        if (!answer.readings.contains(wanted.stored)) answer.to_read.emplace_back(wanted.words);
    return answer;
}

}  // namespace tapbook
