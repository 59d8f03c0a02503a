// One function changes the numbers and writes down why, so that they cannot part.
#include "catalog/stock_rows.h"

#include <fmt/format.h>

namespace tapbook {
namespace {

std::optional<std::string> or_null(const std::string& text) {
    return text.empty() ? std::nullopt : std::optional(text);
}

std::optional<int> small(const sqlite::Statement& rows, int column) {
    const auto number = rows.optional_integer(column);
    return number ? std::optional(static_cast<int>(*number)) : std::nullopt;
}

void book(sqlite::Database& database, const StockMovement& movement) {
    auto put = database.prepare(
        "INSERT INTO stock_movement (part, kind, on_hand_change, on_order_change, date, job, by_closing, words)"
        " VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8)");
    put.bind_all(movement.part, word_of(movement.kind), movement.on_hand_change, movement.on_order_change,
                 movement.date, movement.job, movement.by_closing ? 1 : 0, or_null(movement.words));
    put.run();
}

enum class TakenBy { closing, anybody };

// How many of each part were taken off the shelf for the job, what was given back taken off.
std::map<std::string, int> taken_for(sqlite::Database& database, int job, TakenBy who) {
    std::map<std::string, int> taken;
    auto rows = database.prepare(
        "SELECT part, -sum(on_hand_change) FROM stock_movement WHERE job = ?1 AND by_closing >= ?2 GROUP BY"
        " part");
    for (rows.bind_all(job, who == TakenBy::closing ? 1 : 0); rows.step();)
        taken[std::string(rows.text(0))] = static_cast<int>(rows.integer(1));
    return taken;
}

}  // namespace

bool has_stock_movements(sqlite::Database& database) {
    constexpr std::int32_t first_version = 8;
    return database.user_version() >= first_version;
}

std::map<std::string, std::vector<StockMovement>, std::less<>> all_movements(sqlite::Database& database) {
    std::map<std::string, std::vector<StockMovement>, std::less<>> movements;
    if (!has_stock_movements(database)) return movements;
    auto rows = database.prepare(
        "SELECT number, part, kind, on_hand_change, on_order_change, date, job, by_closing, words FROM"
        " stock_movement ORDER BY number");
    while (rows.step())
        movements[std::string(rows.text(1))].push_back(
            {static_cast<int>(rows.integer(0)), std::string(rows.text(1)),
             parse_word<MovementKind>(rows.text(2)).value_or(MovementKind::counted), static_cast<int>(rows.integer(3)),
             static_cast<int>(rows.integer(4)), std::string(rows.text(5)), small(rows, 6), rows.integer(7) == 1,
             std::string(rows.optional_text(8).value_or(""))});
    return movements;
}

std::string terms_columns(sqlite::Database& database) {
    constexpr std::int32_t first_version = 10;
    return database.user_version() >= first_version
               ? "cost_cents, lead_days, pack, on_hand, on_order, small_kind, small_name, small_per_job, "
                 "small_fuse_amps, small_cable_size"
               : "cost_cents, lead_days, pack, on_hand, on_order, NULL, NULL, NULL, NULL, NULL";
}

Terms terms_in(const sqlite::Statement& rows, int first) {
    Terms terms{rows.optional_integer(first), small(rows, first + 1), small(rows, first + 2), small(rows, first + 3),
                small(rows, first + 4)};
    if (const auto kind = rows.optional_text(first + 5))
        terms.small = SmallTerms{parse_word<SmallKind>(*kind).value_or(SmallKind::other),
                                 std::string(rows.optional_text(first + 6).value_or("")), small(rows, first + 7),
                                 small(rows, first + 8), std::string(rows.optional_text(first + 9).value_or(""))};
    return terms;
}

std::map<std::string, Terms, std::less<>> all_terms(sqlite::Database& database) {
    std::map<std::string, Terms, std::less<>> terms;
    auto rows = database.prepare(fmt::format("SELECT part, {} FROM terms", terms_columns(database)));
    while (rows.step()) terms.emplace(rows.text(0), terms_in(rows, 1));
    return terms;
}

std::optional<Terms> terms_of_part(sqlite::Database& database, std::string_view part) {
    auto rows = database.prepare(fmt::format("SELECT {} FROM terms WHERE part = ?1", terms_columns(database)));
    rows.bind_all(part);
    if (!rows.step()) return std::nullopt;
    return terms_in(rows, 0);
}

void bind_terms(sqlite::Statement& put, int first, const Terms& terms) {
    const SmallTerms* one = terms.small ? &*terms.small : nullptr;
    int at = first;
    const auto bind = [&](const auto& value) { put.bind(at++, value); };
    bind(terms.cost_cents);
    for (const auto& number : {terms.lead_days, terms.pack, terms.on_hand, terms.on_order}) bind(number);
    bind(one == nullptr ? std::nullopt : std::optional<std::string>(word_of(one->kind)));
    bind(one == nullptr ? std::nullopt : or_null(one->name));
    bind(one == nullptr ? std::nullopt : one->per_job_thousandths);
    bind(one == nullptr ? std::nullopt : one->fuse_amps);
    bind(one == nullptr ? std::nullopt : or_null(one->cable_size));
}

void write_terms(sqlite::Database& database, std::string_view part, const Terms& terms) {
    auto put = database.prepare(
        fmt::format("INSERT OR REPLACE INTO terms (part, {}) VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11)",
                    terms_columns(database)));
    put.bind(1, part);
    bind_terms(put, 2, terms);
    put.run();
}

void book_difference(sqlite::Database& database, const std::optional<Terms>& before, const std::optional<Terms>& after,
                     StockMovement movement) {
    const Terms was = before.value_or(Terms{}), is = after.value_or(Terms{});
    movement.on_hand_change = is.on_hand.value_or(0) - was.on_hand.value_or(0);
    movement.on_order_change = is.on_order.value_or(0) - was.on_order.value_or(0);
    if (movement.on_hand_change != 0 || movement.on_order_change != 0) book(database, movement);
}

void move_stock(sqlite::Database& database, const StockMovement& movement, Added& added) {
    const auto before = terms_of_part(database, movement.part);
    Terms terms = before.value_or(Terms{});
    terms.on_hand = terms.on_hand.value_or(0) + movement.on_hand_change;
    if (terms.on_order || movement.on_order_change != 0)
        terms.on_order = terms.on_order.value_or(0) + movement.on_order_change;
    write_terms(database, movement.part, terms);
    book(database, movement);
    added.terms_before.push_back({movement.part, before, movement.job, movement.by_closing});
}

std::optional<JobStock> take_for_job(sqlite::Database& database, const ShopJob& job, const std::string& today,
                                     Added& added) {
    const std::string& planned = job.plan.converter;
    const bool needs_one = !planned.empty() && planned != "direct";
    JobStock stock{planned, JobTaking::taken, 0, {}};
    const auto by_closing = taken_for(database, job.number, TakenBy::closing);
    for (const auto& [part, pieces] : by_closing) {
        if (pieces <= 0 || part == planned) continue;
        move_stock(database, {0, part, MovementKind::returned, pieces, 0, today, job.number, true, {}}, added);
        stock.returned.push_back(part);
    }
    if (!needs_one && stock.returned.empty()) return std::nullopt;
    if (!needs_one) return JobStock{{}, JobTaking::not_counted, 0, std::move(stock.returned)};
    const auto terms = terms_of_part(database, planned);
    stock.on_hand = terms ? terms->on_hand.value_or(0) : 0;
    if (taken_for(database, job.number, TakenBy::anybody)[planned] > 0) {
        stock.taking = JobTaking::taken_before;
    } else if (!job.closed.empty() && by_closing.empty()) {
        stock.taking = JobTaking::closed_before;
    } else if (!terms || !terms->on_hand) {
        stock.taking = JobTaking::not_counted;
    } else if (stock.on_hand == 0) {
        stock.taking = JobTaking::none_there;
    } else {
        move_stock(database, {0, planned, MovementKind::installed, -1, 0, today, job.number, true, {}}, added);
        --stock.on_hand;
    }
    return stock;
}

}  // namespace tapbook
