// What has this shop done, so that undo can find its last action? One row for each, with the records it added and the
// terms it overwrote.
#include <fmt/format.h>

#include "catalog/adding.h"

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
        "INSERT INTO terms_before (action, part, had_terms, cost_cents, lead_days, pack, "
        "on_hand, on_order, job, by_closing) VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10)");
    for (const auto& before : added.terms_before) {
        const Terms terms = before.terms.value_or(Terms{});
        keep.bind_all(number, before.part, before.terms ? 1 : 0, terms.cost_cents, terms.lead_days, terms.pack,
                      terms.on_hand, terms.on_order, before.job, before.by_closing ? 1 : 0);
        keep.run();
    }
}

}  // namespace tapbook
