// Everything that can be worked out again is worked out again: the local numbers of the ledger in order of their paths,
// with them the order in which the notes lie, and the packed names of all cars. The notes are copied as they are.
#include <fmt/format.h>

#include "catalog/kept_records.h"
#include "catalog/state.h"

namespace tapbook {
namespace {

std::int64_t count_of(sqlite::Database& database, std::string_view query) {
    auto rows = database.prepare(query);
    rows.step();
    return rows.integer(0);
}

// The numbers that paths in order of their text would get: cars by the first of their paths.
void number_paths(sqlite::Database& database) {
    database.execute(
        "CREATE TEMP TABLE renumbered AS"
        " SELECT tap AS old_tap, row_number() OVER (ORDER BY path) AS tap,"
        " dense_rank() OVER (ORDER BY first_path) AS vehicle, path FROM"
        " (SELECT tap, path, min(path) OVER (PARTITION BY vehicle) AS first_path FROM subject)");
}

bool is_in_order(sqlite::Database& database) {
    return count_of(database,
                    "SELECT count(*) FROM renumbered JOIN subject ON subject.tap = old_tap"
                    " WHERE subject.tap <> renumbered.tap OR subject.vehicle <> renumbered.vehicle") == 0;
}

std::string definition_of(sqlite::Database& database, std::string_view table) {
    auto rows = database.prepare("SELECT sql FROM sqlite_schema WHERE type = 'table' AND name = ?1");
    rows.bind_all(table);
    rows.step();
    return std::string(rows.text(0));
}

// Views read the ledger, so it is emptied by making it anew under its own definition.
void lay_anew(sqlite::Database& database, const Progress& told) {
    const std::string note = definition_of(database, "note"), subject = definition_of(database, "subject");
    database.execute(
        "CREATE TEMP TABLE kept AS SELECT renumbered.vehicle AS new_vehicle, renumbered.tap AS new_tap, note.*"
        " FROM note JOIN renumbered ON renumbered.old_tap = note.tap");
    database.execute("DROP TABLE note; DROP TABLE subject;" + note + ";" + subject + ";");
    database.execute("INSERT INTO subject (tap, vehicle, path) SELECT tap, vehicle, path FROM renumbered ORDER BY tap");
    std::string columns;
    auto names = database.prepare("SELECT name FROM pragma_table_info('note') WHERE name NOT IN ('vehicle', 'tap')");
    while (names.step()) columns += ", " + std::string(names.text(0));
    const auto cars = count_of(database, "SELECT coalesce(max(new_vehicle), 0) FROM temp.kept");
    auto put =
        database.prepare(fmt::format("INSERT INTO note (vehicle, tap{}) SELECT new_vehicle, new_tap{} FROM temp.kept"
                                     " WHERE new_vehicle = ?1 ORDER BY new_tap, id",
                                     columns, columns));
    database.execute("CREATE INDEX temp.kept_by_car ON kept (new_vehicle)");
    Steps steps(told, cars);
    for (std::int64_t vehicle = 1; vehicle <= cars; ++vehicle) {
        put.bind_all(vehicle);
        put.run();
        steps.one();
    }
    database.execute("DROP TABLE temp.kept");
}

}  // namespace

RebuildReport Catalog::rebuild(bool dry_run) {
    try {
        sqlite::Transaction transaction(state_->database);
        RebuildReport report;
        report.read_now = read_kept_records(state_->database);
        report.notes = count_of(state_->database, "SELECT count(*) FROM note");
        report.paths = count_of(state_->database, "SELECT count(*) FROM subject");
        number_paths(state_->database);
        report.renumbered = !is_in_order(state_->database);
        if (report.renumbered) lay_anew(state_->database, state_->progress);
        state_->database.execute("DROP TABLE temp.renumbered");
        report.names_renewed = !has_kept_names(state_->database) || !names_are_current(state_->database);
        if (report.names_renewed) keep_names(state_->database);
        if (!dry_run) transaction.commit();
        report.written = !dry_run;
        return report;
    } catch (const sqlite::Error& error) {
        throw_catalog_error(error, state_->file);
    }
}

}  // namespace tapbook
