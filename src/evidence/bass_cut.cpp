// See bass_cut.h.
#include "evidence/bass_cut.h"

#include <algorithm>
#include <utility>
#include <vector>

#include "evidence/points.h"

namespace tapbook {
namespace {

constexpr Hertz bass_up_to = hertz(100);
constexpr Hertz middle_from = hertz(300);
constexpr Hertz middle_up_to = hertz(3000);

bool is_usable(const Note& note) {
    if (!looked_at(note.method) || !note.reading || note.car.empty()) return false;
    const ToneReading& reading = *note.reading;
    return reading.frequency && reading.level && reading.full_volume && reading.music != true &&
           reading.speaker_connected == true && reading.controls_flat == true && reading.volts > rms_volts(0);
}

// One tone read at both steps of one visit.
struct Rise {
    const Note* full;
    Gain gain;  // from the smaller step to the full one
};

bool same_visit(const Note& a, const Note& b) {
    return std::pair(a.car, a.date) == std::pair(b.car, b.date) && a.reading->level == b.reading->level;
}

template <class Wanted>
std::vector<Rise> rises(const std::vector<const Note*>& notes, Wanted wanted) {
    std::vector<Rise> all;
    for (const Note* full : notes) {
        if (full->reading->full_volume != true || !wanted(*full->reading->frequency)) continue;
        for (const Note* small : notes)
            if (small->reading->full_volume == false && same_visit(*full, *small) &&
                small->reading->frequency == full->reading->frequency)
                all.push_back({full, gain_between(small->reading->volts, full->reading->volts)});
    }
    return all;
}

}  // namespace

std::optional<Gain> bass_cut(std::span<const Note* const> notes) {
    std::vector<const Note*> usable;
    for (const Note* note : notes)
        if (is_usable(*note)) usable.push_back(note);
    const auto bass = rises(usable, [](Hertz f) { return f <= bass_up_to; });
    const auto middle = rises(usable, [](Hertz f) { return f >= middle_from && f <= middle_up_to; });
    std::optional<Gain> largest;
    const auto take = [&](Gain cut) { largest = std::max(largest.value_or(decibels(0)), cut); };
    for (const Rise& low : bass) {
        bool has_middle = false;
        for (const Rise& high : middle) {
            if (!same_visit(*low.full, *high.full)) continue;
            has_middle = true;
            take(high.gain - low.gain);
        }
        if (!has_middle && low.gain < decibels(0)) take(-low.gain);
    }
    return largest;
}

}  // namespace tapbook
