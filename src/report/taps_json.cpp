// The tap points of a car as JSON: the fixed shape `taps`.
#include "report/json.h"
#include "report/report.h"

namespace tapbook {
namespace {

void write_claims(Json& json, const std::vector<ColourClaim>& claims) {
    json.key("claims").begin_list();
    for (const auto& claim : claims)
        json.begin_object()
            .member("colour", code(claim.colour))
            .member("grade", word_of(claim.grade))
            .member("first_year", claim.first_year)
            .member("last_year", claim.last_year)
            .member("notes", std::optional(claim.notes))
            .end_object();
    json.end_list();
}

void write_conductor(Json& json, std::string_view name, const std::optional<WireColour>& colour, const Standing& cavity,
                     const PairStanding& pair, const std::vector<ColourClaim>& claims) {
    json.key(name).begin_object();
    json.member("colour", colour ? std::optional(code(*colour)) : std::nullopt)
        .member("words", colour ? std::optional(words(*colour)) : std::nullopt);
    json.member("cavity", cavity.value).member("grade", word_of(pair.pair.grade));
    write_claims(json, claims);
    json.end_object();
}

void write_range(Json& json, const VoltageRange& range) {
    json.begin_object()
        .member_in("low", range.low, rms_volts)
        .member_in("likely", range.likely, rms_volts)
        .member_in("high", range.high, rms_volts)
        .end_object();
}

template <class Enum>
std::optional<std::string> word_or_null(const std::optional<Enum>& value) {
    return value ? std::optional(std::string(word_of(*value))) : std::nullopt;
}

std::vector<std::string> hazard_words(const TapPoint& tap) {
    std::vector<std::string> list;
    for (const Hazard hazard : tap.hazards) list.emplace_back(word_of(hazard));
    return list;
}

void write_tap(Json& json, const TapAnswer& tap) {
    const auto& facts = tap.facts;
    json.begin_object()
        .member("code", facts.code)
        .member("system", facts.system)
        .member("role", word_of(facts.circuit.role));
    if (!facts.also.empty()) json.member("also", facts.also);
    json.member("position", word_or_null(facts.circuit.position)).member("place", facts.tap.place);
    json.member("connector", facts.tap.connector.empty() ? std::nullopt : std::optional(facts.tap.connector))
        .member("side", word_or_null(facts.tap.side));
    json.member("drive",
                facts.pair.drive.value ? *facts.pair.drive.value : std::string(word_of(facts.circuit.output.drive)));
    json.member("drive_grade", word_of(facts.pair.drive.grade));
    write_conductor(json, "positive", facts.pair.positive, facts.pair.positive_cavity, facts.pair,
                    facts.pair.positive_claims);
    write_conductor(json, "negative", facts.pair.negative, facts.pair.negative_cavity, facts.pair,
                    facts.pair.negative_claims);
    json.key("pair").begin_object().member("grade", word_of(facts.pair.pair.grade)).key("conductors").begin_list();
    for (const auto& colour : facts.pair.conductors) json.text(code(colour));
    json.end_list().member("altered", std::optional(facts.pair.altered)).end_object();
    json.member("polarity_grade", word_of(facts.pair.polarity.grade))
        .member("notes", std::optional(facts.pair.notes + facts.switched.notes));
    json.key("signal").begin_object().key("clean_rms_v");
    write_range(json, tap.signal.clean);
    json.member("source", word_of(tap.signal.source)).end_object();
    json.member("panels", facts.tap.panels).member("minutes", facts.tap.minutes).key("hazards");
    facts.tap.hazards_listed || !facts.tap.hazards.empty() ? (
                                                                 json.begin_list(),
                                                                 [&] {
                                                                     for (const auto& word : hazard_words(facts.tap))
                                                                         json.text(word);
                                                                 }(),
                                                                 json.end_list())
                                                           : json.null();
    json.member("confusable", tap.confusable).end_object();
}

void write_power(Json& json, const TapFacts& facts) {
    json.begin_object()
        .member("code", facts.code)
        .member("system", facts.system)
        .member("role", word_of(facts.circuit.role))
        .member("place", facts.tap.place);
    if (!facts.also.empty()) json.member("also", facts.also);
    const auto& wire = facts.switched.colour;
    json.member("wire", wire ? std::optional(code(*wire)) : std::nullopt);
    json.member("class", facts.switched.circuit.value).member("grade", word_of(facts.switched.circuit.grade));
    json.key("usual_terminal");
    if (const Terminal* terminal = diagram_terminal(facts))
        json.begin_object().member("number", terminal->number).member("meaning", terminal->meaning).end_object();
    else
        json.null();
    json.member_in("fuse_a", facts.circuit.fuse, amps)
        .member("panels", facts.tap.panels)
        .member("minutes", facts.tap.minutes);
    json.member("hazards", hazard_words(facts.tap)).end_object();
}

}  // namespace

void write_vehicle(Json& json, const VehicleName& car, const TextList& also) {
    json.begin_object().member("code", car.path).member("make", car.make).member("model", car.model);
    json.member("body", car.body).member("first_year", std::optional(car.first_year));
    json.member("last_year", std::optional(car.last_year));
    if (!also.empty()) json.member("also", also);
    json.end_object();
}

void write_vehicle(Json& json, const Vehicle& car, const TextList& also) {
    write_vehicle(json, VehicleName{car.path, car.make, car.model, car.body, car.first_year, car.last_year}, also);
}

void write_system(Json& json, const SystemFacts& system) {
    std::optional<bool> premium;
    if (system.premium.value) premium = *system.premium.value == "true";
    json.begin_object().member("name", system.code).member("title", system.entry.name).member("premium", premium);
    json.member("premium_grade", word_of(system.premium.grade)).member("tells", system.entry.tells).end_object();
}

std::string taps_json(const TapsAnswer& answer) {
    Json json;
    json.begin_object().key("vehicle");
    write_vehicle(json, answer.car.vehicle, answer.car.also);
    json.key("systems").begin_list();
    for (const auto& system : answer.car.systems) write_system(json, system);
    json.end_list().key("taps").begin_list();
    for (const auto& place : answer.places)
        for (const auto& tap : place.pairs) write_tap(json, tap);
    json.end_list().key("unrecorded").begin_list();
    for (const auto& tap : answer.unrecorded) write_tap(json, tap);
    json.end_list().key("unrecorded_system");
    answer.car.unrecorded_system ? write_system(json, *answer.car.unrecorded_system) : static_cast<void>(json.null());
    json.key("switched").begin_list();
    for (const auto& place : answer.places)
        for (const auto& power : place.power) write_power(json, power);
    json.end_list().key("cautions").begin_list();
    for (const auto& caution : answer.cautions) json.text(caution.title + ": " + caution.text);
    json.end_list().member("unknown", answer.unknown).key("practice").flag(answer.practice).end_object();
    return json_answer("taps", json.take());
}

}  // namespace tapbook
