// The advice as JSON: the fixed shape `advise`.
#include "report/report.h"

namespace tapbook {
namespace {

void write_finding(Json& json, const Finding& finding) {
    json.begin_object()
        .member("rule", finding.rule)
        .member("effect", word_of(finding.effect))
        .key("settled")
        .flag(finding.settled);
    json.member("says", finding.says).member("basis", finding.basis).member("unknown", finding.unknown_columns);
    json.key("compared").begin_list();
    for (const auto& compared : finding.compared)
        json.begin_object().member("column", compared.column).member("value", compared.value).end_object();
    json.end_list().end_object();
}

void write_findings(Json& json, const std::vector<Finding>& findings) {
    json.key("findings").begin_list();
    for (const auto& finding : findings) write_finding(json, finding);
    json.end_list();
}

void write_range(Json& json, std::string_view name, const VoltageRange& range) {
    json.key(name)
        .begin_object()
        .member_in("low", range.low, rms_volts)
        .member_in("likely", range.likely, rms_volts)
        .member_in("high", range.high, rms_volts)
        .end_object();
}

void write_signal(Json& json, const TapSignal& signal) {
    json.key("signal").begin_object();
    write_range(json, "clean_rms_v", signal.clean);
    write_range(json, "clipped_rms_v", signal.clipped);
    json.key("dc_each_v")
        .begin_object()
        .member_in("low", signal.dc_each.low, dc_volts)
        .member_in("likely", signal.dc_each.likely, dc_volts)
        .member_in("high", signal.dc_each.high, dc_volts)
        .end_object();
    json.key("minus_is_driven").flag(signal.minus_is_driven).member("source", word_of(signal.source)).end_object();
}

void write_tap(Json& json, const JudgedTap& tap) {
    const auto& pair = tap.tap.pair;
    const auto code_of = [](const std::optional<WireColour>& colour) {
        return colour ? std::optional(code(*colour)) : std::nullopt;
    };
    json.key("tap")
        .begin_object()
        .member("code", tap.tap.code)
        .member("system", tap.tap.system)
        .member("role", word_of(tap.tap.circuit.role));
    json.member("position", tap.tap.circuit.position ? std::optional(std::string(word_of(*tap.tap.circuit.position)))
                                                     : std::nullopt)
        .member("place", tap.tap.tap.place);
    json.member("positive", code_of(pair.positive))
        .member("negative", code_of(pair.negative))
        .member("pair_grade", word_of(pair.pair.grade));
    json.member("polarity_grade", word_of(pair.polarity.grade));
    write_findings(json, tap.findings);
    json.end_object();
}

void write_candidate(Json& json, const JudgedCandidate& candidate) {
    json.begin_object()
        .member("converter", candidate.converter)
        .member("maker", candidate.maker)
        .member("name", candidate.name);
    json.member("topology", word_of(candidate.topology)).member("verdict", word_of(candidate.verdict));
    json.member_in("headroom_db", candidate.headroom, decibels)
        .member_in("drive_margin_db", candidate.drive_margin, decibels);
    json.member_in("limit_at_lowest_v", candidate.limit_at_lowest, rms_volts)
        .member_in("output_open_rms_v", candidate.output_open, rms_volts);
    json.member_in("output_rms_v", candidate.output, rms_volts)
        .member_in("shortfall_db", candidate.shortfall, decibels)
        .member_in("reachable_w", candidate.reachable, watts);
    json.member("on_hand", candidate.on_hand);
    write_findings(json, candidate.findings);
    json.end_object();
}

}  // namespace

std::string advice_json(const Advice& advice) {
    Json json;
    json.begin_object().key("vehicle");
    write_vehicle(json, advice.vehicle);
    json.key("system");
    write_system(json, advice.system);
    write_tap(json, advice.tap);
    write_signal(json, advice.tap.signal);
    json.member_number("lowest_hz", advice.lowest.in(hertz)).key("channels_wanted").whole(advice.channels_wanted);
    json.member("amplifier", advice.amplifier ? std::optional(advice.amplifier->path) : std::nullopt)
        .key("candidates")
        .begin_list();
    for (const auto& candidate : advice.candidates) write_candidate(json, candidate);
    json.end_list().member("best", advice.best).key("other_taps").begin_list();
    for (const auto& other : advice.other_taps) json.text(other.tap.code);
    json.end_list().member("rules_off", advice.rules_off).key("practice").flag(advice.practice).end_object();
    return json_answer("advise", json.take());
}

}  // namespace tapbook
