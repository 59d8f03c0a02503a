// See small_parts_words.h.
#include "report/small_parts_words.h"

#include <fmt/format.h>

#include <algorithm>

#include "report/shelf_words.h"

namespace tapbook {

static_assert(table_is_sound<UseKnownBy>());

namespace {

std::string counted(int pieces, const Reorder& part) {
    return part.unit.empty() ? fmt::format("{}", pieces) : fmt::format("{} {}", pieces, part.unit);
}

std::string known_words(UseKnownBy known_by) {
    switch (known_by) {
        case UseKnownBy::stated:
            return "as stated";
        case UseKnownBy::plans:
            return "by the plans";
        case UseKnownBy::bookings:
            return "as booked";
        case UseKnownBy::nothing:
            break;
    }
    return {};
}

}  // namespace

bool is_ordered(const Reorder& part) {
    return part.order > 0;
}

std::string small_part_words(const Reorder& part) {
    std::string text = fmt::format("{} on the shelf", counted(part.on_hand, part));
    if (part.on_order > 0) text += fmt::format(", {} on order", counted(part.on_order, part));
    if (part.known_by == UseKnownBy::nothing)
        return text + "; no use is known yet: per_job in the stock file says what a job takes";
    text += fmt::format("; order again at {}; {:.1f}{} used a year, {}; comes in {} day{}",
                        counted(part.reorder_at, part), part.per_year, part.unit.empty() ? "" : " " + part.unit,
                        known_words(part.known_by), part.lead_days, part.lead_days == 1 ? "" : "s");
    if (part.order > 0 && part.pack > 1)
        text += fmt::format("; {} pack{} of {}", part.order / part.pack, part.order == part.pack ? "" : "s",
                            counted(part.pack, part));
    if (part.order > 0)
        text +=
            part.order_cents ? fmt::format("; {}", cents_words(*part.order_cents)) : std::string("; cost not known");
    return text;
}

std::string small_orders_words(const ShelfPlan& plan) {
    return std::ranges::any_of(plan.small_parts, is_ordered)
               ? fmt::format("Small parts to order today, {}:", cents_words(plan.small_order_cents))
               : std::string("Of small parts there are enough.");
}

std::vector<Reorder> ordered_first(const ShelfPlan& plan) {
    std::vector<Reorder> parts = plan.small_parts;
    std::ranges::stable_partition(parts, is_ordered);
    return parts;
}

}  // namespace tapbook
