// The advice as a person reads it: the tap, its volts, then every converter best first with its verdict and its
// reasons.
#include <fmt/format.h>

#include <algorithm>

#include "report/report.h"

namespace tapbook {
namespace {

std::string_view verdict_words(Verdict verdict) {
    switch (verdict) {
        case Verdict::fits:
            return "FITS";
        case Verdict::care:
            return "CARE";
        case Verdict::no:
            return "NO";
    }
    return "";
}

void print_finding(Paper& paper, int indent, const Finding& finding, Detail detail) {
    const std::string source =
        finding.basis == "physics" || finding.basis == "common practice" ? "" : fmt::format(" ({})", finding.basis);
    const std::string label = fmt::format("{:<4}", effect_words(finding.effect));
    paper.line(indent, label,
               detail == Detail::why ? fmt::format("{}{} [{}]", finding.says, source, finding.rule) : finding.says,
               finding.effect == Effect::stop ? Weight::strong : Weight::plain);
    if (detail != Detail::why || finding.compared.empty()) return;
    std::string numbers;
    for (const auto& compared : finding.compared)
        numbers += fmt::format("{}{} = {}", numbers.empty() ? "" : ", ", compared.column, compared.value);
    paper.line(indent + 5, "", numbers);
}

void print_range(Paper& paper, const TapSignal& signal) {
    const auto& clean = signal.clean;
    paper.line(2, "signal  ",
               fmt::format("{} low, {} likely, {} high, clean, across the pair ({})", volts_words(clean.low),
                           volts_words(clean.likely), volts_words(clean.high), spaced(word_of(signal.source))));
    if (signal.clipped.high)
        paper.line(2, "clipped ",
                   fmt::format("up to {}: to be survived, not to be used", volts_words(signal.clipped.high)));
    if (signal.dc_each.likely)
        paper.line(2, "d.c.    ",
                   fmt::format("about {:.1f} V on each conductor to chassis", signal.dc_each.likely->in(dc_volts)));
}

void print_reasons(Paper& paper, const TapSignal& signal) {
    const auto one = [&](std::string_view name, const Reason& reason) {
        std::string text(word_of(reason.why));
        if (reason.supply) text += fmt::format(", supply {:g} V", reason.supply->in(dc_volts));
        if (reason.loss) text += fmt::format(", {:g} V lost per side", reason.loss->in(dc_volts));
        if (reason.rated && reason.rated_at)
            text += fmt::format(", {:g} W into {:g} ohm", reason.rated->in(watts), reason.rated_at->in(ohms));
        if (reason.reading) text += fmt::format(", {:.2f} V at full scale", reason.reading->in(rms_volts));
        if (reason.judged_as_bridged) text += ", judged as bridged";
        paper.line(4, fmt::format("{:<7}", name), text);
    };
    one("low", signal.clean_because.low);
    one("likely", signal.clean_because.likely);
    one("high", signal.clean_because.high);
}

void print_notes(Paper& paper, const PairStanding& pair) {
    for (const auto& note : pair.relied_on)
        paper.line(4, "note",
                   fmt::format("{} {}{} on {}", to_hex(note.id).substr(0, 8), note.method,
                               note.year ? fmt::format(", a {} car,", *note.year) : "", note.date));
}

void print_tap(Paper& paper, const Advice& advice, Detail detail) {
    const auto& tap = advice.tap;
    const std::string position =
        tap.tap.circuit.position ? spaced(word_of(*tap.tap.circuit.position)) : spaced(word_of(tap.tap.circuit.role));
    paper.blank();
    paper.heading(fmt::format("Tap: {} ({})", position, tap.tap.tap.place));
    paper.line(2, "path    ", path_tail(tap.tap.code, vehicle_depth));
    if (tap.tap.pair.positive && tap.tap.pair.negative) {
        const auto mark = [](const std::string& words) { return words.empty() ? words : "with " + words; };
        const std::string positive_mark = mark(tap.tap.pair.positive_mark),
                          negative_mark = mark(tap.tap.pair.negative_mark);
        const Conductor both[] = {{"+", *tap.tap.pair.positive, positive_mark},
                                  {"-", *tap.tap.pair.negative, negative_mark}};
        paper.conductors(2, "wires   ", both);
    }
    paper.line(2, "pair    ", standing_line(tap.tap.pair));
    if (tap.tap.pair.pair.grade != Grade::blank) paper.line(2, "polarity", polarity_line(tap.tap.pair));
    print_range(paper, tap.signal);
    if (detail == Detail::why) {
        print_reasons(paper, tap.signal);
        print_notes(paper, tap.tap.pair);
    }
    for (const auto& finding : tap.findings)
        if (detail == Detail::why || finding.effect != Effect::info) print_finding(paper, 2, finding, detail);
    for (const Hazard hazard : tap.tap.tap.hazards) {
        const auto text = hazard_text(hazard);
        paper.caution(2, text.title, text.caution);
    }
}

// What was said with the tap is not repeated. The short form keeps to what decides: of a rejected part its stops, of
// the others everything but remarks.
bool is_left_out(const Advice& advice, const JudgedCandidate& candidate, const Finding& finding, Detail detail) {
    if (is_said_with_tap(advice, finding)) return true;
    if (detail == Detail::why) return false;
    return finding.effect == Effect::info || (candidate.verdict == Verdict::no && finding.effect != Effect::stop);
}

void print_candidate(Paper& paper, const Advice& advice, const JudgedCandidate& candidate, Detail detail) {
    paper.line(2, fmt::format("{:<4}", verdict_words(candidate.verdict)), part_words(candidate), Weight::strong);
    paper.line(7, "", chain_words(advice, candidate));
    for (const auto& finding : candidate.findings)
        if (!is_left_out(advice, candidate, finding, detail)) print_finding(paper, 7, finding, detail);
    const bool only_of_tap = std::all_of(
        candidate.findings.begin(), candidate.findings.end(),
        [&](const Finding& finding) { return finding.effect != Effect::care || is_said_with_tap(advice, finding); });
    if (candidate.verdict == Verdict::care && only_of_tap)
        paper.line(7, "care", "only for what is said of the tap above");
}

void print_candidates(Paper& paper, const Advice& advice, Detail detail) {
    if (advice.candidates.empty()) return;
    paper.blank();
    paper.heading(
        fmt::format("Converters, best first, down to {:g} Hz, {}", advice.lowest.in(hertz), amplifier_words(advice)));
    for (const auto& candidate : advice.candidates) print_candidate(paper, advice, candidate, detail);
}

std::string comma_list(const std::vector<std::string>& words) {
    std::string list;
    for (const auto& word : words) list += fmt::format("{}{}", list.empty() ? "" : ", ", word);
    return list;
}

void print_end(Paper& paper, const Advice& advice) {
    paper.blank();
    const auto chosen = std::find_if(advice.candidates.begin(), advice.candidates.end(),
                                     [&](const JudgedCandidate& part) { return part.converter == advice.best; });
    if (chosen != advice.candidates.end())
        paper.notice(fmt::format("Best: {}{}", chosen->converter,
                                 chosen->verdict == Verdict::care ? ", with the care named above" : ""));
    else if (advice.candidates.empty())
        paper.notice("The catalog holds no converters yet: tapbook add FILE.toml puts them in.");
    else
        paper.notice("Nothing fits this tap.");
    if (!advice.other_taps.empty()) {
        std::vector<std::string> others;
        for (const auto& other : advice.other_taps) others.emplace_back(path_tail(other.tap.code, system_depth));
        paper.line(0, "Other taps, next best first:", comma_list(others));
    }
    if (!advice.rules_off.empty())
        paper.line(0, "Switched off by this shop's own rules:", comma_list(advice.rules_off));
    paper.caution(0, "before you cut or join", before_you_cut);
}

}  // namespace

std::string advice_text(const Advice& advice, Detail detail, const Screen& screen) {
    Paper paper(screen);
    const Vehicle& car = advice.vehicle;
    paper.heading(fmt::format("{} {} {}, {}{}", car.make, car.model, car.body, advice.system.entry.name,
                              advice.practice ? "   [practice: invented car]" : ""));
    print_tap(paper, advice, detail);
    print_candidates(paper, advice, detail);
    print_end(paper, advice);
    return paper.take();
}

}  // namespace tapbook
