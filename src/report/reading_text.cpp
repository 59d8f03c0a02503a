// A reading explained at the car: stop words first, then each value against its prediction, then what is still to read.
#include <fmt/format.h>

#include "report/job_report.h"
#include "report/said.h"

namespace tapbook {
namespace {

std::string volts(std::int64_t millivolts) {
    return fmt::format("{:g} V", static_cast<double>(millivolts) / 1000);
}

void print_compared(Paper& paper, const ComparedReading& compared) {
    const bool is_off = !compared.means.empty();
    paper.line(2, fmt::format("{:<14}", compared.predicted.field),
               fmt::format("{}, {}{}{}", volts(compared.millivolts), against_words(compared), is_off ? ": " : "",
                           compared.means),
               is_off ? Weight::strong : Weight::plain);
}

void print_verdict(Paper& paper, const MeterVerdict& verdict) {
    paper.line(2, verdict.stop ? "STOP          " : "reads as      ",
               verdict.stop ? fmt::format("do not connect anything; it reads as {}", spaced(word_of(verdict.reads_as)))
                            : spaced(word_of(verdict.reads_as)),
               Weight::strong);
    for (const auto sentence : verdict.says()) paper.line(16, "-", sentence);
}

void print_complaint(Paper& paper, const EntryComplaint& complaint) {
    paper.line(2, fmt::format("{:<14}", severity_words(complaint.severity)), complaint_words(complaint),
               complaint.severity == EntrySeverity::info ? Weight::plain : Weight::strong);
}

std::string joined(const std::vector<std::string>& words) {
    return fmt::format("{}", fmt::join(words, ", "));
}

}  // namespace

std::string reading_text(const ReadingAnswer& answer, const Screen& screen) {
    Paper paper(screen);
    paper.heading(fmt::format("Job {}  {}: {}{}", answer.job.number, answer.job.code, place_in_job(answer.path),
                              answer.practice ? "   [practice]" : ""));
    if (answer.verdict && answer.verdict->stop) print_verdict(paper, *answer.verdict);
    for (const auto& complaint : answer.complaints)
        if (complaint.severity != EntrySeverity::info) print_complaint(paper, complaint);
    if (answer.verdict && !answer.verdict->stop) print_verdict(paper, *answer.verdict);
    if (answer.live) paper.line(2, "live          ", spaced(word_of(*answer.live)));
    for (const auto& compared : answer.compared) print_compared(paper, compared);
    for (const auto& complaint : answer.complaints)
        if (complaint.severity == EntrySeverity::info) print_complaint(paper, complaint);
    if (!answer.catalog_line.empty()) paper.line(2, "catalog       ", answer.catalog_line);
    if (!answer.to_read.empty()) paper.line(2, "not read yet  ", joined(answer.to_read));
    if (answer.readings.empty()) paper.line(2, "", "Nothing is read here on this job now.");
    paper.line(0, "",
               answer.written ? "Saved with the job; it becomes a note when the job is closed."
                              : "Dry run: nothing was written.");
    return paper.take();
}

namespace {

void write_reading(Json& json, const ReadingAnswer& answer) {
    json.begin_object().member("job", std::optional(answer.job.number)).member("code", answer.path);
    json.member("kind", word_of(answer.kind));
    write_readings(json, answer.readings);
    json.member("reads_as",
                answer.verdict ? std::optional(std::string(word_of(answer.verdict->reads_as))) : std::nullopt);
    json.key("stop").flag(answer.verdict && answer.verdict->stop).key("says").begin_list();
    if (answer.verdict)
        for (const auto sentence : answer.verdict->says()) json.text(sentence);
    json.end_list();
    json.member("live", answer.live ? std::optional(std::string(word_of(*answer.live))) : std::nullopt);
    json.key("compared").begin_list();
    const auto in_volts = [](std::optional<std::int64_t> millivolts) {
        return millivolts ? std::optional(static_cast<double>(*millivolts) / 1000) : std::nullopt;
    };
    for (const auto& compared : answer.compared)
        json.begin_object()
            .member("field", compared.predicted.field)
            .member_number("read_v", in_volts(compared.millivolts))
            .member_number("low_v", in_volts(compared.predicted.range.low))
            .member_number("high_v", in_volts(compared.predicted.range.high))
            .member("against", word_of(compared.against))
            .member("means", compared.means)
            .end_object();
    json.end_list().key("said").begin_list();
    for (const auto& complaint : answer.complaints)
        json.begin_object()
            .member("severity", word_of(complaint.severity))
            .member("field", complaint.field)
            .member("text", complaint.text)
            .end_object();
    json.end_list().member("catalog", answer.catalog_line).member("to_read", answer.to_read);
    json.key("written").flag(answer.written).end_object();
}

}  // namespace

std::string reading_json(const ReadingAnswer& answer) {
    Json json;
    write_reading(json, answer);
    return json_answer("job.reading", json.take());
}

std::string readings_text(std::span<const ReadingAnswer> answers, const Screen& screen) {
    std::string text;
    for (const auto& answer : answers) text += (text.empty() ? "" : "\n") + reading_text(answer, screen);
    if (!text.empty()) return text;
    Paper paper(screen);
    paper.line(0, "", "The file holds no reading: nothing was written.");
    return paper.take();
}

std::string readings_json(const JobReport& report, std::span<const ReadingAnswer> answers) {
    Json json;
    json.begin_object().member("job", std::optional(report.job.number)).key("readings").begin_list();
    for (const auto& answer : answers) write_reading(json, answer);
    json.end_list().key("written").flag(report.written).end_object();
    return json_answer("job.readings", json.take());
}

}  // namespace tapbook
