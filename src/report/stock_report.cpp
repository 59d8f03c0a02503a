// The list is for counting: one line for each part, what was last booked beside it.
#include "report/stock_report.h"

#include <fmt/format.h>

namespace tapbook {
namespace {

std::string pieces_words(const std::optional<int>& pieces) {
    return pieces ? fmt::format("{}", *pieces) : std::string("not counted");
}

// " m" behind the count of cable.
std::string_view unit_of(const Terms& terms) {
    return terms.small && is_cable(terms.small->kind) ? " m" : "";
}

}  // namespace

std::string lying_words(const Terms& terms) {
    std::string text =
        terms.on_hand ? fmt::format("{}{} on the shelf", *terms.on_hand, unit_of(terms)) : std::string("not counted");
    if (terms.on_order.value_or(0) > 0) text += fmt::format(", {} on order", *terms.on_order);
    return text;
}

std::string movement_words(const StockMovement& movement) {
    std::string text = fmt::format("{} {}", movement.date, word_of(movement.kind));
    if (movement.on_hand_change != 0) text += fmt::format(", {:+} on the shelf", movement.on_hand_change);
    if (movement.on_order_change != 0) text += fmt::format(", {:+} on order", movement.on_order_change);
    if (movement.job) text += fmt::format(", job {}", *movement.job);
    if (!movement.words.empty()) text += fmt::format(": {}", movement.words);
    return text;
}

std::string stock_name_words(const StockRow& row) {
    const std::string name = row.maker.empty() ? row.name : fmt::format("{} {}", row.maker, row.name);
    return row.is_retired ? fmt::format("{} (no longer used)", name) : name;
}

std::string booked_words(const Terms& before, const Terms& now) {
    return fmt::format("{} -> {}{} on the shelf, {} -> {} on order", pieces_words(before.on_hand),
                       pieces_words(now.on_hand), unit_of(now), before.on_order.value_or(0), now.on_order.value_or(0));
}

namespace {

void write_movement(Json& json, const StockMovement& movement) {
    json.begin_object().member("date", movement.date).member("kind", word_of(movement.kind));
    json.key("on_hand_change").whole(movement.on_hand_change);
    json.key("on_order_change").whole(movement.on_order_change);
    json.member("job", movement.job);
    json.member("words", movement.words.empty() ? std::nullopt : std::optional(movement.words)).end_object();
}

void write_row(Json& json, const StockRow& row) {
    json.begin_object().member("part", row.part).member("maker", row.maker).member("name", row.name);
    json.member("kind", row.terms.small ? word_of(row.terms.small->kind) : word_of(row.kind))
        .key("retired")
        .flag(row.is_retired);
    json.member("on_hand", row.terms.on_hand).member("on_order", row.terms.on_order);
    json.member("lead_days", row.terms.lead_days).member("pack", row.terms.pack);
    const auto cost = row.terms.cost_cents;
    json.member_number("cost", cost ? std::optional(static_cast<double>(*cost) / 100) : std::nullopt, 2);
    json.key("movements").begin_list();
    for (const auto& movement : row.movements) write_movement(json, movement);
    json.end_list().end_object();
}

}  // namespace

std::string stock_text(std::span<const StockRow> rows, bool practice, const Screen& screen) {
    Paper paper(screen);
    paper.heading(fmt::format("On the shelf{}", practice ? "   [practice]" : ""));
    if (rows.empty()) paper.line(0, "", "No converter is known here yet: `tapbook add parts.toml` puts them in.");
    std::size_t widest = 0;
    for (const auto& row : rows) widest = std::max(widest, row.part.size());
    for (const auto& row : rows) {
        std::string text =
            row.terms.small ? fmt::format("{}: {}", row.name, lying_words(row.terms)) : lying_words(row.terms);
        if (!row.movements.empty()) text += fmt::format("; last {}", movement_words(row.movements.back()));
        paper.line(0, fmt::format("{:<{}}  ", row.part, widest), text, Weight::strong);
    }
    paper.line(0, "", "Book with `tapbook shelf count PART receive|use|correct|order|cancel N`.");
    return paper.take();
}

std::string stock_json(std::span<const StockRow> rows) {
    Json json;
    json.begin_object().key("parts").begin_list();
    for (const auto& row : rows) write_row(json, row);
    json.end_list().end_object();
    return json_answer("shelf.count", json.take());
}

std::string stock_part_text(const StockRow& row, const Screen& screen) {
    Paper paper(screen);
    paper.heading(fmt::format("{}  {}", row.part, stock_name_words(row)));
    paper.line(0, "", lying_words(row.terms));
    for (const auto& movement : row.movements) paper.line(2, "", movement_words(movement));
    if (row.movements.empty()) paper.line(2, "", "nothing was booked yet");
    return paper.take();
}

std::string stock_part_json(const StockRow& row) {
    return stock_json({&row, 1});
}

std::string booking_text(const StockReport& report, const Screen& screen) {
    Paper paper(screen);
    const Terms& now = report.row.terms;
    if (!report.movement) {
        paper.line(0, fmt::format("{}  ", report.row.part), fmt::format("{}: it was so already", lying_words(now)),
                   Weight::strong);
        return paper.take();
    }
    paper.line(0, fmt::format("{}  ", report.row.part), booked_words(report.before, now), Weight::strong);
    if (report.movement->job) paper.line(2, "job  ", fmt::format("{}", *report.movement->job));
    paper.line(0, "", report.written ? "Saved. `tapbook undo` takes it back." : "Dry run: nothing was written.");
    return paper.take();
}

std::string booking_json(const StockReport& report) {
    Json json;
    json.begin_object().member("part", report.row.part);
    json.member("on_hand_before", report.before.on_hand).member("on_order_before", report.before.on_order);
    json.member("on_hand", report.row.terms.on_hand).member("on_order", report.row.terms.on_order);
    json.key("movement");
    if (report.movement)
        write_movement(json, *report.movement);
    else
        json.null();
    json.key("written").flag(report.written).end_object();
    return json_answer("shelf.booking", json.take());
}

std::string job_stock_words(const JobStock& stock) {
    std::string text;
    for (const auto& part : stock.returned) text += fmt::format("one {} went back; ", part);
    if (stock.part.empty()) return text + "no other is planned";
    switch (stock.taking) {
        case JobTaking::taken:
            return text + fmt::format("one {} taken, {} left", stock.part, stock.on_hand);
        case JobTaking::taken_before:
            return text + fmt::format("{} was taken for this job before, {} left", stock.part, stock.on_hand);
        case JobTaking::closed_before:
            return text + fmt::format("{}: the job was closed before, nothing is taken now", stock.part);
        case JobTaking::none_there:
            return text + fmt::format(
                              "no {} lay there by the count, nothing was taken off: count them and write "
                              "`tapbook shelf count {} correct N`",
                              stock.part, stock.part);
        case JobTaking::not_counted:
            break;
    }
    return text + fmt::format("{} is not counted here", stock.part);
}

void write_job_stock(Json& json, const std::optional<JobStock>& stock) {
    json.key("shelf");
    if (!stock) {
        json.null();
        return;
    }
    json.begin_object();
    json.member("converter", stock->part.empty() ? std::nullopt : std::optional(stock->part));
    json.member("taking", word_of(stock->taking)).key("on_hand").whole(stock->on_hand);
    json.member("returned", stock->returned).end_object();
}

}  // namespace tapbook
