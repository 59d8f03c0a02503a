// How did the shelf come to hold what it holds, and what is booked on it? Kept truth of this shop, never exchanged.
// Plain values: no store behind them.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "catalog/batch.h"

namespace tapbook {

// Why the numbers of a part changed.
enum class MovementKind {
    opening,    // lay there before movements were booked
    filed,      // a stock file said so
    ordered,    // more are on their way
    cancelled,  // fewer are
    received,   // came in
    used,       // taken by hand
    installed,  // taken by closing a job
    returned,   // given back by closing the job again with another part
    counted,    // somebody counted
    undone      // an earlier action was undone
};
template <>
struct NamedValues<MovementKind> {
    static constexpr Named<MovementKind> all[] = {
        {MovementKind::opening, "opening"},     {MovementKind::filed, "filed"},
        {MovementKind::ordered, "ordered"},     {MovementKind::cancelled, "cancelled"},
        {MovementKind::received, "received"},   {MovementKind::used, "used"},
        {MovementKind::installed, "installed"}, {MovementKind::returned, "returned"},
        {MovementKind::counted, "counted"},     {MovementKind::undone, "undone"}};
};
static_assert(table_is_sound<MovementKind>());

struct StockMovement {
    int number = 0;
    std::string part;
    MovementKind kind = MovementKind::counted;
    int on_hand_change = 0, on_order_change = 0;
    std::string date;
    std::optional<int> job;
    bool by_closing = false;  // closing the job booked it, or it undoes what closing booked
    std::string words;
};

// What can be booked by hand.
enum class Booking { order, cancel, receive, use, correct };
template <>
struct NamedValues<Booking> {
    static constexpr Named<Booking> all[] = {{Booking::order, "order"},
                                             {Booking::cancel, "cancel"},
                                             {Booking::receive, "receive"},
                                             {Booking::use, "use"},
                                             {Booking::correct, "correct"}};
};
static_assert(table_is_sound<Booking>());

struct StockChange {
    std::string part;
    Booking booking = Booking::correct;
    int pieces = 0;          // how many; of correct: how many lie there
    std::optional<int> job;  // of use: the job they went into
    std::string words;
};

// At most so many of one part lie there, are on order, or are booked at once.
inline constexpr int most_pieces = 100'000;

// How many pieces were typed, for a booking of this kind; else why they cannot be booked and what to write.
struct PiecesRefusal {
    std::string message, hint;
};
std::variant<int, PiecesRefusal> read_pieces(std::string_view typed, Booking booking);

// One part as it lies on the shelf. A small part has its name here too, no maker, and terms.small.
struct StockRow {
    std::string part, maker, name;
    EntryKind kind = EntryKind::converter;
    bool is_retired = false;
    Terms terms;
    std::vector<StockMovement> movements;  // oldest first
};

struct StockReport {
    StockRow row;                           // as it is afterwards
    Terms before;                           // as it was
    std::optional<StockMovement> movement;  // absent: it was so already
    bool written = false;
};

// What closing a job did to the shelf.
enum class JobTaking { taken, taken_before, closed_before, none_there, not_counted };
template <>
struct NamedValues<JobTaking> {
    static constexpr Named<JobTaking> all[] = {{JobTaking::taken, "taken"},
                                               {JobTaking::taken_before, "taken before"},
                                               {JobTaking::closed_before, "closed before"},
                                               {JobTaking::none_there, "none there"},
                                               {JobTaking::not_counted, "not counted"}};
};
static_assert(table_is_sound<JobTaking>());

struct JobStock {
    std::string part;
    JobTaking taking = JobTaking::taken;
    int on_hand = 0;                    // afterwards
    std::vector<std::string> returned;  // parts that an earlier closing took and this one gave back
};

}  // namespace tapbook
