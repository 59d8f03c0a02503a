// A feed as JSON, tapbook.feed/1. Ranges are by the ohms of the return: low, likely, high.
#include "report/feed_report.h"
#include "report/json.h"

namespace tapbook {
namespace {

template <class Get, class Unit>
void write_range(Json& json, std::string_view name, const FedRange& at, Get get, Unit unit) {
    const auto of = [&](const std::optional<FedAt>& one) { return one ? std::optional(((*one).*get)) : std::nullopt; };
    json.key(name).begin_object();
    json.member_in("low", of(at.low), unit)
        .member_in("likely", of(at.likely), unit)
        .member_in("high", of(at.high), unit)
        .end_object();
}

void write_cable(Json& json, const FeedCable& cable, Metal metal) {
    const CableResistance resistance = cable_resistance(cable.size, metal);
    const auto* marked = std::get_if<SaeSize>(&cable.size);
    json.begin_object()
        .member("size", size_words(cable.size))
        .member("system", word_of(system_of(cable.size)))
        .member_number("area_mm2", cross_section(cable.size).in(square_millimetres))
        .member_number("ohm_per_m", resistance.per_metre.in(ohms_per_metre), 7)
        .key("computed")
        .flag(resistance.computed)
        .key("confirmed")
        .flag(marked == nullptr || !marked->from_memory)
        .member_number("metres", cable.length.in(metres))
        .end_object();
}

void write_fuse(Json& json, std::string_view name, const std::optional<JudgedFuse>& judged) {
    json.key(name);
    if (!judged || !judged->fuse) {
        json.null();
        return;
    }
    const CableFuse& fuse = *judged->fuse;
    json.begin_object()
        .member("verdict", word_of(fuse.verdict))
        .member_in("fuse_a", fuse.rating, amps)
        .member_number("load_a", fuse.current.in(amps))
        .member_number("ampacity_a", fuse.cable.allowed.in(amps))
        .member("thicker_awg", fuse.thicker_size ? std::optional(awg_text(*fuse.thicker_size)) : std::nullopt);
    json.member("insulation_c", word_of(fuse.cable.column))
        .member("place", word_of(fuse.cable.place))
        .member("counted_as_awg", awg_text(fuse.cable.row));
    json.key("insulation_assumed")
        .flag(fuse.cable.insulation_assumed)
        .key("may_blow")
        .flag(judged->may_blow)
        .end_object();
}

void write_amplifier(Json& json, const FeedReport& report, std::size_t index) {
    const AskedAmplifier& asked = report.asked[index];
    const FedAmplifier& fed = report.feed.amplifiers[index];
    const FedResult& result = report.answer.amplifiers[index];
    const bool constant = std::holds_alternative<Amps>(fed.draw);
    json.begin_object()
        .member_in("output_w", asked.output, watts)
        .member("class",
                asked.amplifier_class ? std::optional(std::string(word_of(*asked.amplifier_class))) : std::nullopt)
        .member_in("efficiency", asked.efficiency, ratio)
        .member("draws", constant ? "current" : "power");
    json.member("grade", word_of(result.grade));
    write_range(json, "at_amplifier_v", result.at, &FedAt::volts, dc_volts);
    write_range(json, "current_a", result.at, &FedAt::current, amps);
    write_range(json, "drop_percent", result.at, &FedAt::drop, percent);
    json.key("branch");
    if (fed.branch)
        write_cable(json, *fed.branch, report.feed.conditions.metal);
    else
        json.null();
    write_fuse(json, "branch_fuse", result.branch);
    json.end_object();
}

void write_return(Json& json, const FeedReturn& back) {
    const auto* body = std::get_if<BodyReturn>(&back);
    json.key("return").begin_object().member("through", body ? "body" : "cable");
    const auto of = [&](Ohms BodyReturn::*which) { return body ? std::optional(body->*which) : std::nullopt; };
    json.member_in("low_ohm", of(&BodyReturn::low), ohms, 6)
        .member_in("likely_ohm", of(&BodyReturn::likely), ohms, 6)
        .member_in("high_ohm", of(&BodyReturn::high), ohms, 6)
        .end_object();
}

void write_next(Json& json, const std::optional<NextSize>& next) {
    json.key("next_size");
    if (!next) {
        json.null();
        return;
    }
    json.begin_object()
        .member("size", size_words(next->size))
        .member("grade", word_of(next->grade))
        .member_in("drop_percent", next->drop, percent)
        .member_in("saved_percent", next->saved, percent)
        .end_object();
}

void write_charging(Json& json, const FeedReport& report) {
    const auto& average = report.average;
    json.member_in("average_a", average ? std::optional(average->current) : std::nullopt, amps)
        .member_in("music_share", average ? std::optional(average->share) : std::nullopt, ratio)
        .key("charging");
    if (!report.spare) {
        json.null();
        return;
    }
    const SpareCharging& spare = *report.spare;
    json.begin_object()
        .member("kind", word_of(spare.kind))
        .member_number("rating_a", spare.rating.in(amps))
        .member_number("low_a", spare.reserve.low.in(amps))
        .member_number("likely_a", spare.reserve.likely.in(amps))
        .member_number("high_a", spare.reserve.high.in(amps))
        .member("verdict", spare.verdict ? std::optional(std::string(word_of(*spare.verdict))) : std::nullopt)
        .end_object();
}

void write_capacitor(Json& json, const std::optional<CapacitorBeside>& beside) {
    json.key("capacitor");
    if (!beside) {
        json.null();
        return;
    }
    json.begin_object()
        .member_number("farads", beside->capacitance.in(farads), 6)
        .member_number("hold_ms", beside->hold_up.time.in(milliseconds))
        .member_number("note_s", beside->hold_up.note.in(seconds))
        .end_object();
}

}  // namespace

std::string feed_json(const FeedReport& report) {
    const Feed& feed = report.feed;
    Json json;
    json.begin_object().member("grade", word_of(report.answer.grade)).key("fused").flag(report.answer.fused);
    json.member_number("supply_v", feed.supply.in(dc_volts))
        .member_number("source_ohm", feed.source.in(ohms), 6)
        .member("metal", word_of(feed.conditions.metal))
        .member("size_origin", word_of(report.origin))
        .key("main");
    write_cable(json, feed.main, feed.conditions.metal);
    write_return(json, feed.back);
    json.key("amplifiers").begin_list();
    for (std::size_t i = 0; i < report.asked.size(); ++i) write_amplifier(json, report, i);
    json.end_list().member_number("total_a", report.answer.total.in(amps));
    json.member_in("most_ohm", report.answer.most_resistance, ohms, 6);
    write_fuse(json, "main_fuse", report.answer.main_fuse);
    json.member_number("within_m", fuse_within_trade.in(metres))
        .member_number("within_published_m", fuse_within_published.in(metres));
    write_next(json, report.next);
    write_charging(json, report);
    write_capacitor(json, report.capacitor);
    json.key("never_ground_to").begin_list();
    for (const auto place : forbidden_grounds()) json.text(place);
    json.end_list().end_object();
    return json_answer("feed", json.take());
}

}  // namespace tapbook
