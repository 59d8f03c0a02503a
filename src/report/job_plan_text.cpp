// The plan of a job: what was chosen, then the steps by power phase, each caution beside its step, each reading with
// its predicted range.
#include <fmt/format.h>

#include "report/job_report.h"
#include "report/sheet_words.h"

namespace tapbook {
namespace {

std::string option_of(std::string_view field) {
    std::string name(field.substr(0, field.size() - std::string_view("_v").size()));
    for (char& c : name)
        if (c == '_') c = '-';
    return "--" + name;
}

void print_fact(Paper& paper, const SheetFact& fact) {
    std::string value = fact.value;
    if (fact.verdict) value += fmt::format(" ({})", word_of(*fact.verdict));
    paper.line(2, fmt::format("{:<10}", fact.label), value);
    for (const auto& conductor : fact.conductors) paper.line(13, "", conductor_text(conductor));
    for (const auto& line : fact.rests_on) paper.line(13, "", line);
}

void print_step(Paper& paper, const PlanStep& step, int number) {
    paper.line(2, fmt::format("{:>2}. [ ]", number), step.what);
    for (const auto& reading : step.readings) {
        const std::string why = reading.why.empty() ? std::string() : fmt::format(" ({})", reading.why);
        paper.line(9, fmt::format("{:<14}", option_of(reading.field)), range_words(reading.range) + why,
                   Weight::strong);
        paper.line(24, "", reading.what);
    }
    for (const auto& caution : step.cautions) paper.caution(9, caution.title, caution.text);
}

void write_range(Json& json, const MillivoltRange& range) {
    const auto end = [](std::optional<std::int64_t> millivolts) {
        return millivolts ? std::optional(static_cast<double>(*millivolts) / 1000) : std::nullopt;
    };
    json.key("expected_v").begin_object().member_number("low", end(range.low));
    json.member_number("likely", end(range.likely)).member_number("high", end(range.high)).end_object();
}

}  // namespace

std::string job_plan_text(const JobPlanAnswer& answer, const Screen& screen) {
    Paper paper(screen);
    const ShopJob& job = answer.job;
    paper.heading(fmt::format("Plan of job {}  {}: {} {} {}{}, {}{}", job.number, job.code, answer.vehicle.make,
                              answer.vehicle.model, answer.vehicle.body,
                              job.year ? fmt::format(" {}", *job.year) : std::string(), job.system,
                              answer.practice ? "   [practice]" : ""));
    for (const auto& fact : sheet_facts({answer, {}, {}, {}, {}, {}, {}})) print_fact(paper, fact);
    for (const auto& finding : answer.install.plan_findings)
        if (finding.effect == Effect::stop || finding.effect == Effect::care)
            paper.line(2, fmt::format("{:<10}", word_of(finding.effect)), finding.says);
    std::optional<PowerPhase> phase;
    int number = 0;
    for (const auto& step : answer.steps) {
        if (phase != step.phase) paper.line(0, word_of(step.phase), "", Weight::strong);
        phase = step.phase;
        print_step(paper, step, ++number);
    }
    paper.line(0, "", answer.written ? "Saved." : "Dry run: nothing was written.");
    paper.line(0, "",
               fmt::format("Next: `tapbook job reading {} {} --positive COLOUR --negative COLOUR --ac V ...`; the "
                           "vehicle's own instructions come first.",
                           job.number, place_in_job(answer.plan.tap)));
    return paper.take();
}

std::string job_plan_json(const JobPlanAnswer& answer) {
    Json json;
    json.begin_object().key("job");
    write_job(json, answer.job);
    json.member("tap", answer.plan.tap).member("converter", answer.plan.converter);
    json.member("verdict", word_of(answer.part.verdict));
    json.member("amplifier", answer.amplifier ? std::optional(answer.amplifier->path) : std::nullopt);
    json.member("other_pairs", answer.other_pairs).key("steps").begin_list();
    for (const auto& step : answer.steps) {
        json.begin_object().member("phase", word_of(step.phase)).member("what", step.what).key("cautions").begin_list();
        for (const auto& caution : step.cautions)
            json.begin_object().member("title", caution.title).member("text", caution.text).end_object();
        json.end_list().key("readings").begin_list();
        for (const auto& reading : step.readings) {
            json.begin_object().member("field", reading.field).member("what", reading.what);
            write_range(json, reading.range);
            json.member("why", reading.why).end_object();
        }
        json.end_list().end_object();
    }
    json.end_list().key("install");
    write_install(json, answer.install);
    json.key("written").flag(answer.written).end_object();
    return json_answer("job.plan", json.take());
}

}  // namespace tapbook
