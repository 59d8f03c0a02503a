// check and where, as text and JSON.
#include <fmt/format.h>

#include "report/report.h"

namespace tapbook {
namespace {

std::string looked_at(const CheckReport& report) {
    return fmt::format("{} notes, {} entries and {} other rows looked at", report.notes, report.entries,
                       report.other_rows);
}

void way_out(Paper& paper, const CheckReport& report) {
    const auto& backups = report.backups;
    paper.line(0, "Way out:",
               backups.empty() ? "no sound backup lies beside it. Take the newest one you have elsewhere."
                               : fmt::format("restore the newest sound copy beside it, {}{}", backups.front().string(),
                                             backups.size() == 1 ? "" : fmt::format(" (of {})", backups.size())));
    const std::string saves =
        report.readable
            ? fmt::format("`tapbook export --into FOLDER --db {}` writes down what can still be read.",
                          report.file.string())
            : fmt::format("tapbook can read nothing of it; `sqlite3 {} .recover` may save rows.", report.file.string());
    paper.line(0, "Before that:", saves + " Keep the damaged file until the new one is checked.");
}

}  // namespace

std::string check_text(const CheckReport& report, const Screen& screen) {
    Paper paper(screen);
    const bool full = report.depth == CheckDepth::full;
    const std::string name = report.file.string() + (report.practice ? " (practice)" : "");
    if (report.sound()) {
        paper.line(0, "sound:", name);
        paper.line(2, "",
                   full ? looked_at(report) + "."
                        : "Structure, schema, settings and key are in order. `tapbook check --full` looks at every "
                          "note and entry as well.");
    } else {
        paper.notice("DAMAGED: " + name);
        for (const auto& damage : report.damages) {
            paper.line(2, "-", damage.facts == 0 ? damage.what : fmt::format("{}: {}", damage.what, damage.facts));
            for (const auto& example : damage.examples) paper.line(6, "", example);
            if (damage.facts > static_cast<std::int64_t>(damage.examples.size()))
                paper.line(
                    6, "",
                    fmt::format("and {} more", damage.facts - static_cast<std::int64_t>(damage.examples.size())));
        }
        if (full)
            paper.line(0, "", fmt::format("{} facts are affected; {}.", report.facts_affected(), looked_at(report)));
        if (!full && report.readable)
            paper.line(0, "", "`tapbook check --full` says how many notes and entries are affected.");
        way_out(paper, report);
    }
    for (const auto& remark : report.remarks) paper.line(2, "remark:", remark);
    return paper.take();
}

std::string check_json(const CheckReport& report) {
    Json json;
    json.begin_object().member("catalog", report.file.string());
    json.member("depth", report.depth == CheckDepth::full ? "full" : "quick");
    json.key("sound").flag(report.sound()).key("practice").flag(report.practice);
    json.key("notes").whole(report.notes).key("entries").whole(report.entries);
    json.key("other_rows").whole(report.other_rows).key("facts_affected").whole(report.facts_affected());
    json.key("damages").begin_list();
    for (const auto& damage : report.damages) {
        json.begin_object().member("what", damage.what).key("facts").whole(damage.facts);
        json.member("examples", damage.examples).end_object();
    }
    json.end_list().member("remarks", report.remarks).key("backups").begin_list();
    for (const auto& backup : report.backups) json.text(backup.string());
    json.end_list().end_object();
    return json_answer("check", json.take());
}

std::string where_text(const ProgramPlaces& places, const Screen& screen) {
    Paper paper(screen);
    for (const auto& place : places.all)
        paper.line(0, fmt::format("{:<15}", place.what), place.path.string() + (place.exists ? "" : "  (not there)"));
    paper.line(0, fmt::format("{:<15}", "stock"), "inside the catalog; `tapbook export --stock` writes it as a file");
    return paper.take();
}

std::string where_json(const ProgramPlaces& places) {
    Json json;
    json.begin_object()
        .member("catalog", places.catalog.string())
        .member("practice", places.practice.string())
        .member("rules", places.rules.string());
    json.key("places").begin_list();
    for (const auto& place : places.all) {
        json.begin_object().member("what", place.what).member("path", place.path.string());
        json.key("exists").flag(place.exists).end_object();
    }
    json.end_list().end_object();
    return json_answer("where", json.take());
}

}  // namespace tapbook
