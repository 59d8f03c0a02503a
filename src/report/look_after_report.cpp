// See look_after_report.h.
#include "report/look_after_report.h"

#include <fmt/format.h>

#include "report/report.h"

namespace tapbook {
namespace {

constexpr double audit_target = 0.99;

std::string size_words(std::int64_t bytes) {
    return bytes < 1'000'000 ? fmt::format("{} kB", (bytes + 999) / 1000)
                             : fmt::format("{:.1f} MB", static_cast<double>(bytes) / 1e6);
}

std::string counted(std::int64_t number, std::string_view noun) {
    return fmt::format("{} {}{}", number, noun, number == 1 ? "" : "s");
}

void write_copy(Json& json, const CopyReport& report) {
    json.begin_object().member("file", report.file.string()).key("bytes").whole(report.bytes);
    json.key("rows").whole(report.rows).key("notes").whole(report.notes).key("holds_key").flag(report.holds_key);
}

std::string percent_words(double share) {
    return fmt::format("{:.1f} %", 100 * share);
}

}  // namespace

std::string backup_text(const CopyReport& report, const Screen& screen) {
    Paper paper(screen);
    paper.line(0, "",
               fmt::format("Backed up to {}: {}, {} rows, {}. Opened and counted: sound.", report.file.string(),
                           size_words(report.bytes), report.rows, counted(report.notes, "note")));
    paper.line(0, "",
               report.holds_key
                   ? "It holds this shop's key: keep it where only the shop can read it."
                   : "It holds neither key nor customers: it can be read and restored, but speaks for no shop.");
    return paper.take();
}

std::string backup_json(const CopyReport& report) {
    Json json;
    write_copy(json, report);
    json.end_object();
    return json_answer("backup", json.take());
}

std::string restore_text(const CopyReport& report, const Screen& screen) {
    Paper paper(screen);
    paper.line(0, "",
               fmt::format("Restored to {}: {} rows, {}. Opened and counted: sound.", report.file.string(), report.rows,
                           counted(report.notes, "note")));
    if (!report.set_aside.empty())
        paper.line(0, "", fmt::format("What was there before lies at {}.", report.set_aside.string()));
    if (!report.holds_key)
        paper.line(0, "", "The backup held no key: this catalog can be read, not written for a shop.");
    return paper.take();
}

std::string restore_json(const CopyReport& report) {
    Json json;
    write_copy(json, report);
    json.member("set_aside", report.set_aside.empty() ? std::nullopt : std::optional(report.set_aside.string()));
    json.end_object();
    return json_answer("restore", json.take());
}

std::string rebuild_text(const RebuildReport& report, const Screen& screen) {
    Paper paper(screen);
    paper.line(0, "",
               fmt::format("{} at {}: {}.", counted(report.notes, "note"), counted(report.paths, "place"),
                           report.renumbered ? "laid anew in order of their paths" : "all in order already"));
    if (report.names_renewed) paper.line(0, "", "The names that find reads were written anew.");
    if (report.read_now > 0)
        paper.line(
            0, "",
            fmt::format("Read now: {} that an earlier version kept unread.", counted(report.read_now, "record")));
    if (!report.written) paper.line(0, "", "Dry run: nothing was written.");
    return paper.take();
}

std::string rebuild_json(const RebuildReport& report) {
    Json json;
    json.begin_object().key("notes").whole(report.notes).key("places").whole(report.paths);
    json.key("renumbered")
        .flag(report.renumbered)
        .key("names_renewed")
        .flag(report.names_renewed)
        .key("read_now")
        .whole(report.read_now)
        .key("written")
        .flag(report.written)
        .end_object();
    return json_answer("rebuild", json.take());
}

std::string progress_text(const std::string& what, std::int64_t done, std::int64_t all, std::int64_t elapsed_ms) {
    if (done <= 0) return fmt::format("{} 0 %", what);
    const std::int64_t left_s = (elapsed_ms * (all - done) / done + 500) / 1000;
    const std::string left = left_s < 1     ? "a moment"
                             : left_s < 100 ? fmt::format("about {} s", left_s)
                                            : fmt::format("about {} min", (left_s + 30) / 60);
    return fmt::format("{} {} %, {} left (Ctrl-C stops and changes nothing)", what, 100 * done / all, left);
}

std::string audit_text(const AuditAnswer& answer, const Screen& screen) {
    Paper paper(screen);
    paper.heading(fmt::format("{} of {} drawn with seed {}", answer.sample.size(),
                              counted(static_cast<std::int64_t>(answer.proven), "proven fact"), answer.seed));
    for (const auto& fact : answer.sample) {
        paper.blank();
        paper.line(2, fmt::format("{:<7}", word_of(fact.verdict)), fact.path, Weight::strong);
        paper.line(
            10, "",
            fmt::format("{}: {}", word_of(fact.question), fact.line.empty() ? "PROVEN - " + fact.words : fact.line));
    }
    paper.blank();
    paper.line(0, "",
               fmt::format("{} right, {} wrong, {} unsure (nobody has looked again since {}).", answer.right,
                           answer.wrong, answer.open, answer.since));
    if (answer.right + answer.wrong == 0)
        paper.line(0, "",
                   "Meter them at the next such car and note it; then say this again with the same seed and day.");
    else
        paper.line(0, "",
                   fmt::format("Of facts like these {} to {} are right (95 %); the target is {}.",
                               percent_words(answer.share.low), percent_words(answer.share.high),
                               percent_words(audit_target)));
    return paper.take();
}

std::string audit_json(const AuditAnswer& answer) {
    Json json;
    json.begin_object().key("proven").whole(static_cast<std::int64_t>(answer.proven));
    json.key("seed").whole(static_cast<std::int64_t>(answer.seed)).member("since", answer.since);
    json.member("right", std::optional(answer.right)).member("wrong", std::optional(answer.wrong));
    json.member("unsure", std::optional(answer.open));
    json.key("share").begin_object().key("low").number(answer.share.low).key("high").number(answer.share.high);
    json.end_object().key("facts").begin_list();
    for (const auto& fact : answer.sample)
        json.begin_object()
            .member("code", fact.path)
            .member("question", word_of(fact.question))
            .member("value", fact.words)
            .member("line", fact.line)
            .member("verdict", word_of(fact.verdict))
            .member("looks", std::optional(fact.looks))
            .end_object();
    json.end_list().end_object();
    return json_answer("audit", json.take());
}

}  // namespace tapbook
