// Small pieces that several parts of the page are made of.
#include <fmt/format.h>

#include "report/sheet_html.h"
#include "report/swatch_svg.h"

namespace tapbook {
namespace {

constexpr std::string_view triangle =
    "<svg class=\"sign\" width=\"12\" height=\"11\" viewBox=\"0 0 12 11\" "
    "role=\"img\" aria-label=\"Caution\"><path d=\"M6 0.3L11.8 10.7H0.2z\" fill=\"#22272e\"/><path d=\"M6 "
    "3.6v3.6M6 8.2v1.3\" fill=\"none\" stroke=\"#ffffff\" stroke-width=\"1.4\"/></svg>";

std::string_view spoken(std::string_view sign) {
    return sign == "+" ? "plus" : sign == "-" ? "minus" : "not settled";
}

}  // namespace

void write_conductors(const std::vector<SheetConductor>& conductors, Html& page) {
    page.begin("p", {{"class", "conductors"}});
    for (const auto& conductor : conductors) {
        page.begin("span", {{"class", "conductor"}});
        if (!conductor.sign.empty())
            page.element("b", conductor.sign == "-" ? "\u2212" : conductor.sign,
                         {{"class", "pole"}, {"title", spoken(conductor.sign)}});
        page.raw(swatch_svg(conductor.colour));
        if (conductor.colour)
            page.element("b", code(*conductor.colour), {{"class", "wire"}}).text(" " + words(*conductor.colour));
        else
            page.element("b", conductor.instead, {{"class", "wire"}});
        if (!conductor.cavity.empty()) page.text(", cavity " + conductor.cavity);
        if (!conductor.mark.empty()) page.text(", with " + conductor.mark);
        page.end().text(" ");
    }
    page.end();
}

void write_caution(std::string_view title, std::string_view text, Html& page) {
    page.begin("p", {{"class", "caution"}}).raw(triangle);
    page.begin("span").element("b", fmt::format("{}:", title)).text(fmt::format(" {}", text)).end();
    page.end();
}

void write_box(const Sheet& sheet, std::string_view path, const ReadingBox& box, Html& page) {
    const bool is_number = box.kind == FieldKind::decimal || box.kind == FieldKind::whole;
    page.begin("label", {{"class", is_number ? "box" : "box wide"}});
    page.element("span", box.label, {{"class", "name"}});
    page.empty("input", {{"type", "text"},
                         {"inputmode", is_number ? "decimal" : "text"},
                         {"autocomplete", "off"},
                         {"data-at", place_in_job(path)},
                         {"data-field", box.field},
                         {"data-kind", is_number ? "number" : "text"},
                         {"value", read_before(sheet, path, box)}});
    page.element("span", box.unit, {{"class", "unit"}});
    page.end();
}

}  // namespace tapbook
