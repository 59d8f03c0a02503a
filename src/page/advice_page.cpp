// Which converter fits this tap, and why do the others not? The choice of amplifier and tap, the tap with its volts,
// then every converter best first with its verdict and all its reasons.
#include <fmt/format.h>

#include <algorithm>

#include "page/car_page_parts.h"
#include "page/pages.h"
#include "page/part_choice.h"

namespace tapbook {
namespace {

void write_finding(Html& html, const Finding& finding) {
    const bool is_source = finding.basis != "physics" && finding.basis != "common practice";
    html.begin("div", {{"class", "finding"}}).element("b", effect_words(finding.effect)).begin("div");
    html.text(is_source ? fmt::format("{} ({})", finding.says, finding.basis) : finding.says);
    std::string numbers;
    for (const auto& compared : finding.compared)
        numbers += fmt::format("{}{} = {}", numbers.empty() ? "" : ", ", compared.column, compared.value);
    if (!numbers.empty()) html.element("small", fmt::format("{}: {}", finding.rule, numbers));
    html.end().end().line();
}

// What decides stands open; every other reason behind "all reasons".
bool is_deciding(const JudgedCandidate& part, const Finding& finding) {
    if (part.verdict == Verdict::no) return finding.effect == Effect::stop;
    return finding.effect == Effect::stop || finding.effect == Effect::care;
}

void write_candidate(Html& html, const Advice& advice, const JudgedCandidate& part) {
    const bool is_best = advice.best == part.converter;
    html.begin("article", {{"class", is_best ? "card best" : "card"}}).begin("div", {{"class", "head"}});
    html.element("h3", part.topology == Topology::direct ? "The amplifier's own speaker-level input"
                                                         : fmt::format("{} {}", part.maker, part.name));
    write_verdict(html, part.verdict);
    html.end();
    if (is_best) html.element("p", "best of those that were judged", {{"class", "quiet"}});
    html.element("p", fmt::format("{}; {}", spaced(word_of(part.topology)), chain_words(advice, part)),
                 {{"class", "line"}});
    int others = 0;
    for (const auto& finding : part.findings) {
        if (is_said_with_tap(advice, finding)) continue;
        if (is_deciding(part, finding))
            write_finding(html, finding);
        else
            ++others;
    }
    if (others > 0) {
        html.begin("details").element("summary",
                                      others == 1 ? "One more reason" : fmt::format("{} more reasons", others));
        for (const auto& finding : part.findings)
            if (!is_said_with_tap(advice, finding) && !is_deciding(part, finding)) write_finding(html, finding);
        html.end();
    }
    html.end().line();
}

void write_tap(Html& html, const Advice& advice) {
    const TapFacts& facts = advice.tap.tap;
    html.begin("section", {{"class", "card"}}).begin("div", {{"class", "head"}});
    html.element("h2", fmt::format("Tap: {}", circuit_words(facts)));
    write_grade(html, facts.pair.pair.grade);
    html.end();
    html.element("p", place_words(facts));
    write_conductors(conductors_of(facts.pair), html);
    write_signal(html, advice.tap.signal, drive_words(facts));
    if (advice.tap.signal.clipped.high)
        write_fact(
            html, "clipped",
            fmt::format("up to {}: to be survived, not to be used", volts_words(advice.tap.signal.clipped.high)));
    html.element("p", standing_line(facts.pair), {{"class", "line"}});
    if (facts.pair.pair.grade != Grade::blank) html.element("p", polarity_line(facts.pair), {{"class", "line"}});
    for (const auto& finding : advice.tap.findings) write_finding(html, finding);
    write_cautions(html, facts.tap.hazards);
    html.end().line();
}

FormChoices tap_choices(const CarFacts& car, std::string_view system) {
    FormChoices list = {{"", "the best"}};
    for (const auto& tap : car.taps)
        if (tap.system == system && carries_signal(tap.circuit.role))
            list.emplace_back(path_tail(tap.code, system_depth),
                              fmt::format("{}: {}", circuit_words(tap), tap.tap.place));
    return list;
}

void write_question(Html& html, const Catalog& catalog, const AskedCar& asked, const PageRequest& request,
                    std::string_view system) {
    const auto typed = [&](std::string_view name) { return request.query.text(name).value_or(""); };
    FormChoices systems;
    for (const auto& one : asked.facts.systems) systems.emplace_back(one.code, one.entry.name);
    html.begin("form", {{"method", "get"}, {"action", "/advice/" + encoded_path(asked.facts.vehicle.path)}});
    html.begin("div", {{"class", "boxes"}}).line();
    if (systems.size() > 1) write_select(html, "system", "Sound system", systems, system);
    const FormChoices amplifiers = amplifier_choices(catalog);
    write_part_choice(html, {"amp", "Amplifier", amplifiers, no_amplifier, typed("amp")});
    if (!system.empty()) write_select(html, "tap", "Tap", tap_choices(asked.facts, system), typed("tap"));
    write_form_box(html, {.name = "lowest",
                          .label = "Lowest note",
                          .value = typed("lowest"),
                          .unit = "Hz",
                          .remark = "30 for a subwoofer, 60 for full range",
                          .is_number = true});
    html.end();
    if (asked.facts.year) write_hidden(html, "year", std::to_string(*asked.facts.year));
    html.begin("p", {{"class", "ways"}}).element("button", "Judge", {{"type", "submit"}, {"class", "main"}}).end();
    html.end().line();
}

AdviseRequest asked_advice(const AskedCar& asked, const PageRequest& request, const std::string& system) {
    AdviseRequest wanted;
    wanted.system = system;
    const std::string tap = request.query.text("tap").value_or("");
    const std::string whole = path_join(path_join(asked.facts.vehicle.path, system), tap);
    const auto is_it = [&](const TapFacts& one) { return one.code == whole; };
    // The tap of another system, when the system was changed in the form, is no longer meant.
    if (!tap.empty() && std::any_of(asked.facts.taps.begin(), asked.facts.taps.end(), is_it)) wanted.tap = whole;
    const std::string lowest = request.query.text("lowest").value_or("");
    if (lowest.empty()) return wanted;
    const auto number = scaled(lowest, 3);
    if (const auto* wrong = std::get_if<NotANumber>(&number))
        throw PageRefused(400, fmt::format("lowest note: \"{}\" {}", shown(lowest), wrong->reason));
    const std::int64_t frequency = std::get<std::int64_t>(number);
    if (frequency < 1000 || frequency > 20'000'000)
        throw PageRefused(400, fmt::format("lowest note: {} is not from 1 to 20000 Hz", shown(lowest)));
    wanted.lowest = millihertz(frequency);
    return wanted;
}

std::optional<Amplifier> asked_amplifier(const Catalog& catalog, const ChosenPart& chosen) {
    for (const auto& one : catalog.amplifiers())
        if (one.path == chosen.path) return one;
    return std::nullopt;
}

void write_candidates(Page& page, const Advice& advice) {
    Html& html = page.html();
    html.element("h2", fmt::format("Converters, best first, down to {:g} Hz", advice.lowest.in(hertz)));
    html.element("p", amplifier_words(advice), {{"class", "quiet"}});
    if (advice.candidates.empty())
        write_telling(html, Telling::wrong, "The catalog holds no converters yet.", "A parts file puts them in.");
    else if (!advice.best)
        write_telling(html, Telling::stop, "Nothing fits this tap.");
    std::size_t shown_ones = 0;
    for (const auto& part : advice.candidates) {
        if (page.is_full()) break;
        write_candidate(html, advice, part);
        ++shown_ones;
    }
    if (shown_ones < advice.candidates.size())
        html.element("p",
                     fmt::format("{} more, none of them better, are not shown on this page.",
                                 advice.candidates.size() - shown_ones),
                     {{"class", "quiet"}});
}

constexpr std::size_t most_other_taps = 12;

void write_end(Html& html, const Advice& advice, const PageRequest& request) {
    if (!advice.other_taps.empty()) {
        html.element("h2", "Other taps, next best first").begin("ul", {{"class", "rows"}});
        for (std::size_t i = 0; i < std::min(advice.other_taps.size(), most_other_taps); ++i) {
            const JudgedTap& other = advice.other_taps[i];
            const std::string address_of_it = address("/advice/" + encoded_path(advice.vehicle.path),
                                                      {{"system", advice.system.code},
                                                       {"amp", request.query.text("amp").value_or("")},
                                                       {"lowest", request.query.text("lowest").value_or("")},
                                                       {"year", request.query.text("year").value_or("")},
                                                       {"tap", std::string(path_tail(other.tap.code, system_depth))}});
            html.begin("li").begin("a", {{"href", address_of_it}, {"class", "row"}});
            html.element("b", circuit_words(other.tap)).text(" ");
            html.element("span", other.tap.tap.place, {{"class", "quiet"}}).end().end();
        }
        html.end().line();
    }
    for (const auto& off : advice.rules_off) write_fact(html, "switched off by this shop", off);
    write_caution("before you cut or join", before_you_cut, html);
}

PageAnswer advice_page(PageDesk& desk, const PageRequest& request) {
    const Catalog& catalog = desk.catalog();
    const AskedCar asked = asked_car(catalog, request);
    const auto& systems = asked.facts.systems;
    const std::string system = asked.system.empty() && systems.size() == 1 ? systems.front().code : asked.system;
    Page page(request, catalog.is_practice(), "Which converter", PagePart::find);
    Html& html = page.html();
    html.element("h1", "Which converter?");
    html.begin("p");
    write_link(html, car_address(asked.facts.vehicle.path, asked.facts.year, system),
               car_title(asked.facts.vehicle, asked.facts.year), "more");
    html.end().line();
    const ChosenPart amplifier =
        chosen_part(amplifier_choices(catalog), no_amplifier, request.query.text("amp").value_or(""));
    const JobFacts facts{asked.facts, catalog.converters(), asked_amplifier(catalog, amplifier), catalog.is_practice()};
    if (system.empty()) {
        write_telling(html, Telling::wrong, fmt::format("This car came with {} sound systems.", systems.size()),
                      "Choose one: nothing is judged until it is known. The car's page tells how to recognise each.");
        write_question(html, catalog, asked, request, systems.empty() ? "" : systems.front().code);
        return page.answer();
    }
    write_question(html, catalog, asked, request, system);
    if (!amplifier.complaint.empty()) return page.answer(404);
    try {
        const Advice advice = advise(facts, asked_advice(asked, request, system), desk.rules());
        write_tap(html, advice);
        write_candidates(page, advice);
        write_end(html, advice, request);
    } catch (const AdviseError& error) {
        write_telling(html, Telling::wrong, upper_first(error.what()), "The car's page shows what is recorded.");
    }
    return page.answer();
}

constexpr Route list[] = {{PageMethod::get, "/advice/{}/{}/{}/{}", RouteFor::reader, advice_page}};

}  // namespace

std::span<const Route> advice_routes() {
    return list;
}

}  // namespace tapbook
