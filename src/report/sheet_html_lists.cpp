// As it came and as it left, what differs, what must be undone; then what to keep in mind, and how long it takes.
#include <fmt/format.h>

#include "report/sheet_html.h"

namespace tapbook {
namespace {

// One of the two times: what was said, else two boxes to choose from.
void write_answer(std::string_view when, const std::vector<CheckEntry>& list, CheckItem item, Html& page) {
    page.begin("span", {{"class", "answer"}}).element("span", when, {{"class", "when"}});
    const CheckEntry* said = nullptr;
    for (const auto& entry : list)
        if (entry.item == item) said = &entry;
    if (said != nullptr)
        page.element("span", checked_words(*said), {{"class", "said"}});
    else
        page.element("span", "ok", {{"class", "choice"}}).element("span", "bad", {{"class", "choice"}});
    page.end();
}

void write_initials(std::string_view who, std::string_view said, Html& page) {
    page.begin("span", {{"class", "initials"}}).element("span", who).element("span", said, {{"class", "pen"}}).end();
}

void write_differences(const ShopJob& job, Html& page) {
    const auto different = differences(job);
    if (different.empty()) return;
    page.element("h3", "Left otherwise than it came");
    page.begin("ul", {{"class", "differences"}});
    for (const auto& difference : different) {
        page.begin("li").element("b", word_of(difference.item));
        page.text(fmt::format(" came {}; left {}", checked_words(*difference.came), checked_words(*difference.left)));
        page.end();
    }
    page.end();
}

void write_actions(const ShopJob& job, Html& page) {
    if (job.actions.empty()) return;
    page.element("h3", "Undone for a while only").begin("ul", {{"class", "actions"}});
    for (const auto& action : job.actions) {
        page.begin("li").begin("label", {{"class", "do"}});
        if (action.closed.empty())
            page.empty("input", {{"type", "checkbox"}});
        else
            page.empty("input", {{"type", "checkbox"}, {"checked", "checked"}});
        page.element("span", action.closed.empty() ? fmt::format("{}: put back", action.words)
                                                   : fmt::format("{}: put back {}", action.words, action.closed));
        page.end().end();
    }
    page.end();
}

}  // namespace

void write_lists(const Sheet& sheet, Html& page) {
    const ShopJob& job = sheet.plan.job;
    page.begin("section", {{"class", "lists"}}).element("h2", "The car as it came and as it left").line();
    page.begin("ul", {{"class", "checks"}}).line();
    for (const auto& named : words_of<CheckItem>()) {
        page.begin("li").element("b", spaced(named.word)).text(" ");
        page.element("small", check_question(named.value));
        write_answer("came", job.came, named.value, page);
        write_answer("left", job.left, named.value, page);
        page.end().line();
    }
    page.end().line();
    page.begin("p", {{"class", "sign-off"}});
    write_initials("customer, before work", job.agreed, page);
    write_initials("customer, as it left", "", page);
    page.end().line();
    write_differences(job, page);
    write_actions(job, page);
    page.end().line();
}

void write_advice(const Sheet& sheet, Html& page) {
    const auto list = recommendations(sheet);
    const auto times = time_lines(sheet);
    if (list.empty() && times.empty()) return;
    page.begin("section", {{"class", "advice"}}).line();
    if (!list.empty()) {
        page.begin("div").element("h2", "Keep in mind").begin("ul").line();
        for (const auto& one : list) {
            page.begin("li").element("b", word_of(one.effect),
                                     {{"class", fmt::format("effect {}", word_of(one.effect))}});
            page.text(fmt::format(" {}: {}", one.about, one.says)).end().line();
        }
        page.end().end();
    }
    if (!times.empty()) {
        page.begin("div").element("h2", "Time").begin("ul");
        for (const auto& line : times) page.element("li", line);
        page.end().end();
    }
    page.end().line();
}

void write_drawing(const Sheet& sheet, SheetPaper paper, Html& page) {
    if (!has_plan(sheet)) return;
    page.begin("section", {{"class", "drawing"}}).line();
    page.raw(
        install_drawing_svg(drawing_of(sheet), paper == SheetPaper::letter ? DrawingPage::letter : DrawingPage::a4));
    page.end().line();
}

}  // namespace tapbook
