// What has this shop done, so that undo can find its last action? One row for each, with the records it added and the
// terms it overwrote.
#include <fmt/format.h>

#include "catalog/stock_rows.h"

namespace tapbook {

void remember_action(sqlite::Database& database, const std::string& today, std::string_view words, const Added& added) {
    if (added.records.empty() && added.terms_before.empty()) return;
    std::string records;
    for (const auto& id : added.records) records += to_hex(id) + '\n';
    auto action = database.prepare("INSERT INTO action (date, words, records) VALUES (?1, ?2, ?3)");
    action.bind_all(today, words, records);
    action.run();
    const auto number = database.last_insert_rowid();
    auto keep = database.prepare(
        fmt::format("INSERT INTO terms_before (action, part, had_terms, job, by_closing, {}) VALUES (?1, ?2, ?3, ?4,"
                    " ?5, ?6, ?7, ?8, ?9, ?10, ?11, ?12, ?13, ?14, ?15)",
                    terms_columns(database)));
    for (const auto& before : added.terms_before) {
        keep.reset();
        keep.bind(1, number);
        keep.bind(2, before.part);
        keep.bind(3, before.terms ? 1 : 0);
        keep.bind(4, before.job);
        keep.bind(5, before.by_closing ? 1 : 0);
        bind_terms(keep, 6, before.terms.value_or(Terms{}));
        keep.run();
    }
}

}  // namespace tapbook
