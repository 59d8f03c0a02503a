// Further circuits to read, each with its boxes and what is known of it; and the levels of the chain.
#include <fmt/format.h>

#include "report/sheet_chain.h"
#include "report/sheet_html.h"

namespace tapbook {
namespace {

void write_circuit(const Sheet& sheet, const TapFacts& facts, Html& page) {
    page.begin("li").begin("label", {{"class", "do"}}).empty("input", {{"type", "checkbox"}});
    page.begin("span").element("b", circuit_words(facts));
    page.text(fmt::format(" {}", place_in_job(facts.code))).end().end();
    if (carries_signal(facts.circuit.role))
        write_conductors(conductors_of(facts.pair), page);
    else if (is_power(facts.circuit.role))
        write_conductors(conductor_of(facts.switched), page);
    page.begin("div", {{"class", "boxes"}});
    for (const auto& box : boxes_of(sheet, facts)) write_box(sheet, facts.code, box, page);
    page.end();
    page.begin("div", {{"class", "rests"}});
    if (const std::string place = place_words(facts); !place.empty()) page.element("p", place);
    for (const auto& line : grade_lines(facts)) page.element("p", line);
    page.end();
    for (const Hazard hazard : facts.tap.hazards) {
        const auto text = hazard_text(hazard);
        write_caution(text.title, text.caution, page);
    }
    page.end().line();
}

std::string volts(const std::optional<RmsVolts>& volts) {
    return volts ? fmt::format("{:.1f}", volts->in(rms_volts)) : std::string("\u2013");
}

void write_stage(const ChainStage& stage, Html& page) {
    page.begin("tr").begin("th", {{"scope", "row"}}).text(stage.name);
    if (!stage.remark.empty()) page.element("small", stage.remark);
    page.end();
    for (const auto& end : {stage.volts.low, stage.volts.likely, stage.volts.high, stage.limit})
        page.element("td", volts(end), {{"class", "number"}});
    page.element("td", stage.left ? fmt::format("{:+.1f}", stage.left->in(decibels)) : std::string("\u2013"),
                 {{"class", "number left"}});
    page.begin("td", {{"class", "bars"}}).raw(chain_bar_svg(stage));
    if (stage.clips_first) page.element("b", "clips first", {{"class", "clip"}});
    page.end().end().line();
}

}  // namespace

void write_circuits(const Sheet& sheet, Html& page) {
    if (sheet.circuits.empty()) return;
    page.begin("section", {{"class", "circuits"}}).element("h2", circuits_heading(sheet)).line();
    page.begin("ol").line();
    for (const auto& facts : sheet.circuits) write_circuit(sheet, facts, page);
    page.end().end().line();
}

void write_chain(const Sheet& sheet, Html& page) {
    const auto stages = chain_stages(sheet.plan.install);
    if (stages.empty()) return;
    page.begin("section", {{"class", "chain"}}).element("h2", "Level, volts RMS").line();
    page.begin("table").begin("thead").begin("tr").element("th", "from where to where", {{"scope", "col"}});
    for (const std::string_view head : {"low", "likely", "high", "limit", "dB left"})
        page.element("th", head, {{"scope", "col"}, {"class", "number"}});
    page.begin("th", {{"scope", "col"}}).text("0.1, 1, 10 V; bar low to high, dot likely, thick line limit").end();
    page.end().end().line().begin("tbody").line();
    for (const auto& stage : stages) write_stage(stage, page);
    page.end().end().line();
    page.element("p", clip_words(sheet.plan.install), {{"class", "clips"}}).end().line();
}

}  // namespace tapbook
