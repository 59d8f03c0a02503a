// Jobs as JSON. Readings are given by the names and in the units people write; the car's token stays inside.
#include <fmt/format.h>

#include "report/job_report.h"

namespace tapbook {
namespace {

std::optional<std::string> or_null(const std::string& text) {
    return text.empty() ? std::nullopt : std::optional(text);
}

void write_list(Json& json, std::string_view name, const std::vector<CheckEntry>& list) {
    json.key(name).begin_list();
    for (const auto& entry : list)
        json.begin_object()
            .member("item", word_of(entry.item))
            .member("answer", word_of(entry.answer))
            .member("words", entry.words)
            .end_object();
    json.end_list();
}

void write_value(Json& json, const Field& field, const Value& value) {
    json.key(field.name);
    if (const auto* number = std::get_if<std::int64_t>(&value)) {
        double divisor = 1;
        for (int i = 0; i < field.digits; ++i) divisor *= 10;
        json.number(static_cast<double>(*number) / divisor);
    } else if (const auto* flag = std::get_if<bool>(&value)) {
        json.flag(*flag);
    } else if (const auto* text = std::get_if<std::string>(&value)) {
        json.text(*text);
    } else {
        json.begin_list();
        for (const auto& item : std::get<TextList>(value)) json.text(item);
        json.end_list();
    }
}

void write_visits(Json& json, const ShopJob& job) {
    json.key("read").begin_list();
    for (const auto& visit : job.visits) {
        json.begin_object().member("code", visit.path).member("kind", word_of(visit.kind)).member("date", visit.date);
        json.member("note", visit.note ? std::optional(to_hex(*visit.note)) : std::nullopt);
        write_readings(json, visit.readings);
        json.end_object();
    }
    json.end_list();
}

void write_actions(Json& json, const ShopJob& job) {
    json.key("actions").begin_list();
    for (const auto& action : job.actions)
        json.begin_object()
            .member("number", std::optional(action.number))
            .member("words", action.words)
            .member("opened", action.opened)
            .member("closed", or_null(action.closed))
            .end_object();
    json.end_list();
}

void write_plan(Json& json, const JobPlan& plan) {
    json.key("plan").begin_object().member("tap", or_null(plan.tap)).member("converter", or_null(plan.converter));
    json.member("amplifier", or_null(plan.amplifier));
    json.member_number("lowest_hz",
                       plan.lowest_mhz ? std::optional(static_cast<double>(*plan.lowest_mhz) / 1000) : std::nullopt);
    json.member("minutes", plan.minutes).member("turn_on", or_null(plan.turn_on));
    json.member_number("feed_m",
                       plan.feed_mm ? std::optional(static_cast<double>(*plan.feed_mm) / 1000) : std::nullopt);
    json.member("feed_size", or_null(plan.feed_size)).member("load", or_null(plan.load));
    json.key("bridged").flag(plan.bridged).end_object();
}

}  // namespace

void write_readings(Json& json, const Values& readings) {
    json.key("readings").begin_object();
    for (const auto& row : note_fields())
        if (const auto found = readings.find(row.field.stored); found != readings.end())
            write_value(json, row.field, found->second);
    json.end_object();
}

void write_job(Json& json, const ShopJob& job) {
    json.begin_object().member("number", std::optional(job.number)).member("code", job.code);
    json.member("state", word_of(job.state)).member("started", job.started).member("closed", or_null(job.closed));
    json.member("vehicle", job.vehicle).member("year", job.year).member("system", job.system);
    json.member("customer", or_null(job.customer)).member("agreed", or_null(job.agreed));
    json.member("initials", or_null(job.initials)).key("car_told_apart").flag(!job.car.empty());
    write_plan(json, job.plan);
    json.member("taken_minutes", job.taken_minutes);
    json.member("outcome", job.outcome ? std::optional(std::string(word_of(*job.outcome))) : std::nullopt);
    json.member("remarks", or_null(job.remarks));
    write_list(json, "came", job.came);
    write_list(json, "left", job.left);
    json.key("differences").begin_list();
    for (const auto& difference : differences(job)) json.text(word_of(difference.item));
    json.end_list();
    write_visits(json, job);
    write_actions(json, job);
    json.end_object();
}

std::string job_json(const JobReport& report) {
    Json json;
    json.begin_object().key("job");
    write_job(json, report.job);
    json.key("written").flag(report.written).end_object();
    return json_answer("job", json.take());
}

std::string job_list_json(std::span<const ListedJob> list) {
    Json json;
    json.begin_object().key("jobs").begin_list();
    for (const auto& listed : list) write_job(json, listed.job);
    json.end_list().end_object();
    return json_answer("job.list", json.take());
}

}  // namespace tapbook
