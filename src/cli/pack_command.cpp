// pack export, pack show, pack import: what shops hand each other as one file.
#include <fmt/format.h>

#include "cli/chosen.h"
#include "cli/progress_line.h"

namespace tapbook {
namespace {

namespace fs = std::filesystem;

constexpr std::string_view to_pipe = "-";

// The path, or its beginning, that the options name; "" for everything.
std::string wanted_path(const Catalog& catalog, const Parsed& parsed) {
    const auto make = parsed.text("--make"), vehicle = parsed.text("--vehicle");
    if (make && vehicle) throw UsageError("--make and --vehicle together", "a car has its make already: keep one");
    if (vehicle) return chosen_car(catalog, *vehicle).path;
    if (!make) return {};
    const std::string slug = slug_from(*make);
    std::vector<std::string> makes;
    for (const auto& name : catalog.vehicle_names()) makes.emplace_back(path_head(name.path, 1));
    if (std::find(makes.begin(), makes.end(), slug) != makes.end()) return slug;
    const std::vector<std::string_view> views(makes.begin(), makes.end());
    const auto near = nearest(slug, views);
    throw NoAnswer(fmt::format("there is no car of the make \"{}\"", shown(*make)),
                   near ? fmt::format("did you mean \"{}\"?", *near) : "tapbook find lists all cars");
}

std::string wanted_day(const Parsed& parsed) {
    const auto day = parsed.text("--since");
    if (day && !day_number(*day))
        throw UsageError(fmt::format("--since: \"{}\" is not a day", shown(*day)), "write it like 2026-05-02");
    return day.value_or("");
}

// "pack.jsonl", or "pack-1.jsonl", "pack-2.jsonl" ... for several.
fs::path name_of(const std::string& file, std::size_t number, std::size_t all) {
    if (all == 1) return file;
    const fs::path whole(file);
    return whole.parent_path() / fmt::format("{}-{}{}", whole.stem().string(), number, whole.extension().string());
}

std::string file_words(const std::string& file) {
    return file == to_pipe ? "standard input" : file;
}

}  // namespace

Exit run_pack_export(Session& session, const Parsed& parsed) {
    const std::string& file = parsed.words.front();
    const Catalog catalog = Catalog::open(reading_place(session), Access::read);
    const OutgoingChoice choice{wanted_path(catalog, parsed), wanted_day(parsed), parsed.flag("--own")};
    const auto packs = write_packs(catalog, choice);
    if (packs.empty()) throw NoAnswer("there is nothing to hand over", "without options everything goes out");
    if (file == to_pipe && packs.size() > 1)
        throw UsageError(fmt::format("this takes {} packs, and a pipe holds one", packs.size()),
                         "name a file, or ask for one make: --make NAME");
    PackExport report;
    std::vector<FileToWrite> files;
    for (std::size_t i = 0; i < packs.size(); ++i) {
        const fs::path place = name_of(file, i + 1, packs.size());
        report.files.push_back({file == to_pipe ? file : place.string(), packs[i].records, packs[i].text.size()});
        files.push_back({place, packs[i].text});
    }
    for (const auto& one : files)
        if (file != to_pipe && fs::exists(fs::symlink_status(one.place)))
            throw CatalogError(CatalogTrouble::already_there, fmt::format("{} is there already", one.place.string()),
                               "choose another name; nothing was written");
    if (parsed.flag("--dry-run") || (file == to_pipe && session.json)) {
        session.answer(pack_export_text(report, session.screen), pack_export_json(report));
        return Exit::done;
    }
    if (file == to_pipe) {
        session.out += packs.front().text;
        return Exit::done;
    }
    write_files(files, Existing::refuse);
    report.written = true;
    session.answer(pack_export_text(report, session.screen), pack_export_json(report));
    return Exit::done;
}

Exit run_pack_show(Session& session, const Parsed& parsed) {
    const std::string& file = parsed.words.front();
    const std::string text = read_file(file);
    const PackContents contents = contents_of(read_pack(text, file_words(file)));
    session.answer(pack_text(contents, session.screen), pack_json(contents));
    return Exit::done;
}

Exit run_pack_import(Session& session, const Parsed& parsed) {
    const std::string& file = parsed.words.front();
    const std::string text = read_file(file);
    const Incoming pack = read_pack(text, file_words(file));
    Catalog catalog = Catalog::open(session.database, Access::write);
    ProgressLine line("taken in");
    catalog.tell_progress(line.listener());
    const TakeInReport report = catalog.take_in(pack, session.today, parsed.flag("--dry-run"));
    session.answer(take_in_text(report, session.screen), take_in_json(report));
    return Exit::done;
}

}  // namespace tapbook
