// See taps_answer.h.
#include "rules/taps_answer.h"

#include <fmt/format.h>

#include <algorithm>
#include <set>

#include "rules/rules.h"

namespace tapbook {
namespace {

constexpr double every_note_hz = 60;  // predictions of `taps` are for any music; a measured reading must hold near it

std::vector<Caution> cautions_of(const std::vector<Hazard>& hazards) {
    std::vector<Caution> cautions;
    for (const Hazard hazard : hazards) {
        const auto text = hazard_text(hazard);
        cautions.push_back({std::string(text.title), std::string(text.caution)});
    }
    return cautions;
}

bool same(const Caution& a, const Caution& b) {
    return a.title == b.title;
}

// Moves what all pairs of a place have in common up to the place.
void lift_shared_cautions(PlaceAnswer& place) {
    if (place.pairs.empty()) return;
    for (const auto& caution : std::vector<Caution>(place.pairs.front().cautions)) {
        const bool shared = std::all_of(place.pairs.begin(), place.pairs.end(), [&](const TapAnswer& tap) {
            return std::any_of(tap.cautions.begin(), tap.cautions.end(),
                               [&](const Caution& c) { return same(c, caution); });
        });
        if (!shared) continue;
        place.cautions.push_back(caution);
        for (auto& tap : place.pairs) std::erase_if(tap.cautions, [&](const Caution& c) { return same(c, caution); });
    }
}

void name_confusable(PlaceAnswer& place) {
    for (auto& tap : place.pairs) {
        std::set<std::string> lines;
        for (const auto& mine : tap.facts.pair.conductors)
            for (const auto& other : place.pairs) {
                if (other.facts.system != tap.facts.system || other.facts.tap.connector != tap.facts.tap.connector)
                    continue;
                for (const auto& theirs : other.facts.pair.conductors)
                    if (const auto why = easily_confused(mine, theirs))
                        lines.insert(fmt::format("{} and {}: {}", code(mine), code(theirs), word_of(*why)));
            }
        tap.confusable.assign(lines.begin(), lines.end());
    }
}

PlaceAnswer& place_called(std::vector<PlaceAnswer>& places, const TapPoint& tap) {
    const auto found =
        std::find_if(places.begin(), places.end(), [&](const PlaceAnswer& p) { return p.place == tap.place; });
    PlaceAnswer& place =
        found == places.end() ? places.emplace_back(PlaceAnswer{tap.place, {}, {}, {}, false, {}, {}, {}}) : *found;
    if (place.panels.empty()) place.panels = tap.panels;
    if (tap.minutes && (!place.minutes || *tap.minutes < *place.minutes)) place.minutes = tap.minutes;
    place.hazards_listed = place.hazards_listed || tap.hazards_listed;
    return place;
}

void add_whole_car_cautions(TapsAnswer& answer) {
    answer.cautions = cautions_of(answer.car.vehicle.hazards);
    for (const auto& words : answer.car.vehicle.cautions) answer.cautions.push_back({"this car", words});
    const auto& car = answer.car.vehicle;
    const auto has = [&](Hazard hazard) {
        return std::find(car.hazards.begin(), car.hazards.end(), hazard) != car.hazards.end();
    };
    if (car.high_voltage == true && !has(Hazard::high_voltage))
        answer.cautions.push_back(cautions_of({Hazard::high_voltage}).front());
    if (car.has_48v == true && !has(Hazard::circuit_48v))
        answer.cautions.push_back(cautions_of({Hazard::circuit_48v}).front());
    const std::string wait =
        car.airbag_wait_s
            ? fmt::format("wait {} s after battery negative is off ({})", *car.airbag_wait_s, car.airbag_wait_source)
            : std::string(
                  "waiting time not recorded: read the vehicle's own instructions; published guidance says air bags "
                  "may stay active up to 5 minutes");
    answer.cautions.push_back({"before any air-bag connector is opened", wait + "; no power until it is mated again."});
    answer.cautions.push_back(
        {"before you cut or join",
         "Meter the pair yourself; never tap air-bag, bus or antenna leads. The vehicle's own instructions, "
         "local codes and licensed practice come first."});
}

void add_unknowns(TapsAnswer& answer) {
    const auto& car = answer.car;
    if (car.systems.empty()) answer.unknown.push_back("which sound systems this car came with");
    for (const auto& system : car.systems)
        if (!system.premium.value)
            answer.unknown.push_back(
                fmt::format("whether {} has a separate amplifier: nobody has proved it", system.code));
    std::set<std::string> places_without_list;
    for (const auto& place : answer.places) {
        for (const auto& tap : place.pairs)
            if (tap.facts.pair.pair.grade == Grade::blank)
                answer.unknown.push_back(
                    fmt::format("the colours of {}: no note yet", path_tail(tap.facts.code, vehicle_depth)));
        if (!place.hazards_listed)
            answer.unknown.push_back(
                fmt::format("hazards on the way to {}: nobody has listed any, which does not mean none", place.place));
    }
    const bool has_power =
        std::any_of(answer.places.begin(), answer.places.end(), [](const PlaceAnswer& p) { return !p.power.empty(); });
    if (!has_power) answer.unknown.push_back("where switched power is");
}

}  // namespace

const Terminal* diagram_terminal(const TapFacts& facts) {
    const bool is_feed = facts.circuit.role == Role::switched_power || facts.circuit.role == Role::constant_power;
    return is_feed && facts.switched.live ? usual_terminal(*facts.switched.live) : nullptr;
}

TapsAnswer taps_answer(CarFacts car, std::string_view system, bool practice) {
    TapsAnswer answer;
    answer.practice = practice;
    for (const auto& tap : car.taps) {
        if (!system.empty() && tap.system != system) continue;
        PlaceAnswer& place = place_called(answer.places, tap.tap);
        if (carries_signal(tap.circuit.role))
            place.pairs.push_back({tap, predict_tap(car, tap, hertz(every_note_hz)), cautions_of(tap.tap.hazards), {}});
        else if (is_power(tap.circuit.role) && tap.circuit.role != Role::illumination)
            place.power.push_back(tap);
        else
            place.others.push_back(tap);
    }
    for (auto& place : answer.places) {
        name_confusable(place);
        lift_shared_cautions(place);
    }
    std::stable_sort(answer.places.begin(), answer.places.end(), [](const PlaceAnswer& a, const PlaceAnswer& b) {
        return std::tuple(a.minutes.value_or(9999), a.panels.size(), a.place) <
               std::tuple(b.minutes.value_or(9999), b.panels.size(), b.place);
    });
    for (const auto& tap : car.unrecorded)
        answer.unrecorded.push_back({tap, predict_tap(car, tap, hertz(every_note_hz)), {}, {}});
    if (!system.empty()) std::erase_if(car.systems, [&](const SystemFacts& s) { return s.code != system; });
    answer.car = std::move(car);
    add_whole_car_cautions(answer);
    add_unknowns(answer);
    return answer;
}

}  // namespace tapbook
