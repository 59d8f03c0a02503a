// How does the job go onto paper? The drawing on a page, and the sheet: a file that is whole in itself.
#include <fmt/format.h>

#include "page/job_parts.h"
#include "page/pages.h"

namespace tapbook {
namespace {

Sheet sheet_at(PageDesk& desk, const Catalog& catalog, const PageRequest& request) {
    const AskedJob asked = asked_job(catalog, request);
    if (asked.job.plan.tap.empty())
        throw PageRefused(404, fmt::format("job {} has no plan yet: no tap is chosen", asked.job.number),
                          "choose the plan first");
    try {
        Sheet sheet = sheet_of_job(catalog, plan_of_job(desk, catalog, asked), asked.jobs, request.today);
        sheet.address = desk.base_address();
        return sheet;
    } catch (const PlanRefused& refused) {
        throw PageRefused(409, refused.what(), "choose the plan anew");
    }
}

// What stands in the only element of this name. REQUIRES: nothing of others is markup, so that there is but one.
std::string inside(const std::string& html, std::string_view element) {
    const std::string begin = fmt::format("<{}>", element), end = fmt::format("</{}>", element);
    const auto from = html.find(begin);
    const auto to = html.find(end, from);
    if (from == std::string::npos || to == std::string::npos) return {};
    return html.substr(from + begin.size(), to - from - begin.size());
}

PageAnswer sheet_page(PageDesk& desk, const PageRequest& request) {
    const bool is_letter = request.query.text("paper").value_or("") == word_of(SheetPaper::letter);
    PageAnswer answer;
    answer.body = sheet_html(sheet_at(desk, desk.catalog(), request), is_letter ? SheetPaper::letter : SheetPaper::a4);
    answer.inline_texts = {inside(answer.body, "style"), inside(answer.body, "script")};
    return answer;
}

PageAnswer drawing_page(PageDesk& desk, const PageRequest& request) {
    const Catalog& catalog = desk.catalog();
    const Sheet sheet = sheet_at(desk, catalog, request);
    Page page(request, catalog.is_practice(), "Drawing", PagePart::jobs);
    Html& html = page.html();
    write_job_head(html, catalog, sheet.plan.job, "Drawing");
    html.begin("p", {{"class", "ways"}});
    write_link(html, job_address(sheet.plan.job.code, "sheet"), "Sheet, A4", "way");
    write_link(html, address(job_address(sheet.plan.job.code, "sheet"), {{"paper", "letter"}}), "Sheet, Letter", "way");
    html.end().line();
    html.begin("div",
               {{"class", "drawing"}, {"tabindex", "0"}, {"role", "region"}, {"aria-label", "Drawing of the install"}});
    html.raw(install_drawing_svg(drawing_of(sheet), DrawingPage::a4)).end().line();
    for (const auto& conductor : sheet.plan.conductors)
        write_fact(
            html, conductor.use,
            fmt::format("{}: {}{}", place_in_job(conductor.tap),
                        conductor.colour ? fmt::format("{} {}", code(*conductor.colour), words(*conductor.colour))
                                         : std::string("colour not proved"),
                        conductor.cavity.empty() ? "" : ", cavity " + conductor.cavity));
    return page.answer();
}

constexpr Route list[] = {{PageMethod::get, "/job/{}/sheet", RouteFor::reader, sheet_page},
                          {PageMethod::get, "/job/{}/drawing", RouteFor::reader, drawing_page}};

}  // namespace

std::span<const Route> sheet_routes() {
    return list;
}

}  // namespace tapbook
