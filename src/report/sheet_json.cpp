// The sheet as JSON: the same facts, steps, boxes and lists; volts and minutes as numbers beside the words.
#include <fmt/format.h>

#include "report/job_report.h"
#include "report/sheet_chain.h"
#include "report/sheet_words.h"

namespace tapbook {
namespace {

std::optional<std::string> or_null(const std::string& text) {
    return text.empty() ? std::nullopt : std::optional(text);
}

void write_conductors(Json& json, const std::vector<SheetConductor>& conductors) {
    json.key("conductors").begin_list();
    for (const auto& one : conductors) {
        json.begin_object().member("sign", or_null(one.sign));
        json.member("colour", one.colour ? std::optional(code(*one.colour)) : std::nullopt);
        json.member("words", one.colour ? words(*one.colour) : one.instead);
        json.member("cavity", or_null(one.cavity)).member("mark", or_null(one.mark)).end_object();
    }
    json.end_list();
}

void write_facts(Json& json, const Sheet& sheet) {
    json.key("facts").begin_list();
    for (const auto& fact : sheet_facts(sheet)) {
        json.begin_object().member("label", fact.label).member("value", fact.value);
        json.member("verdict", fact.verdict ? std::optional(std::string(word_of(*fact.verdict))) : std::nullopt);
        write_conductors(json, fact.conductors);
        json.member("rests_on", fact.rests_on).end_object();
    }
    json.end_list();
}

void write_box(Json& json, const Sheet& sheet, std::string_view path, const ReadingBox& box) {
    json.member("at", place_in_job(path)).member("field", box.field).member("label", box.label);
    json.member("unit", or_null(box.unit)).member("read", or_null(read_before(sheet, path, box)));
}

void write_reading(Json& json, const Sheet& sheet, const PredictedReading& reading) {
    const auto volts = [](std::optional<std::int64_t> millivolts) {
        return millivolts ? std::optional(static_cast<double>(*millivolts) / 1000) : std::nullopt;
    };
    json.begin_object();
    write_box(json, sheet, read_at(sheet, reading), box_of(reading));
    json.member("what", reading.what).key("expected_v").begin_object();
    json.member_number("low", volts(reading.range.low)).member_number("likely", volts(reading.range.likely));
    json.member_number("high", volts(reading.range.high)).end_object().member("why", reading.why).end_object();
}

void write_caution(Json& json, std::string_view title, std::string_view text) {
    json.begin_object().member("title", title).member("text", text).end_object();
}

void write_steps(Json& json, const Sheet& sheet) {
    json.key("steps").begin_list();
    for (const auto& step : sheet.plan.steps) {
        json.begin_object().member("phase", word_of(step.phase)).member("what", step.what);
        json.key("cautions").begin_list();
        for (const auto& caution : step.cautions) write_caution(json, caution.title, caution.text);
        json.end_list().key("readings").begin_list();
        for (const auto& reading : step.readings) write_reading(json, sheet, reading);
        json.end_list().end_object();
    }
    json.end_list();
}

void write_circuits(Json& json, const Sheet& sheet) {
    json.key("circuits").begin_list();
    for (const auto& facts : sheet.circuits) {
        json.begin_object().member("code", facts.code).member("what", circuit_words(facts));
        json.member("where", place_words(facts));
        write_conductors(json, carries_signal(facts.circuit.role) ? conductors_of(facts.pair)
                               : is_power(facts.circuit.role)     ? conductor_of(facts.switched)
                                                                  : std::vector<SheetConductor>{});
        json.key("boxes").begin_list();
        for (const auto& box : boxes_of(sheet, facts)) {
            json.begin_object();
            write_box(json, sheet, facts.code, box);
            json.end_object();
        }
        json.end_list().member("rests_on", grade_lines(facts)).key("cautions").begin_list();
        for (const Hazard hazard : facts.tap.hazards)
            write_caution(json, hazard_text(hazard).title, hazard_text(hazard).caution);
        json.end_list().end_object();
    }
    json.end_list();
}

void write_levels(Json& json, const Sheet& sheet) {
    json.key("levels").begin_list();
    for (const auto& stage : chain_stages(sheet.plan.install))
        json.begin_object()
            .member("stage", stage.name)
            .member_in("low_v", stage.volts.low, rms_volts)
            .member_in("likely_v", stage.volts.likely, rms_volts)
            .member_in("high_v", stage.volts.high, rms_volts)
            .member_in("limit_v", stage.limit, rms_volts)
            .member_in("left_db", stage.left, decibels)
            .member("remark", or_null(stage.remark))
            .key("clips_first")
            .flag(stage.clips_first)
            .end_object();
    json.end_list().member("clips", or_null(clip_words(sheet.plan.install)));
}

void write_end(Json& json, const Sheet& sheet) {
    json.key("recommendations").begin_list();
    for (const auto& one : recommendations(sheet))
        json.begin_object()
            .member("effect", word_of(one.effect))
            .member("about", one.about)
            .member("rule", one.rule)
            .member("says", one.says)
            .end_object();
    json.end_list().key("earlier_jobs").begin_list();
    for (const auto& job : sheet.earlier)
        json.begin_object()
            .member("number", std::optional(job.number))
            .member("closed", job.closed)
            .member("planned_minutes", job.planned_minutes)
            .member("taken_minutes", job.taken_minutes)
            .end_object();
    json.end_list().key("ledger").begin_object().member("notes", std::optional(sheet.ledger.notes));
    json.member("newest", or_null(sheet.ledger.newest)).member("catalog", sheet.ledger.catalog).end_object();
}

}  // namespace

std::string sheet_json(const Sheet& sheet) {
    const JobPlanAnswer& plan = sheet.plan;
    Json json;
    json.begin_object().member("car", car_words(sheet)).member("vehicle", plan.vehicle.path);
    json.member("system", or_null(plan.job.system)).member("shop", sheet.shop).member("date", sheet.date);
    json.key("practice").flag(plan.practice).member("link", or_null(sheet_link(sheet))).key("job");
    if (plan.job.number == 0)
        json.null();
    else
        write_job(json, plan.job);
    write_facts(json, sheet);
    write_steps(json, sheet);
    write_circuits(json, sheet);
    write_levels(json, sheet);
    json.member("minutes_to_tap", plan.plan.minutes);
    write_end(json, sheet);
    json.end_object();
    return json_answer("sheet", json.take());
}

}  // namespace tapbook
