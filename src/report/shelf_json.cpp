// The plan of the shelf as JSON, tapbook.shelf/1. Shares are of all jobs, 0 to 1; money in units of the stock file.
#include "report/json.h"
#include "report/shelf_report.h"

namespace tapbook {
namespace {

void write_money(Json& json, std::string_view name, std::int64_t cents) {
    json.member_number(name, static_cast<double>(cents) / 100, 2);
}

void write_systems(Json& json, std::string_view name, const ShelfAnswer& answer,
                   const std::vector<LostSystem>& systems) {
    json.key(name).begin_list();
    for (const LostSystem& one : systems)
        json.begin_object()
            .member("system", answer.input.systems[one.system].id)
            .member_number("jobs_per_year", one.jobs_per_year)
            .end_object();
    json.end_list();
}

void write_names(Json& json, std::string_view name, const ShelfAnswer& answer,
                 const std::vector<std::size_t>& converters) {
    json.key(name).begin_list();
    for (const std::size_t one : converters) json.text(answer.input.converters[one].name);
    json.end_list();
}

void write_models(Json& json, const ShelfPlan& plan) {
    json.key("models").begin_list();
    for (const KeptModel& model : plan.models) {
        json.begin_object().member("converter", model.name).member_number("covers_share", model.covers_share);
        json.key("keep").whole(model.keep).key("on_hand").whole(model.on_hand);
        json.key("on_order").whole(model.on_order).key("order").whole(model.order);
        json.key("order_wanted").whole(model.order_wanted).key("lead_days").whole(model.lead_days);
        write_money(json, "order_cost", model.order_cents);
        json.member_number("jobs_per_year", model.jobs_per_year)
            .member_number("fill_rate", model.fill_rate)
            .end_object();
    }
    json.end_list();
}

void write_small_parts(Json& json, const ShelfPlan& plan) {
    json.key("small_parts").begin_list();
    for (const Reorder& part : plan.small_parts) {
        json.begin_object().member("part", part.name).member("name", part.label);
        json.member("unit", part.unit.empty() ? std::string_view("piece") : std::string_view(part.unit));
        json.key("on_hand").whole(part.on_hand).key("on_order").whole(part.on_order).key("pack").whole(part.pack);
        json.key("lead_days").whole(part.lead_days).member("use_known_by", word_of(part.known_by));
        json.member_number("used_per_year", part.per_year).key("reorder_at").whole(part.reorder_at);
        json.key("order").whole(part.order);
        json.member_number(
            "order_cost", part.order_cents ? std::optional(static_cast<double>(*part.order_cents) / 100) : std::nullopt,
            2);
        json.member_number("fill_rate", part.fill_rate).end_object();
    }
    json.end_list();
    write_money(json, "small_order_cost", plan.small_order_cents);
}

// Null for a run too short to ask.
void write_seconds(Json& json, const ShelfSources& from) {
    json.key("seconds");
    if (all_seconds(from) < worth_telling_seconds) {
        json.null();
        return;
    }
    json.begin_object().member_number("reading", from.read_seconds, 3);
    json.member_number("rules", from.rules_seconds, 3).member_number("planning", from.plan_seconds, 3).end_object();
}

void write_lost(Json& json, const ShelfAnswer& answer) {
    json.key("lost").begin_list();
    for (const LostModel& lost : answer.plan.lost) {
        json.begin_object().member("converter", lost.name).member_number("share", lost.share);
        json.member_number("jobs_per_year", lost.jobs_per_year);
        write_systems(json, "systems", answer, lost.systems);
        json.end_object();
    }
    json.end_list();
}

void write_curve(Json& json, const ShelfAnswer& answer) {
    json.key("curve").begin_list();
    for (const CurvePoint& point : answer.plan.curve) {
        json.begin_object().key("models").whole(point.models).member_number("covered_share", point.covered_share);
        json.member_number("bound_share", point.bound_share).key("proved").flag(point.proved);
        write_names(json, "converters", answer, point.converters);
        json.end_object();
    }
    json.end_list();
}

void write_demand(Json& json, const ShelfAnswer& answer) {
    const ShelfPlan& plan = answer.plan;
    json.key("jobs_per_year").begin_object().member_number("low", plan.jobs_per_year.low);
    json.member_number("likely", plan.jobs_per_year.mean).member_number("high", plan.jobs_per_year.high).end_object();
    json.key("lost_jobs_per_year").begin_object().member_number("shelf_empty_low", plan.lost_jobs.low);
    json.member_number("shelf_empty", plan.lost_jobs.mean).member_number("shelf_empty_high", plan.lost_jobs.high);
    json.member_number("no_model", plan.lost_jobs.without_model).key("years").whole(plan.lost_jobs.years).end_object();
    json.key("cold_start").flag(plan.cold_start);
    const ShelfSources& from = answer.sources;
    json.key("sources").begin_object().key("jobs").whole(from.jobs).key("jobs_direct").whole(from.jobs_direct);
    json.key("jobs_left_out").whole(from.jobs_left_out).key("forecasts").whole(from.forecasts);
    json.member("amplifier", from.amplifier.empty() ? std::nullopt : std::optional(from.amplifier));
    json.key("systems_with_notes").whole(from.systems_with_notes);
    json.key("systems_by_entries").whole(from.systems_by_entries);
    json.key("systems_without_tap").whole(from.systems_without_tap);
    json.key("taps").whole(from.taps).key("kinds").whole(from.kinds).end_object();
    json.member("without_cost", plan.without_cost);
    json.member("other_search",
                plan.other_search ? std::optional(std::string(word_of(*plan.other_search))) : std::nullopt);
}

void write_explained(Json& json, const ShelfAnswer& answer) {
    json.key("explained");
    if (!answer.explained) {
        json.null();
        return;
    }
    const ModelExplained& model = *answer.explained;
    json.begin_object().member("converter", model.name).member("place", word_of(model.place));
    json.member_number("covers_share", model.covers_share).member_number("only_share", model.only_share);
    json.member_number("adds_share", model.adds_share).member_number("forced_share", model.forced_share);
    json.member("beaten_by",
                model.beaten_by ? std::optional(answer.input.converters[*model.beaten_by].name) : std::nullopt);
    write_names(json, "instead", answer, model.instead);
    json.member("joins_at", model.joins_at);
    write_systems(json, "systems", answer, model.systems);
    json.end_object();
}

void write_change(Json& json, const ShelfAnswer& answer) {
    json.key("what_if");
    if (!answer.change) {
        json.null();
        return;
    }
    const PlanChange& change = *answer.change;
    json.begin_object().member_number("covered_share", change.after.covered_share).member_number("share", change.share);
    write_money(json, "order_cost", change.order_cents);
    json.key("models").begin_list();
    for (const ModelChange& model : change.models) {
        json.begin_object().member("converter", model.name).key("keep_before").whole(model.keep_before);
        json.key("keep_after").whole(model.keep_after).key("order_before").whole(model.order_before);
        json.key("order_after").whole(model.order_after).end_object();
    }
    json.end_list();
    write_systems(json, "lost", answer, change.lost);
    write_systems(json, "gained", answer, change.gained);
    json.end_object();
}

}  // namespace

std::string shelf_json(const ShelfAnswer& answer) {
    const ShelfPlan& plan = answer.plan;
    Json json;
    json.begin_object().member("state", word_of(plan.state));
    write_models(json, plan);
    json.member_number("covered_share", plan.covered_share).key("proved").flag(plan.proved);
    json.member_number("gap", plan.gap).member("reached", plan.reached);
    json.member_number("care_share", plan.care_share).member_number("no_converter_share", plan.no_converter_share);
    write_money(json, "order_cost", plan.order_cents);
    write_small_parts(json, plan);
    write_lost(json, answer);
    write_curve(json, answer);
    write_demand(json, answer);
    write_explained(json, answer);
    write_change(json, answer);
    write_seconds(json, answer.sources);
    json.end_object();
    return json_answer("shelf", json.take());
}

}  // namespace tapbook
