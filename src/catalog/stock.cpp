// What lies on the shelf, and how is a movement booked by hand? What cannot be is refused with what lies there.
#include "catalog/stock.h"

#include <fmt/format.h>

#include <algorithm>

#include "catalog/job_rows.h"
#include "catalog/stock_rows.h"

namespace tapbook {
namespace {

StockRow row_of(const CurrentEntry& entry, EntryKind kind) {
    const Values& values = entry.entry.values;
    StockRow row;
    row.part = text_field(values, "path");
    row.maker = text_field(values, "maker");
    row.name = text_field(values, "name");
    row.kind = kind;
    row.is_retired = values.contains("retired");
    return row;
}

StockRow row_of(const std::string& part, const SmallTerms& small) {
    StockRow row;
    row.part = part;
    row.name = small.name;
    return row;
}

std::vector<StockRow> all_parts(sqlite::Database& database) {
    std::vector<StockRow> rows;
    for (const EntryKind kind : {EntryKind::converter, EntryKind::amplifier})
        for (const auto& entry : winning_entries(database, kind, "", "\x7f")) rows.push_back(row_of(entry, kind));
    for (const auto& [part, terms] : all_terms(database))
        if (terms.small) rows.push_back(row_of(part, *terms.small));
    std::sort(rows.begin(), rows.end(), [](const StockRow& a, const StockRow& b) { return a.part < b.part; });
    return rows;
}

bool lies_there(const Terms& terms) {
    return terms.on_hand.value_or(0) > 0 || terms.on_order.value_or(0) > 0;
}

[[noreturn]] void refuse(const StockChange& change, std::string message, std::string hint) {
    throw InputRefused({{{change.part, 0, 0, {}}, std::move(message), std::move(hint)}});
}

std::string pieces_words(int pieces) {
    return pieces == 0 ? std::string("none") : fmt::format("only {}", pieces);
}

// Both differences that the change makes of what is there. Throws InputRefused when less is there than goes.
StockMovement movement_of(const StockChange& change, const Terms& terms, const std::string& today) {
    const int on_hand = terms.on_hand.value_or(0), on_order = terms.on_order.value_or(0);
    StockMovement movement{0, change.part, MovementKind::counted, 0, 0, today, change.job, false, change.words};
    const auto change_both = [&](MovementKind kind, int hand, int ordered) {
        movement.kind = kind;
        movement.on_hand_change = hand;
        movement.on_order_change = ordered;
    };
    switch (change.booking) {
        case Booking::order:
            change_both(MovementKind::ordered, 0, change.pieces);
            break;
        case Booking::cancel:
            if (change.pieces > on_order)
                refuse(change,
                       fmt::format("{} ordered: {} cannot be cancelled",
                                   on_order == 1 ? "only 1 is" : pieces_words(on_order) + " are", change.pieces),
                       "`tapbook shelf count` shows what is on order");
            change_both(MovementKind::cancelled, 0, -change.pieces);
            break;
        case Booking::receive:
            change_both(MovementKind::received, change.pieces, -std::min(change.pieces, on_order));
            break;
        case Booking::use:
            if (change.pieces > on_hand)
                refuse(change,
                       fmt::format("{} on the shelf: {} cannot be taken",
                                   on_hand == 1 ? "only 1 lies" : pieces_words(on_hand) + " lie", change.pieces),
                       fmt::format("count them and write `tapbook shelf count {} correct N` first", change.part));
            change_both(MovementKind::used, -change.pieces, 0);
            break;
        case Booking::correct:
            change_both(MovementKind::counted, change.pieces - on_hand, 0);
            break;
    }
    if (on_hand + movement.on_hand_change > most_pieces || on_order + movement.on_order_change > most_pieces)
        refuse(change, fmt::format("that would be more than {} pieces", most_pieces), "check the number");
    return movement;
}

class Booker {
  public:
    Booker(Catalog::State& state, const StockChange& change, const std::string& today)
        : database_(state.database), change_(change), today_(today) {}

    StockReport run() {
        StockReport report;
        report.row = part();
        if (change_.job) read_job_row(database_, *change_.job);
        const auto terms = terms_of_part(database_, change_.part);
        report.before = terms.value_or(Terms{});
        const StockMovement movement = movement_of(change_, report.before, today_);
        const bool first_count = change_.booking == Booking::correct && !report.before.on_hand;
        if (movement.on_hand_change != 0 || movement.on_order_change != 0 || first_count) {
            Added added;
            move_stock(database_, movement, added);
            remember_action(database_, today_,
                            fmt::format("shelf count {} {} {}", change_.part, word_of(change_.booking), change_.pieces),
                            added);
            report.movement = movement;
        }
        report.row.terms = terms_of_part(database_, change_.part).value_or(Terms{});
        return report;
    }

  private:
    StockRow part() {
        for (auto& row : all_parts(database_))
            if (row.part == change_.part) return row;
        throw CatalogError(CatalogTrouble::not_found, fmt::format("there is no part {}", change_.part),
                           "tapbook shelf count lists them");
    }

    sqlite::Database& database_;
    const StockChange& change_;
    const std::string& today_;
};

}  // namespace

std::variant<int, PiecesRefusal> read_pieces(std::string_view typed, Booking booking) {
    const std::int64_t least = booking == Booking::correct ? 0 : 1;
    const std::string range = fmt::format("write a whole number, {} to {}", least, most_pieces);
    const auto read = scaled(typed, 0);
    if (const auto* not_one = std::get_if<NotANumber>(&read))
        return PiecesRefusal{fmt::format("\"{}\" {}", shown(typed), not_one->reason), range};
    const auto pieces = std::get<std::int64_t>(read);
    if (pieces < least || pieces > most_pieces)
        return PiecesRefusal{fmt::format("{} pieces cannot be booked", shown(typed)), range};
    return static_cast<int>(pieces);
}

std::vector<StockRow> Catalog::stock() const {
    try {
        const auto terms = all_terms(state_->database);
        auto movements = all_movements(state_->database);
        std::vector<StockRow> rows;
        for (auto& row : all_parts(state_->database)) {
            const auto own = terms.find(row.part);
            if (own != terms.end()) row.terms = own->second;
            const bool is_wanted =
                row.is_retired ? lies_there(row.terms) : own != terms.end() || row.kind == EntryKind::converter;
            if (!is_wanted) continue;
            if (const auto moved = movements.find(row.part); moved != movements.end())
                row.movements = std::move(moved->second);
            rows.push_back(std::move(row));
        }
        return rows;
    } catch (const sqlite::Error& error) {
        throw_catalog_error(error, state_->file);
    }
}

StockReport Catalog::book_stock(const StockChange& change, const std::string& today, bool dry_run) {
    return in_one_transaction(
        *state_, [&] { return Booker(*state_, change, today).run(); }, [&](const StockReport&) { return !dry_run; });
}

}  // namespace tapbook
