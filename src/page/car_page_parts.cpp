// The parts of a car's page: systems, places, one block for each pair, switched power under its own place.
#include "page/car_page_parts.h"

#include <fmt/format.h>

namespace tapbook {
namespace {

// To the note's form and to the sum behind the grade. `tap` lies below the vehicle; `kind` is "" or "system".
void write_note_ways(Html& html, const TapsAnswer& answer, std::string_view tap, const std::string& kind, Grade grade) {
    const std::string car = encoded_path(answer.car.vehicle.path), at(tap);
    const std::string year = answer.car.year ? std::to_string(*answer.car.year) : std::string();
    html.begin("p", {{"class", "ways"}});
    write_link(html, address("/note/" + car, {{"tap", at}, {"kind", kind}, {"year", year}}), "Note what you found",
               "more");
    write_link(html, address("/why/" + car, {{"tap", at}, {"year", year}}), fmt::format("Why {}?", word_of(grade)),
               "more");
    html.end();
}

void write_system(Html& html, const TapsAnswer& answer, const SystemFacts& system, bool is_chosen) {
    html.begin("li", {{"class", is_chosen ? "system chosen" : "system"}});
    html.begin("a", {{"href", car_address(answer.car.vehicle.path, answer.car.year, system.code)}, {"class", "row"}});
    html.element("code", system.code).text(" ").element("b", system.entry.name).end();
    html.element("p", premium_words(system), {{"class", "quiet"}});
    for (const auto& tell : system.entry.tells) write_fact(html, "tell", tell);
    write_note_ways(html, answer, system.code, "system", system.premium.grade);
    html.end().line();
}

// Remarks that only some taps have, one line each.
void write_remarks(Html& html, const TapFacts& facts) {
    if (!facts.tap.plug_in_lead.empty())
        write_fact(html, "lead", fmt::format("{} plugs in between, nothing is stripped", facts.tap.plug_in_lead));
    if (facts.tap.reachable_in_place == true) write_fact(html, "access", "reachable without taking the part out");
    write_fact(html, "carries", facts.circuit.carries);
    write_fact(html, "remark", facts.circuit.remarks);
    write_fact(html, "remark", facts.tap.remarks);
    write_fact(html, "also", other_side_words(facts.pair));
    if (facts.concurrent_edits > 0) write_fact(html, "entry", "edited twice at once; save it again to settle it");
}

void write_tap_head(Html& html, const TapsAnswer& answer, const TapFacts& facts, Grade grade) {
    html.begin("h3").text(circuit_words(facts));
    if (answer.car.systems.size() != 1) html.text(" ").element("code", facts.system);
    html.end();
    write_grade(html, grade);
}

void write_power(Html& html, const TapsAnswer& answer, const TapFacts& facts) {
    html.begin("article", {{"class", "tap power"}}).line().begin("div", {{"class", "head"}});
    write_tap_head(html, answer, facts, facts.switched.circuit.grade);
    html.end().line();
    write_conductors(conductor_of(facts.switched), html);
    html.element("p", switched_line(facts.switched), {{"class", "line"}}).line();
    if (const Terminal* terminal = diagram_terminal(facts))
        write_fact(html, "diagram",
                   fmt::format("usually terminal {} there (DIN 72552: {})", terminal->number, terminal->meaning));
    if (facts.circuit.fuse) write_fact(html, "fuse", fmt::format("{:g} A", facts.circuit.fuse->in(amps)));
    write_fact(html, "feeds", facts.circuit.carries);
    write_fact(html, "connector", connector_words(facts));
    if (facts.switched.altered)
        write_caution("earlier work by others was found here", "trace the wire before you use it", html);
    write_cautions(html, facts.tap.hazards);
    write_note_ways(html, answer, path_tail(facts.code, vehicle_depth), {}, facts.switched.circuit.grade);
    html.end().line();
}

void write_off(Html& html, const std::vector<std::string>& panels) {
    if (panels.empty()) return;
    html.begin("div", {{"class", "off"}}).element("span", "off comes", {{"class", "of"}}).begin("ol");
    for (const auto& panel : panels) html.element("li", panel);
    html.end().end().line();
}

}  // namespace

void write_systems(Html& html, const TapsAnswer& answer, std::string_view chosen) {
    const auto& systems = answer.car.systems;
    html.begin("section", {{"class", "systems"}}).element("h2", "Sound system");
    if (systems.size() > 1)
        html.element("p",
                     fmt::format("This car came with {} sound systems. Find out which one it is.", systems.size()));
    html.begin("ul", {{"class", "plain"}}).line();
    for (const auto& system : systems) write_system(html, answer, system, system.code == chosen);
    html.end();
    if (!chosen.empty()) {
        html.begin("p", {{"class", "ways"}});
        write_link(html, car_address(answer.car.vehicle.path, answer.car.year), "Show all systems", "more");
        html.end();
    }
    html.end().line();
}

void write_cautions(Html& html, const std::vector<Hazard>& hazards) {
    for (const Hazard hazard : hazards) {
        const auto text = hazard_text(hazard);
        write_caution(text.title, text.caution, html);
    }
}

void write_signal(Html& html, const TapSignal& signal, std::string_view drive) {
    const auto& clean = signal.clean;
    html.begin("p", {{"class", "volts"}});
    const std::pair<std::string_view, std::optional<RmsVolts>> ends[] = {
        {"low", clean.low}, {"likely", clean.likely}, {"high", clean.high}};
    for (const auto& [name, volts] : ends) {
        html.begin("span", {{"class", name == "likely" ? "volt likely" : "volt"}});
        html.element("b", volts ? fmt::format("{:.1f} V", volts->in(rms_volts)) : std::string("?"));
        html.text(" ").element("small", name).end().text(" ");
    }
    html.end();
    html.element("p", fmt::format("V RMS clean across the pair, {}; drive {}", spaced(word_of(signal.source)), drive),
                 {{"class", "quiet"}});
}

void write_pair_tap(Html& html, const TapsAnswer& answer, const TapAnswer& tap) {
    const TapFacts& facts = tap.facts;
    html.begin("article", {{"class", "tap"}, {"id", path_tail(facts.code, vehicle_depth)}}).line();
    html.begin("div", {{"class", "head"}});
    write_tap_head(html, answer, facts, facts.pair.pair.grade);
    html.end().line();
    write_conductors(conductors_of(facts.pair), html);
    if (const auto remark = conductors_remark(facts.pair); !remark.empty())
        html.element("p", remark, {{"class", "quiet"}});
    const bool is_digital = facts.circuit.output.drive == Drive::digital && !facts.pair.drive.value;
    if (is_digital)
        html.element("p", "digital: there is no analogue signal to tap here", {{"class", "line"}});
    else
        write_signal(html, tap.signal, drive_words(facts));
    html.element("p", standing_line(facts.pair), {{"class", "line"}});
    if (facts.pair.pair.grade != Grade::blank) html.element("p", polarity_line(facts.pair), {{"class", "line"}});
    write_fact(html, "connector", connector_words(facts));
    write_remarks(html, facts);
    if (facts.pair.altered)
        write_caution("earlier work by others was found here",
                      "compare with the factory harness before you trust a colour", html);
    for (const auto& words : tap.confusable) write_caution("easily confused", words, html);
    for (const auto& caution : tap.cautions) write_caution(caution.title, caution.text, html);
    write_note_ways(html, answer, path_tail(facts.code, vehicle_depth), {}, facts.pair.pair.grade);
    html.end().line();
}

std::size_t write_place(Page& page, const TapsAnswer& answer, const PlaceAnswer& place, std::size_t first) {
    Html& html = page.html();
    html.begin("section", {{"class", "place"}}).begin("h2").text(upper_first(place.place));
    if (place.minutes)
        html.text(" ").element("span", fmt::format("about {} min", *place.minutes), {{"class", "minutes"}});
    html.end().line();
    write_off(html, place.panels);
    for (const auto& caution : place.cautions) write_caution(caution.title, caution.text, html);
    const std::size_t taps = place.pairs.size() + place.power.size();
    std::size_t number = first;
    for (; number < taps && (number == first || !page.is_full()); ++number) {
        if (number < place.pairs.size())
            write_pair_tap(html, answer, place.pairs[number]);
        else
            write_power(html, answer, place.power[number - place.pairs.size()]);
    }
    for (const auto& other : place.others)
        write_fact(html, "also here",
                   fmt::format("{} ({}), not a tap", spaced(word_of(other.circuit.role)),
                               path_tail(other.code, vehicle_depth)));
    html.end().line();
    return number - first;
}

}  // namespace tapbook
