// Parts that are to be ordered stand before those of which there are enough; each says from where its use is known.
#include "report/shelf_words.h"

#include <fmt/format.h>

#include <algorithm>

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

std::string why_words(const Reorder& part) {
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
            part.order_cents ? fmt::format("; {}", money_words(*part.order_cents)) : std::string("; cost not known");
    return text;
}

void print_part(Paper& paper, const Reorder& part) {
    paper.line(2, fmt::format("{:>3} x {:<24} ", part.order, part.label), why_words(part), Weight::strong);
}

}  // namespace

std::string percent_words(double share) {
    return fmt::format("{:.1f} %", share * 100);
}

std::string jobs_words(double jobs) {
    return fmt::format("{:.1f} job{} a year", jobs, fmt::format("{:.1f}", jobs) == "1.0" ? "" : "s");
}

std::string money_words(std::int64_t cents) {
    return fmt::format("{}.{:02}", cents / 100, cents % 100);
}

void print_small_parts(Paper& paper, const ShelfPlan& plan) {
    if (plan.small_parts.empty()) return;
    const auto is_ordered = [](const Reorder& part) { return part.order > 0; };
    paper.line(0, "",
               std::ranges::any_of(plan.small_parts, is_ordered)
                   ? fmt::format("Small parts to order today, {}:", money_words(plan.small_order_cents))
                   : std::string("Of small parts there are enough:"));
    for (const auto& part : plan.small_parts)
        if (is_ordered(part)) print_part(paper, part);
    for (const auto& part : plan.small_parts)
        if (!is_ordered(part)) print_part(paper, part);
}

}  // namespace tapbook
