// The facts of the plan, then the steps by power phase: tick box, cautions and reading boxes at each.
#include <fmt/format.h>

#include "report/sheet_html.h"

namespace tapbook {
namespace {

void write_fact(const SheetFact& fact, Html& page) {
    page.begin("div", {{"class", "fact"}}).element("dt", fact.label).begin("dd");
    page.begin("p", {{"class", "value"}}).text(fact.value);
    if (fact.verdict)
        page.text(" ").element("b", word_of(*fact.verdict),
                               {{"class", fmt::format("verdict {}", word_of(*fact.verdict))}});
    page.end();
    if (!fact.conductors.empty()) write_conductors(fact.conductors, page);
    for (const auto& line : fact.rests_on) page.element("p", line, {{"class", "rests"}});
    page.end().end().line();
}

void write_reading(const Sheet& sheet, const PredictedReading& reading, Html& page) {
    page.begin("div", {{"class", "reading"}});
    page.begin("p").element("b", range_words(reading.range), {{"class", "expected"}});
    page.text(fmt::format(" {}{}", reading.what, reading.why.empty() ? "" : fmt::format(" ({})", reading.why))).end();
    write_box(sheet, read_at(sheet, reading), box_of(reading), page);
    page.end();
}

bool reads_the_tap(const Sheet& sheet, const PlanStep& step) {
    return !step.readings.empty() && read_at(sheet, step.readings.back()) == sheet.plan.plan.tap;
}

void write_step(const Sheet& sheet, const PlanStep& step, int number, Html& page) {
    page.begin("li").begin("label", {{"class", "do"}});
    page.empty("input", {{"type", "checkbox"}});
    page.element("b", std::to_string(number), {{"class", "number"}});
    page.element("span", step.what).end();
    for (const auto& caution : step.cautions) write_caution(caution.title, caution.text, page);
    if (reads_the_tap(sheet, step)) {
        page.begin("div", {{"class", "boxes"}});
        for (const auto& box : colour_boxes()) write_box(sheet, sheet.plan.plan.tap, box, page);
        page.end();
    }
    for (const auto& reading : step.readings) write_reading(sheet, reading, page);
    page.end().line();
}

// "A live check" is the letter and the words.
void write_phase(PowerPhase phase, Html& page) {
    const std::string_view word = word_of(phase);
    page.begin("h3").element("span", word.substr(0, 1), {{"class", "letter"}}).text(word.substr(1)).end();
}

}  // namespace

void write_facts(const Sheet& sheet, Html& page) {
    const auto facts = sheet_facts(sheet);
    if (facts.empty()) return;
    page.begin("section", {{"class", "plan"}}).element("h2", "Plan").line().begin("dl").line();
    for (const auto& fact : facts) write_fact(fact, page);
    page.end().end().line();
}

void write_steps(const Sheet& sheet, Html& page) {
    const auto& steps = sheet.plan.steps;
    if (steps.empty()) return;
    page.begin("section", {{"class", "work"}}).element("h2", "Steps").line().begin("div", {{"class", "phases"}}).line();
    for (std::size_t i = 0; i < steps.size(); ++i) {
        if (i == 0 || steps[i - 1].phase != steps[i].phase) {
            if (i > 0) page.end().end();
            page.begin("section", {{"class", "phase"}});
            write_phase(steps[i].phase, page);
            page.begin("ol").line();
        }
        write_step(sheet, steps[i], static_cast<int>(i) + 1, page);
    }
    page.end().end().end().end().line();
}

}  // namespace tapbook
