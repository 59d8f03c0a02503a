// The exchange folder, the shop's key, two names for one thing.
#include <fmt/format.h>

#include "report/exchange_report.h"
#include "report/json.h"

namespace tapbook {
namespace {

std::string fate_words(FileFate fate) {
    switch (fate) {
        case FileFate::taken:
            return "taken in";
        case FileFate::here:
            return "already here";
        case FileFate::same:
            return "passed over";
        case FileFate::waiting:
            return "waits";
        case FileFate::not_whole:
            return "not whole yet";
        case FileFate::refused:
            return "refused";
        case FileFate::no_pack:
            return "passed over";
        case FileFate::unreadable:
            return "cannot be read";
    }
    return {};
}

std::string counted(int number, std::string_view one, std::string_view many) {
    return fmt::format("{} {}", number, number == 1 ? one : many);
}

int count_of(const FolderReport& report, FileFate fate) {
    int count = 0;
    for (const auto& file : report.files) count += file.fate == fate ? 1 : 0;
    return count;
}

// Files that need no word are counted only.
bool needs_a_line(FileFate fate) {
    return fate != FileFate::taken && fate != FileFate::here;
}

}  // namespace

std::string folder_text(const FolderReport& report, const Screen& screen) {
    Paper paper(screen);
    std::string text;
    for (const auto& taken : report.taken) text += take_in_text(taken, screen);
    for (const auto& file : report.files)
        if (needs_a_line(file.fate))
            paper.line(0, fate_words(file.fate),
                       fmt::format("{}{}{}", file.name, file.why.empty() ? "" : ": ",
                                   file.why.empty() && file.fate == FileFate::no_pack ? ": no pack" : file.why));
    for (const auto& name : report.written) paper.line(0, report.dry_run ? "would write" : "wrote", name);
    paper.line(
        0, "",
        fmt::format("{}: {} taken in, {} already here; {} of this shop {}.", report.folder.string(),
                    counted(count_of(report, FileFate::taken), "pack", "packs"), count_of(report, FileFate::here),
                    counted(report.records_written, "new record", "new records"),
                    report.dry_run ? "would be written" : "written"));
    if (report.dry_run) paper.line(0, "", "Dry run: nothing was written.");
    return text + paper.take();
}

std::string folder_json(const FolderReport& report) {
    Json json;
    json.begin_object().member("folder", report.folder.string()).key("dry_run").flag(report.dry_run);
    json.key("files").begin_list();
    for (const auto& file : report.files)
        json.begin_object()
            .member("name", file.name)
            .member("fate", word_of(file.fate))
            .member("why", file.why.empty() ? std::nullopt : std::optional(file.why))
            .end_object();
    json.end_list().key("taken").begin_list();
    for (const auto& taken : report.taken) write_take_in(json, taken);
    json.end_list().member("wrote", report.written).key("records_written").whole(report.records_written).end_object();
    return json_answer("exchange", json.take());
}

std::string key_text(const KeyReport& report, std::string_view done, const Screen& screen) {
    Paper paper(screen);
    paper.line(0, "shop", report.shop);
    paper.line(0, "key", digits_of(report.key));
    paper.line(0, "fingerprint", fingerprint(report.key));
    paper.line(0, "",
               report.changes == 0 ? "The key is the shop's first."
                                   : fmt::format("The key was changed {}.", counted(report.changes, "time", "times")));
    if (!done.empty()) paper.line(0, "", done);
    return paper.take();
}

std::string key_json(const KeyReport& report) {
    Json json;
    json.begin_object().member("shop", report.shop).member("key", digits_of(report.key));
    json.member("fingerprint", fingerprint(report.key)).key("changes").whole(report.changes);
    json.key("written").flag(report.written).end_object();
    return json_answer("shops.key", json.take());
}

std::string alias_text(const AliasReport& report, const Screen& screen) {
    Paper paper(screen);
    paper.line(0, "", fmt::format("{} and {} are the same thing.", report.first, report.second));
    paper.line(0, "", fmt::format("Known here as {}. Notes keep the path they were written under.", report.name));
    paper.line(0, "", "This cannot be taken back: `tapbook undo` would reverse what you did before it.");
    paper.line(0, "",
               report.was_here  ? "That was said already. Nothing was changed."
               : report.written ? "Saved."
                                : "Dry run: nothing was written.");
    return paper.take();
}

std::string alias_json(const AliasReport& report) {
    Json json;
    json.begin_object().member("first", report.first).member("second", report.second).member("name", report.name);
    json.key("already_said").flag(report.was_here).key("written").flag(report.written).end_object();
    return json_answer("alias", json.take());
}

}  // namespace tapbook
