// Sheets of invented cars, planned by the program's own rules: a plain one, one with many cautions, one whose pair is
// disputed and that needs no converter, a car without a job, and any number of further circuits.
#pragma once

#include <string>
#include <utility>
#include <vector>

#include "report/sheet.h"
#include "report_cars.h"

namespace tapbook::sheets {

inline RuleBook& shipped_book() {
    static RuleBook book = RuleBook::shipped();
    return book;
}

inline ShopJob open_job() {
    ShopJob job;
    job.number = 12;
    job.code = "K7MQ2X";
    job.started = "2026-05-02";
    job.vehicle = fixture::car_path;
    job.system = "base";
    job.year = 2016;
    job.customer = "T-118";
    job.initials = "mk";
    return job;
}

inline Sheet around(JobPlanAnswer plan) {
    Sheet sheet;
    sheet.plan = std::move(plan);
    sheet.ledger = {17, "2026-04-11", "shop catalog"};
    sheet.shop = "North Bay";
    sheet.date = "2026-05-02";
    sheet.address = "http://bench.local:8080";
    return sheet;
}

// What the rules make of it: best tap, best part. REQUIRES that something fits.
inline JobPlanAnswer planned(const JobFacts& facts, const ShopJob& job, const InstallAsk& ask,
                             const AdviseRequest& request = {}) {
    const Advice advice = advise(facts, request, shipped_book());
    const JudgedCandidate* part = planned_part(advice, "");
    return plan_answer(job, facts, advice, part != nullptr ? *part : advice.candidates.front(), ask, {},
                       shipped_book());
}

inline InstallAsk measured_ask() {
    InstallAsk ask;
    ask.length = metres(5.2);
    ask.conditions = {Metal::copper, Insulation::rated_105, CablePlace::engine_space};
    ask.load = ohms(4);
    ask.load_words = "4";
    return ask;
}

// An amplifier whose feed, turn-on and gain can be judged.
inline Amplifier whole_amplifier() {
    Amplifier amplifier = fixture::small_amplifier();
    amplifier.spec.amplifier_class = AmplifierClass::d;
    amplifier.spec.turn_on_current = milliamps(10);
    amplifier.spec.idle_current = amps(0.8);
    amplifier.spec.standby_current = milliamps(2);
    amplifier.spec.least_load = ohms(2);
    amplifier.spec.least_supply = dc_volts(10);
    return amplifier;
}

// The same pair at other cavities: no two circuits of a connector share one.
inline PairStanding at_cavities(PairStanding pair, const std::string& positive, const std::string& negative) {
    pair.positive_cavity.value = positive;
    pair.negative_cavity.value = negative;
    return pair;
}

inline JobFacts plain_facts() {
    JobFacts facts = cars::plain_car();
    facts.car.year = 2016;
    facts.car.vehicle.battery_place = "engine space, left";
    facts.car.vehicle.battery_capacity = amp_hours(60);
    facts.car.vehicle.hazards_listed = true;
    facts.car.taps[1].pair = at_cavities(facts.car.taps[1].pair, "5", "6");
    facts.amplifier = whole_amplifier();
    return facts;
}

// Everything settled; a little was read already, and both lists are filled.
inline Sheet plain() {
    ShopJob job = open_job();
    job.agreed = "hb";
    job.came = {{CheckItem::lamps, CheckAnswer::ok, ""},
                {CheckItem::speakers, CheckAnswer::bad, "left rear silent"},
                {CheckItem::radio, CheckAnswer::ok, ""},
                {CheckItem::camera, CheckAnswer::none, ""}};
    job.left = {{CheckItem::lamps, CheckAnswer::ok, ""}, {CheckItem::speakers, CheckAnswer::ok, ""}};
    job.actions = {{1, "radio in service mode", "2026-05-02", ""}};
    JobVisit visit;
    visit.path = fixture::car_path + "/base/front-left/radio";
    visit.readings = {{"supply_mv", std::int64_t(12640)}, {"dc_positive_mv", std::int64_t(6300)}};
    job.visits = {visit};
    Sheet sheet = around(planned(plain_facts(), job, measured_ask()));
    sheet.circuits = {plain_facts().car.taps[1], cars::power_tap()};
    sheet.earlier = {{7, "2025-11-20", 20, 195}, {3, "2024-03-02", 25, std::nullopt}};
    return sheet;
}

// Hazards on the way and in the car, an unsettled turn-on, nothing measured, practice data.
inline Sheet cautious() {
    JobFacts facts = cars::disputed_car();
    facts.car.systems.resize(1);
    facts.amplifier = whole_amplifier();
    int cavity = 1;
    for (auto& tap : facts.car.taps) {
        tap.pair = at_cavities(cars::agreed("BN", "BN/YE"), std::to_string(cavity), std::to_string(cavity + 1));
        cavity += 2;
    }
    facts.car.vehicle.hazards = {Hazard::high_voltage, Hazard::battery_in_cabin, Hazard::pyrotechnic_disconnect,
                                 Hazard::drilling};
    facts.converters.front().part.spec.input_max_at = std::nullopt;
    AdviseRequest request;
    request.system = "base";
    Sheet sheet = around(planned(facts, open_job(), {}, request));
    sheet.ledger = {1, "2026-04-11", "practice catalog"};
    return sheet;
}

// Two shops name other conductors; the amplifier takes the pair itself.
inline Sheet disputed() {
    JobFacts facts = plain_facts();
    facts.converters.clear();
    facts.car.taps = {cars::tap("front-left", Position::front_left, cars::disputed())};
    SpeakerLevelInput input;
    input.input_min = rms_volts(0.5);
    input.input_max = rms_volts(15);
    input.reference = Reference::floating;
    input.negatives = Negatives::separate;
    input.dc_tolerance = dc_volts(10);
    input.makes_turn_on = true;
    facts.amplifier->spec.speaker_input = input;
    return around(planned(facts, open_job(), measured_ask()));
}

// What there is to read on a car that nobody has started a job on.
inline Sheet without_job() {
    Sheet sheet = around({});
    const JobFacts facts = cars::plain_car();
    sheet.plan.vehicle = facts.car.vehicle;
    sheet.plan.job.system = "base";
    sheet.plan.practice = true;
    sheet.circuits = facts.car.taps;
    sheet.ledger = {0, "", "practice catalog"};
    return sheet;
}

// The plain sheet with this many further circuits.
inline Sheet with_circuits(int count) {
    Sheet sheet = plain();
    sheet.circuits.clear();
    for (int i = 0; i < count; ++i) {
        const auto position = words_of<Position>()[static_cast<std::size_t>(i) % words_of<Position>().size()].value;
        TapFacts tap = cars::tap("circuit-" + std::to_string(i + 1), position,
                                 i % 4 == 3 ? cars::disputed() : cars::agreed(i % 2 == 0 ? "GN" : "LBU/RD", "BN/YE"));
        sheet.circuits.push_back(i % 5 == 4 ? cars::power_tap() : tap);
    }
    return sheet;
}

}  // namespace tapbook::sheets
