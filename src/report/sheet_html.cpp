// The page from its parts, with the style and the script that travel inside the program.
#include "report/sheet_html.h"

#include <fmt/format.h>

#include "embedded.h"

namespace tapbook {
namespace {

std::string_view shipped(std::string_view name) {
    for (const auto& text : embedded_texts())
        if (text.name == name) return text.text;
    return {};
}

// Paper, and what stands at the edge of every page of it.
std::string page_rules(const Sheet& sheet, SheetPaper paper) {
    const std::string_view size = paper == SheetPaper::letter ? "letter" : "A4";
    const std::string car = fmt::format("{}  {}", sheet.plan.job.code, car_words(sheet));
    const std::string made = fmt::format("{}  {}", ledger_words(sheet), sheet.date);
    return fmt::format(
        "@page {{ size: {0} portrait; margin: 7mm 9mm 9mm;\n"
        "  @top-left {{ content: {1}; }} @bottom-left {{ content: {2}; }}\n"
        "  @bottom-right {{ content: \"page \" counter(page) \" of \" counter(pages); }} }}\n"
        "@page :first {{ @top-left {{ content: none; }} }}\n"
        "@page drawing {{ size: {0} landscape; }}\n",
        size, css_string(car), css_string(made));
}

void write_page_head(const Sheet& sheet, SheetPaper paper, Html& page) {
    page.begin("head").line();
    page.empty("meta", {{"charset", "utf-8"}}).line();
    page.empty("meta", {{"name", "viewport"}, {"content", "width=device-width, initial-scale=1"}}).line();
    page.element("title", fmt::format("{} {}", sheet.plan.job.code, car_words(sheet))).line();
    page.begin("style").line().raw(page_rules(sheet, paper)).raw(shipped("sheet/sheet.css")).end().line();
    page.end().line();
}

// Hidden until the script shows it: without script the boxes are lines to write on.
void write_saving(Html& page) {
    page.begin("div", {{"id", "save"}, {"hidden", "hidden"}});
    page.element("button", "Save readings", {{"type", "button"}});
    page.element("p", "Type into the boxes, then save the file.", {{"role", "status"}});
    page.end().line();
    page.begin("script").line().raw(shipped("sheet/sheet.js")).end().line();
}

}  // namespace

std::string sheet_html(const Sheet& sheet, SheetPaper paper) {
    Html page;
    page.raw("<!DOCTYPE html>\n").begin("html", {{"lang", "en"}}).line();
    write_page_head(sheet, paper, page);
    page.begin("body", {{"class", word_of(setting_of(sheet, paper))}, {"data-code", sheet.plan.job.code}}).line();
    write_head(sheet, page);
    page.begin("main").line();
    write_facts(sheet, page);
    write_steps(sheet, page);
    write_circuits(sheet, page);
    write_chain(sheet, page);
    write_lists(sheet, page);
    write_advice(sheet, page);
    page.end().line();
    write_foot(sheet, page);
    write_drawing(sheet, paper, page);
    if (!sheet.plan.job.code.empty()) write_saving(page);
    page.end().line().end().line();
    return page.take();
}

}  // namespace tapbook
