// Do the movements of the shelf fit what lies there? Their words are of the table, none is about a part without terms
// but what was taken back to nothing, and both numbers of a part are the sums of its movements.
#include <fmt/format.h>

#include "catalog/check_rows.h"
#include "catalog/stock_rows.h"

namespace tapbook {

void check_stock(RowCheck& check) {
    if (!has_stock_movements(check.database)) return;
    auto rows = check.database.prepare("SELECT number, part, kind, date, job, by_closing FROM stock_movement");
    while (rows.step()) {
        ++check.findings.report().other_rows;
        const auto closing = number_of_cell(rows.value(5));
        const bool has_job = number_of_cell(rows.value(4)).has_value();
        if (!parse_word<MovementKind>(text_of_cell(rows.value(2))) || !day_number(text_of_cell(rows.value(3))) ||
            (closing != 0 && (closing != 1 || !has_job)))
            check.findings.fact("movements of the shelf that make no sense",
                                fmt::format("movement {} of {}", number_of_cell(rows.value(0)).value_or(0),
                                            text_of_cell(rows.value(1))));
    }
    auto sums = check.database.prepare(
        "SELECT part, sum(hand), sum(ordered) FROM (SELECT part, on_hand_change AS hand, on_order_change AS ordered "
        "FROM"
        " stock_movement UNION ALL SELECT part, -coalesce(on_hand, 0), -coalesce(on_order, 0) FROM terms)"
        " GROUP BY part HAVING sum(hand) <> 0 OR sum(ordered) <> 0");
    while (sums.step())
        check.findings.fact("parts whose count is not the sum of their movements", text_of_cell(sums.value(0)));
}

}  // namespace tapbook
