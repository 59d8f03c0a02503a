// add FILE.csv: a spreadsheet row by row through a mapping. export --csv: notes, taps, parts or jobs as one.
#include <fmt/format.h>

#include <algorithm>

#include "cli/chosen.h"
#include "cli/progress_line.h"
#include "cli/spreadsheet.h"
#include "embedded.h"
#include "files/files.h"

namespace tapbook {
namespace {

// One of the mappings that travel with the program, or a file.
Mapping chosen_mapping(const std::string& name) {
    const std::string shipped = fmt::format("mappings/{}.toml", name);
    for (const auto& text : embedded_texts())
        if (text.name == shipped) return read_mapping(text.text, shipped);
    return read_mapping(read_file(name), name);
}

RowCarOf car_named_in(const Catalog& catalog) {
    return [&catalog](const std::string& words) -> RowCar {
        try {
            return {chosen_car(catalog, words).path, {}, {}};
        } catch (const NoAnswer& none) {
            return {{}, none.what(), none.hint()};
        } catch (const UsageError& several) {
            return {{}, several.what(), several.hint()};
        }
    };
}

void write_refused(const Parsed& parsed, const ReadRows& rows, const RowsReport& report) {
    const auto place = parsed.text("--refused");
    if (!place || report.refused == 0) return;
    if (std::filesystem::exists(*place))
        throw CatalogError(CatalogTrouble::already_there, fmt::format("{} is there already", *place),
                           "name another file for the refused rows; nothing was changed");
    const std::string text = refused_rows(rows, report);
    const FileToWrite files[] = {{*place, text}};
    write_files(files, Existing::refuse);
}

std::string name_of_car(const Catalog& catalog, const Parsed& parsed, CsvOf what) {
    if (parsed.words.empty())
        throw UsageError(fmt::format("export --csv {} needs to know which car", word_of(what)),
                         fmt::format("tapbook export VEHICLE --csv {}", word_of(what)));
    return chosen_car(catalog, parsed.joined_words()).path;
}

WrittenFile without_notes_to_read(std::string text) {
    return {std::move(text), 0, 0, 0, {}};
}

std::string file_name(std::string path, std::string_view what) {
    for (char& c : path)
        if (c == '/') c = '.';
    return fmt::format("{}{}{}.csv", path, path.empty() ? "" : ".", what);
}

}  // namespace

void check_no_spreadsheet(const Parsed& parsed) {
    for (const char* option : {"--skip-refused", "--refused"})
        if (parsed.flag(option) || parsed.text(option))
            throw UsageError(fmt::format("{} goes with --mapping", option),
                             "tapbook add FILE.csv --mapping MAPPING.toml");
    const std::string& file = parsed.words.front();
    if (file.ends_with(".csv") || file.ends_with(".CSV"))
        throw UsageError(fmt::format("{} is a spreadsheet: which column is what?", shown(file)),
                         "name a mapping: --mapping MAPPING.toml; for what export --csv wrote, --mapping notes, "
                         "converters, amplifiers or stock");
}

Exit add_spreadsheet(Session& session, const Parsed& parsed) {
    const std::string& file = parsed.words.front();
    const std::string mapping_name = *parsed.text("--mapping");
    if (file == "-" && mapping_name == "-")
        throw UsageError("the spreadsheet and its mapping cannot both come from the pipe",
                         "name a file for one of them");
    const RefusedRows refused = parsed.flag("--skip-refused") ? RefusedRows::leave_out : RefusedRows::hold_back;
    const bool dry_run = parsed.flag("--dry-run");
    Catalog catalog = Catalog::open(session.database, Access::write);
    const Mapping mapping = chosen_mapping(mapping_name);
    const ReadRows rows =
        read_rows(read_file(file), file == "-" ? "standard input" : file, mapping, car_named_in(catalog));
    const bool unreadable =
        std::any_of(rows.rows.begin(), rows.rows.end(), [](const ReadRow& row) { return !row.complaints.empty(); });
    ProgressLine line("added");
    catalog.tell_progress(line.listener());
    const bool held_back = unreadable && refused == RefusedRows::hold_back;
    const auto added = [&](bool gives_up) {
        return rows_report(rows, mapping_name, catalog.add_rows(rows.batch, refused, gives_up, session.today), refused);
    };
    if (parsed.text("--refused"))
        write_refused(parsed, rows, added(true));  // nothing is saved when it cannot be written
    const RowsReport report = added(dry_run || held_back);
    const bool stopped = report.refused > 0 && refused == RefusedRows::hold_back;
    if (stopped && !dry_run && session.json) {
        session.out += json_failure("input_refused", refused_rows_words(report), refused_rows_hint);
        return Exit::input_refused;
    }
    session.answer([&] { return rows_text(report, session.screen); }, [&] { return rows_json(report); });
    if (!stopped) return Exit::done;
    return dry_run ? Exit::answer_is_no : Exit::input_refused;
}

std::string_view mapping_of(CsvOf what) {
    switch (what) {
        case CsvOf::notes:
            return "notes";
        case CsvOf::converters:
            return "converters";
        case CsvOf::amplifiers:
            return "amplifiers";
        case CsvOf::taps:
        case CsvOf::jobs:
            break;
    }
    return {};
}

ExportedFile spreadsheet_file(const Catalog& catalog, const Parsed& parsed, CsvOf what) {
    for (const char* option : {"--parts", "--stock"})
        if (parsed.flag(option))
            throw UsageError(fmt::format("--csv and {} together", option), "one export writes one of them");
    const bool of_a_car = what == CsvOf::notes || what == CsvOf::taps;
    if (!of_a_car && !parsed.words.empty())
        throw UsageError(fmt::format("--csv {} is about no single car", word_of(what)),
                         fmt::format("tapbook export --csv {}", word_of(what)));
    const std::string car = of_a_car ? name_of_car(catalog, parsed, what) : std::string();
    const std::string name = file_name(car, word_of(what));
    switch (what) {
        case CsvOf::notes:
            return {name, {}, notes_csv(catalog.extract_vehicle(car))};
        case CsvOf::taps:
            return {name,
                    {},
                    without_notes_to_read(taps_csv(taps_answer(catalog.car(car, {}), "", catalog.is_practice())))};
        case CsvOf::converters:
            return {name, {}, converters_csv(catalog.extract_parts(), catalog.extract_stock())};
        case CsvOf::amplifiers:
            return {name, {}, amplifiers_csv(catalog.extract_parts(), catalog.extract_stock())};
        case CsvOf::jobs:
            break;
    }
    return {name, {}, without_notes_to_read(jobs_csv(catalog.jobs(), catalog.is_practice()))};
}

}  // namespace tapbook
