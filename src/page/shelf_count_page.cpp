// How many lie on the shelf? The list for counting, to be ticked off; and for each part what was booked.
#include <fmt/format.h>

#include "page/pages.h"
#include "page/shelf_parts.h"

namespace tapbook {
namespace {

void write_row(Html& html, const StockRow& row) {
    html.begin("li").begin("a", {{"href", counted_address(row.part)}, {"class", "row"}});
    html.element("b", row.part).text(" ").element("span", stock_name_words(row), {{"class", "quiet"}}).end();
    html.begin("label", {{"class", "tick"}}).empty("input", {{"type", "checkbox"}, {"data-step", row.part}});
    html.element("span", lying_words(row.terms)).end();
    if (!row.movements.empty())
        html.element("p", fmt::format("last {}", movement_words(row.movements.back())), {{"class", "quiet"}});
    html.end().line();
}

std::size_t asked_from(const PageRequest& request) {
    const auto typed = scaled(request.query.text("from").value_or("0"), 0);
    const auto* number = std::get_if<std::int64_t>(&typed);
    return number != nullptr && *number > 0 ? static_cast<std::size_t>(*number) : 0;
}

PageAnswer count_page(PageDesk& desk, const PageRequest& request) {
    const Catalog& catalog = desk.catalog();
    const auto rows = catalog.stock();
    Page page(request, catalog.is_practice(), "Count the shelf", PagePart::shelf);
    Html& html = page.html();
    html.element("h1", "On the shelf");
    if (rows.empty()) {
        html.element("p", "No converter is known here yet: `tapbook add parts.toml` puts them in.");
        return page.answer();
    }
    html.element("p", "Tick what is as it says. What is not: press its name and write how many lie there.");
    html.element("p", "Ticks stay on this phone, for today.", {{"class", "quiet"}}).line();
    html.begin("ul", {{"class", "rows count"}, {"data-ticks", "count-" + request.today}}).line();
    std::size_t number = asked_from(request);
    for (; number < rows.size() && !page.is_full(); ++number) write_row(html, rows[number]);
    html.end().line();
    if (number < rows.size()) {
        html.begin("p", {{"class", "ways"}});
        write_link(html, address("/shelf/count", {{"from", std::to_string(number)}}),
                   fmt::format("{} further part{}", rows.size() - number, rows.size() - number == 1 ? "" : "s"), "way");
        html.end().line();
    }
    return page.answer();
}

PageAnswer part_page(PageDesk& desk, const PageRequest& request) {
    const Catalog& catalog = desk.catalog();
    CountedPart part = counted_part(catalog, request.caught.front());
    BookingForm form;
    form.booking = request.query.text("booking").value_or("");
    form.pieces = request.query.text("pieces").value_or("");
    const bool is_booked =
        !part.row.movements.empty() && request.query.text("booked") == std::to_string(part.row.movements.back().number);
    if (request.query.has("booked"))
        form.telling = {Telling::done, "Saved.",
                        is_booked ? last_booked_words(part.row) : std::string("More was booked since.")};
    form.can_undo = is_booked;
    return counted_page(catalog, request, part, form);
}

constexpr Route list[] = {{PageMethod::get, "/shelf/count", RouteFor::reader, count_page},
                          {PageMethod::get, "/shelf/count/{...}", RouteFor::reader, part_page}};

}  // namespace

std::span<const Route> shelf_count_routes() {
    return list;
}

}  // namespace tapbook
