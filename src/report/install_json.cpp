// The install of a plan as JSON: every way to wake the amplifier with its findings, the feed, the load, the gain, the
// standing time. Ohms, volts and amps as numbers, absent ones null.
#include "report/feed_report.h"
#include "report/job_report.h"

namespace tapbook {
namespace {

void write_findings(Json& json, const std::vector<Finding>& findings) {
    json.key("findings").begin_list();
    for (const auto& finding : findings)
        json.begin_object()
            .member("rule", finding.rule)
            .member("effect", word_of(finding.effect))
            .key("settled")
            .flag(finding.settled)
            .member("says", finding.says)
            .member("basis", finding.basis)
            .end_object();
    json.end_list();
}

void write_turn_on(Json& json, const JudgedTurnOn& one) {
    const TurnOnFacts& facts = one.facts;
    json.begin_object().member("source", facts.code).member("kind", word_of(facts.kind));
    json.member("verdict", word_of(one.verdict)).member_in("loads_a", facts.current.loads, amps);
    json.member_in("limit_a", std::optional(facts.current.limit), amps);
    json.key("limit_assumed").flag(facts.current.limit_assumed);
    write_findings(json, one.findings);
    json.end_object();
}

void write_feed(Json& json, const Install& install) {
    json.key("feed");
    if (!install.feed) {
        json.begin_object().member("missing", install.feed_missing).end_object();
        return;
    }
    const FeedReport& report = install.feed->report;
    const FeedAnswer& answer = report.answer;
    const auto& likely = answer.amplifiers.front().at.likely;
    const auto& fuse = answer.main_fuse.fuse;
    json.begin_object().member_in("length_m", std::optional(install.feed->length), metres);
    json.member("size", size_words(report.feed.main.size)).member("size_origin", word_of(report.origin));
    json.member("metal", word_of(report.feed.conditions.metal)).member("grade", word_of(answer.grade));
    json.member_in("current_a", std::optional(answer.total), amps);
    json.member_in("volts_v", likely ? std::optional(likely->volts) : std::nullopt, dc_volts);
    json.member_in("drop_percent", likely ? std::optional(likely->drop) : std::nullopt, percent);
    json.member_in("fuse_a", fuse ? fuse->rating : std::nullopt, amps);
    json.member_in("ampacity_a", fuse ? std::optional(fuse->cable.allowed) : std::nullopt, amps);
    write_findings(json, install.feed_findings);
    json.end_object();
}

void write_load(Json& json, const Install& install) {
    json.key("load");
    if (!install.load) {
        json.null();
        return;
    }
    const LoadFacts& facts = *install.load;
    json.begin_object()
        .member_in("load_ohm", std::optional(facts.load.load), ohms)
        .key("bridged")
        .flag(facts.load.bridged);
    json.member_in("least_ohm", facts.load.least, ohms).member_in("speaker_w", facts.speaker, watts);
    json.member_in("set_for_w", facts.set_for, watts);
    write_findings(json, install.load_findings);
    json.end_object();
}

}  // namespace

void write_install(Json& json, const Install& install) {
    const JudgedTurnOn* planned = planned_turn_on(install);
    json.begin_object().member("turn_on", planned ? std::optional(planned->facts.code) : std::nullopt);
    json.key("turn_ons").begin_list();
    for (const auto& one : install.turn_ons) write_turn_on(json, one);
    json.end_list();
    write_feed(json, install);
    write_load(json, install);
    json.member_in("gain_target_rms_v", install.gain_target, rms_volts)
        .member_in("gain_power_w", install.gain_power, watts);
    json.key("load_resistor");
    if (install.resistor)
        json.begin_object()
            .member_in("ohm", std::optional(install.resistor->resistance), ohms)
            .member_in("power_w", std::optional(install.resistor->power), watts)
            .end_object();
    else
        json.null();
    const auto& standing = install.plan.standing;
    constexpr double seconds_a_day = 24 * 60 * 60;
    const auto days = [&](Seconds time) { return time.in(seconds) / seconds_a_day; };
    json.member_number("days_before", standing ? std::optional(days(standing->before)) : std::nullopt);
    json.member_number("days_after", standing ? std::optional(days(standing->after)) : std::nullopt);
    write_findings(json, install.plan_findings);
    json.end_object();
}

}  // namespace tapbook
