// The tap points of a car as a person reads them: by place in the order of reaching it, one pair a block, both
// conductors on one line, cautions beside their place, what is not known at the end.
#include <fmt/format.h>

#include "report/report.h"
#include "report/said.h"

namespace tapbook {
namespace {

std::string capitalised(std::string text) {
    if (!text.empty() && text[0] >= 'a' && text[0] <= 'z') text[0] = static_cast<char>(text[0] - 'a' + 'A');
    return text;
}

std::string years_words(const Vehicle& car) {
    return car.first_year == car.last_year ? std::to_string(car.first_year)
                                           : fmt::format("{} to {}", car.first_year, car.last_year);
}

void print_title(Paper& paper, const TapsAnswer& answer) {
    const Vehicle& car = answer.car.vehicle;
    paper.heading(fmt::format("{} {} {}, {}{}", car.make, car.model, car.body, years_words(car),
                              answer.practice ? "   [practice: invented car]" : ""));
    if (!answer.car.also.empty()) paper.line(0, "", fmt::format("{}, {}", car.path, also_words(answer.car.also)));
    if (answer.car.year) paper.line(0, "", fmt::format("for model year {}", *answer.car.year));
}

void print_systems(Paper& paper, const TapsAnswer& answer) {
    const auto& systems = answer.car.systems;
    if (systems.size() > 1) {
        paper.blank();
        paper.line(0, "",
                   fmt::format("This car came with {} sound systems. Find out which one it is:", systems.size()));
    }
    for (const auto& system : systems) {
        paper.line(2, fmt::format("{:<9}", system.code), system.entry.name, Weight::strong);
        paper.line(12, "", premium_words(system));
        for (const auto& tell : system.entry.tells) paper.line(12, "tell:", tell);
    }
}

// "with ring, cavity 4": the mark tells conductors of one colour apart.
std::string where_words(const std::string& mark, const Standing& cavity) {
    std::string text = mark.empty() ? "" : "with " + mark;
    if (cavity.value) text += fmt::format("{}cavity {}", text.empty() ? "" : ", ", *cavity.value);
    return text;
}

// A colour is printed as the positive or the negative one only when the notes have settled that.
void print_conductors(Paper& paper, const PairStanding& pair) {
    const std::string positive_at = where_words(pair.positive_mark, pair.positive_cavity);
    const std::string negative_at = where_words(pair.negative_mark, pair.negative_cavity);
    std::vector<Conductor> list;
    if (pair.positive) list.push_back({"+", *pair.positive, positive_at});
    if (pair.negative) list.push_back({"-", *pair.negative, negative_at});
    if (list.empty())
        for (const auto& colour : pair.conductors) list.push_back({"", colour});
    if (!list.empty()) paper.conductors(6, "wires   ", list, conductors_remark(pair));
}

void print_volts(Paper& paper, const TapAnswer& tap) {
    const auto volts = [](const std::optional<RmsVolts>& v) {
        return v ? fmt::format("{:.1f}", v->in(rms_volts)) : std::string("?");
    };
    const auto& clean = tap.signal.clean;
    const Standing& noted = tap.facts.pair.drive;
    const Drive expected = tap.facts.circuit.output.drive;
    if ((noted.value ? parse_word<Drive>(*noted.value).value_or(expected) : expected) == Drive::digital) {
        paper.line(6, "signal  ", "digital: there is no analogue signal to tap here");
        return;
    }
    paper.line(6, "signal  ",
               fmt::format("{} / {} / {} V RMS clean (low / likely / high), {}; drive {}", volts(clean.low),
                           volts(clean.likely), volts(clean.high), spaced(word_of(tap.signal.source)),
                           drive_words(tap.facts)));
}

void print_tap(Paper& paper, const TapAnswer& tap) {
    const auto& facts = tap.facts;
    const std::string what = facts.circuit.position ? fmt::format("{}, {}", spaced(word_of(*facts.circuit.position)),
                                                                  spaced(word_of(facts.circuit.role)))
                                                    : spaced(word_of(facts.circuit.role));
    const std::string connector = connector_words(facts);
    paper.line(2, fmt::format("{:<10}", facts.system), what, Weight::strong);
    paper.line(6, "tap     ",
               fmt::format("{}{}", path_tail(facts.code, vehicle_depth), connector.empty() ? "" : "   " + connector));
    if (!facts.also.empty()) paper.line(6, "", also_words(facts.also));
    print_conductors(paper, facts.pair);
    paper.line(6, "pair    ", standing_line(facts.pair));
    if (facts.pair.pair.grade != Grade::blank) paper.line(6, "polarity", polarity_line(facts.pair));
    print_volts(paper, tap);
    if (!facts.tap.plug_in_lead.empty())
        paper.line(6, "lead    ", fmt::format("{} plugs in between, nothing is stripped", facts.tap.plug_in_lead));
    if (facts.tap.reachable_in_place == true) paper.line(6, "access  ", "reachable without taking the part out");
    if (!facts.circuit.carries.empty()) paper.line(6, "carries ", facts.circuit.carries);
    for (const auto* remarks : {&facts.circuit.remarks, &facts.tap.remarks})
        if (!remarks->empty()) paper.line(6, "remark  ", *remarks);
    if (const std::string also = other_side_words(facts.pair); !also.empty()) paper.line(6, "also    ", also);
    if (facts.concurrent_edits > 0) paper.line(6, "entry   ", "edited twice at once; save it again to settle it");
    if (facts.pair.altered)
        paper.caution(6, "earlier work by others was found here",
                      "compare with the factory harness before you trust a colour");
    for (const auto& words : tap.confusable) paper.caution(6, "easily confused", words);
    for (const auto& caution : tap.cautions) paper.caution(6, caution.title, caution.text);
}

void print_power(Paper& paper, const TapFacts& facts) {
    paper.line(2, fmt::format("{:<10}", facts.system), spaced(word_of(facts.circuit.role)), Weight::strong);
    paper.line(6, "tap     ",
               fmt::format("{}{}{}", path_tail(facts.code, vehicle_depth), facts.tap.connector.empty() ? "" : "   ",
                           facts.tap.connector));
    if (!facts.also.empty()) paper.line(6, "", also_words(facts.also));
    if (facts.switched.colour) {
        const std::vector<Conductor> wire = {{"", *facts.switched.colour}};
        paper.conductors(6, "wire    ", wire);
    }
    paper.line(6, "live    ", switched_line(facts.switched));
    if (const Terminal* terminal = diagram_terminal(facts))
        paper.line(6, "diagram ",
                   fmt::format("usually terminal {} there (DIN 72552: {})", terminal->number, terminal->meaning));
    if (facts.circuit.fuse) paper.line(6, "fuse    ", fmt::format("{:g} A", facts.circuit.fuse->in(amps)));
    if (!facts.circuit.carries.empty()) paper.line(6, "feeds   ", facts.circuit.carries);
    if (facts.switched.altered)
        paper.caution(6, "earlier work by others was found here", "trace the wire before you use it");
    for (const Hazard hazard : facts.tap.hazards) {
        const auto text = hazard_text(hazard);
        paper.caution(6, text.title, text.caution);
    }
}

void print_place(Paper& paper, const PlaceAnswer& place) {
    paper.blank();
    std::string panels;
    for (const auto& panel : place.panels) panels += (panels.empty() ? "" : ", then ") + panel;
    paper.heading(fmt::format("{}{}", capitalised(place.place),
                              place.minutes ? fmt::format(", about {} min", *place.minutes) : ""));
    if (!panels.empty()) paper.line(2, "off comes:", panels);
    for (const auto& caution : place.cautions) paper.caution(2, caution.title, caution.text);
    bool is_first = true;
    const auto space_between = [&] {
        if (!is_first) paper.blank();
        is_first = false;
    };
    for (const auto& tap : place.pairs) {
        space_between();
        print_tap(paper, tap);
    }
    for (const auto& power : place.power) {
        space_between();
        print_power(paper, power);
    }
    for (const auto& other : place.others)
        paper.line(2, "also here:",
                   fmt::format("{} ({}), not a tap", spaced(word_of(other.circuit.role)),
                               path_tail(other.code, vehicle_depth)));
}

}  // namespace

std::string taps_text(const TapsAnswer& answer, const Screen& screen) {
    Paper paper(screen);
    print_title(paper, answer);
    print_systems(paper, answer);
    for (const auto& place : answer.places) print_place(paper, place);
    const auto& system_seen = answer.car.unrecorded_system;
    if (!answer.unrecorded.empty() || system_seen) {
        paper.blank();
        paper.heading("Seen on cars whose system was not written down (counts for none of them)");
        if (system_seen) {
            paper.line(2, "system  ", premium_line(system_seen->premium));
            for (const auto& tell : system_seen->noted_tells) paper.line(6, "tell seen:", tell);
        }
        for (const auto& tap : answer.unrecorded) print_tap(paper, tap);
    }
    if (!answer.unknown.empty()) {
        paper.blank();
        paper.heading("Nobody has recorded");
        for (const auto& words : answer.unknown) paper.line(2, "-", words);
    }
    paper.blank();
    if (!answer.car.vehicle.remarks.empty()) paper.line(0, "Remark:", answer.car.vehicle.remarks);
    for (const auto& caution : answer.cautions) paper.caution(0, caution.title, caution.text);
    return paper.take();
}

}  // namespace tapbook
