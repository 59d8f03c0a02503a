// export: the catalog in its own text forms, to standard output, one file or a folder.
#include <fmt/format.h>

#include "cli/chosen.h"
#include "cli/spreadsheet.h"

namespace tapbook {
namespace {

namespace fs = std::filesystem;

// "make.model.body.year.toml": unlike slugs, a point never occurs in one.
std::string file_name_of(const std::string& vehicle_path) {
    std::string name = vehicle_path;
    for (char& c : name)
        if (c == '/') c = '.';
    return name + ".toml";
}

struct Wanted {
    std::vector<std::string> vehicles;  // paths
    bool parts = false, stock = false;
    bool all = false;  // nothing was named: everything there is
};

Wanted wanted_of(const Catalog& catalog, const Parsed& parsed) {
    Wanted wanted;
    wanted.parts = parsed.flag("--parts");
    wanted.stock = parsed.flag("--stock");
    if (!parsed.words.empty()) wanted.vehicles.push_back(chosen_car(catalog, parsed.joined_words()).path);
    const auto count = wanted.vehicles.size() + (wanted.parts ? 1U : 0U) + (wanted.stock ? 1U : 0U);
    wanted.all = count == 0;
    const bool into = parsed.text("--into").has_value();
    if (into && parsed.text("--out"))
        throw UsageError("--into and --out together", "--into FOLDER for many files, --out FILE for one");
    if (!into && count != 1)
        throw UsageError(count == 0 ? "export needs to know what" : "one file holds a vehicle, the parts or the stock",
                         count == 0 ? "name a VEHICLE, --parts or --stock; or give --into FOLDER for everything"
                                    : "give --into FOLDER for several");
    if (wanted.all) {
        wanted.parts = wanted.stock = true;
        for (const auto& name : catalog.vehicle_names()) wanted.vehicles.push_back(name.path);
    }
    return wanted;
}

fs::path place_of(const Parsed& parsed, const std::string& name, bool is_vehicle) {
    if (const auto out = parsed.text("--out")) return *out;
    const fs::path folder = parsed.text("--into").value_or("");
    return is_vehicle ? folder / "vehicles" / name : folder / name;
}

class Exporting {
  public:
    Exporting(const Parsed& parsed, bool all) : parsed_(parsed), all_(all) {}

    // Reads one file's worth. In an export of everything a damaged car is named and passed over.
    template <class Read>
    void file(const std::string& name, bool is_vehicle, Read read) {
        try {
            const Extract extract = read();
            const bool empty = extract.batch.entries.empty() && extract.batch.terms.empty();
            if (empty && all_) return;
            if (empty) throw NoAnswer(fmt::format("there is nothing for {}", name), "tapbook add FILE.toml puts it in");
            answer_.files.push_back({name, place_of(parsed_, name, is_vehicle), write_batch(extract)});
        } catch (const CatalogError& error) {
            failed(name, error, error.trouble() == CatalogTrouble::damaged);
        } catch (const RecordRefused& error) {
            failed(name,
                   CatalogError(CatalogTrouble::damaged, fmt::format("a stored record is damaged: {}", error.what()),
                                "`tapbook check --full` names all damage and the way out"),
                   true);
        } catch (const InputRefused& error) {
            failed(name, error, true);
        }
    }

    ExportAnswer take() { return std::move(answer_); }

  private:
    template <class Error>
    void failed(const std::string& name, const Error& error, bool may_go_on) {
        if (!all_ || !may_go_on) throw error;
        answer_.failed.push_back({name, error.what()});
    }

    const Parsed& parsed_;
    bool all_;
    ExportAnswer answer_;
};

// One spreadsheet in the place that the options name.
ExportAnswer exported_csv(const Catalog& catalog, const Parsed& parsed, CsvOf what) {
    const auto into = parsed.text("--into"), out = parsed.text("--out");
    if (into && out) throw UsageError("--into and --out together", "--into FOLDER for many files, --out FILE for one");
    ExportAnswer answer;
    answer.files.push_back(spreadsheet_file(catalog, parsed, what));
    ExportedFile& file = answer.files.front();
    file.place = out ? fs::path(*out) : fs::path(into.value_or("")) / file.name;
    answer.is_csv = true;
    answer.mapping = mapping_of(what);
    return answer;
}

ExportAnswer exported(const Catalog& catalog, const Parsed& parsed) {
    if (const auto what = parsed.word<CsvOf>("--csv")) return exported_csv(catalog, parsed, *what);
    const Wanted wanted = wanted_of(catalog, parsed);
    Exporting exporting(parsed, wanted.all);
    if (wanted.parts) exporting.file("parts.toml", false, [&] { return catalog.extract_parts(); });
    if (wanted.stock) exporting.file("stock.toml", false, [&] { return catalog.extract_stock(); });
    for (const auto& path : wanted.vehicles)
        exporting.file(file_name_of(path), true, [&] { return catalog.extract_vehicle(path); });
    return exporting.take();
}

}  // namespace

Exit run_export(Session& session, const Parsed& parsed) {
    session.database = reading_place(session);
    const Catalog catalog = Catalog::open(session.database, Access::read);
    ExportAnswer answer = exported(catalog, parsed);
    if (answer.files.empty() && answer.failed.empty())
        throw NoAnswer("the catalog holds nothing to export yet", "tapbook add FILE.toml puts something in");
    answer.to_output = !parsed.text("--into") && !parsed.text("--out");
    if (!answer.to_output && !parsed.flag("--dry-run")) {
        std::vector<FileToWrite> files;
        for (const auto& file : answer.files) files.push_back({file.place, file.file.text});
        write_files(files, parsed.flag("--replace") ? Existing::replace : Existing::refuse);
        answer.written = true;
    }
    session.answer(export_text(answer, session.screen), export_json(answer));
    return answer.failed.empty() ? Exit::done : Exit::damaged;
}

}  // namespace tapbook
