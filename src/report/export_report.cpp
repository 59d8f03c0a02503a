// export, as text and JSON. To standard output goes the file itself and nothing else.
#include <fmt/format.h>

#include <algorithm>

#include "report/report.h"

namespace tapbook {
namespace {

std::string counted(int number, std::string_view one, std::string_view many) {
    return number == 0 ? std::string() : fmt::format("{} {}", number, number == 1 ? one : many);
}

std::string contents(const WrittenFile& file) {
    std::string text;
    for (const auto& part : {counted(file.entries, "entry", "entries"), counted(file.notes, "note", "notes"),
                             counted(file.terms, "part's terms", "parts' terms")})
        if (!part.empty()) text += (text.empty() ? "" : ", ") + part;
    return text.empty() ? "nothing that adding would read" : text;
}

// The tables that stand as comments, by reason, in the order of the file.
void comments(Paper& paper, const WrittenFile& file) {
    std::vector<std::pair<std::string, int>> by_reason;
    for (const auto& table : file.commented) {
        const auto found = std::find_if(by_reason.begin(), by_reason.end(), [&](const auto& counted_reason) {
            return counted_reason.first == table.reason;
        });
        found == by_reason.end() ? by_reason.emplace_back(table.reason, 1).second : ++found->second;
    }
    for (const auto& [reason, count] : by_reason) paper.line(4, counted(count, "comment:", "comments:"), reason);
}

}  // namespace

std::string export_text(const ExportAnswer& answer, const Screen& screen) {
    if (answer.to_output) return answer.files.empty() ? std::string() : answer.files.front().file.text;
    Paper paper(screen);
    for (const auto& file : answer.files) {
        paper.line(0, answer.written ? "wrote" : "would write",
                   fmt::format("{}: {}", file.place.string(), contents(file.file)));
        comments(paper, file.file);
    }
    for (const auto& failed : answer.failed)
        paper.line(0, "cannot be read:", fmt::format("{}: {}", failed.name, failed.reason));
    if (!answer.written)
        paper.line(0, "", "Nothing was written.");
    else if (answer.is_csv)
        paper.line(0, "",
                   answer.mapping.empty()
                       ? "For spreadsheets; add does not read it."
                       : fmt::format("add --mapping {} reads it again; here that adds nothing.", answer.mapping));
    else
        paper.line(0, "", "Adding these files to the catalog they come from adds nothing.");
    return paper.take();
}

std::string export_json(const ExportAnswer& answer) {
    Json json;
    json.begin_object().key("files").begin_list();
    for (const auto& file : answer.files) {
        json.begin_object().member("name", file.name);
        json.member("place", answer.to_output ? std::optional<std::string>() : std::optional(file.place.string()));
        json.key("entries").whole(file.file.entries);
        json.key("notes").whole(file.file.notes);
        json.key("terms").whole(file.file.terms);
        json.key("comments").begin_list();
        for (const auto& table : file.file.commented)
            json.begin_object().member("what", table.what).member("reason", table.reason).end_object();
        json.end_list();
        json.member("text", answer.to_output ? std::optional(file.file.text) : std::optional<std::string>());
        json.end_object();
    }
    json.end_list().key("failed").begin_list();
    for (const auto& failed : answer.failed)
        json.begin_object().member("name", failed.name).member("reason", failed.reason).end_object();
    json.end_list().key("written").flag(answer.written).end_object();
    return json_answer("export", json.take());
}

}  // namespace tapbook
