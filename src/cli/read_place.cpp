// See read_place.h.
#include "cli/read_place.h"

#include <fmt/format.h>

#include <algorithm>

#include "cli/chosen.h"

namespace tapbook {
namespace {

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

}  // namespace

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

}  // namespace tapbook
