// See said.h.
#include "report/said.h"

#include <fmt/format.h>

#include <algorithm>

#include "report/notes_report.h"
#include "report/sheet_words.h"

namespace tapbook {
namespace {

std::string decibels_words(const std::optional<Gain>& value) {
    return value ? fmt::format("{:+.1f} dB", value->in(decibels)) : std::string("not known");
}

}  // namespace

std::string premium_words(const SystemFacts& system) {
    if (system.premium.grade != Grade::blank) return premium_line(system.premium);
    const auto& expected = system.entry.premium_expected;
    return fmt::format("separate amplifier: nobody has looked{}", !expected   ? ""
                                                                  : *expected ? "; one is expected"
                                                                              : "; none is expected");
}

std::string also_words(const TextList& also) {
    return fmt::format("also known as {}", fmt::join(also, ", "));
}

std::string drive_words(const TapFacts& facts) {
    const auto& noted = facts.pair.drive.value;
    const Drive expected = facts.circuit.output.drive;
    const Drive drive = noted ? parse_word<Drive>(*noted).value_or(expected) : expected;
    return fmt::format("{} ({})", spaced(word_of(drive)), noted ? word_of(facts.pair.drive.grade) : "expected");
}

std::string connector_words(const TapFacts& facts) {
    std::string text = facts.tap.connector;
    if (facts.tap.side) text += fmt::format("{}{} side", text.empty() ? "" : ", ", word_of(*facts.tap.side));
    return text;
}

std::string other_side_words(const PairStanding& pair) {
    if (pair.other_side_notes == 0) return {};
    return fmt::format("{} from another side of this connector, where colours may differ",
                       pair.other_side_notes == 1 ? "1 note" : fmt::format("{} notes", pair.other_side_notes));
}

std::string_view conductors_remark(const PairStanding& pair) {
    if (pair.positive && pair.negative) return {};
    if (pair.positive) return "- not recorded";
    if (pair.negative) return "+ not recorded";
    return pair.conductors.empty() ? "" : "which is + is not settled";
}

std::string volts_words(const std::optional<RmsVolts>& volts) {
    return volts ? fmt::format("{:.1f} V", volts->in(rms_volts)) : std::string("not known");
}

std::string part_words(const JudgedCandidate& part) {
    if (part.topology == Topology::direct) return "direct: the amplifier's own speaker-level input";
    const std::string maker = part.maker.empty() ? "" : part.maker + " ";
    return fmt::format("{}  ({}{}, {})", part.converter, maker, part.name, spaced(word_of(part.topology)));
}

std::string chain_words(const Advice& advice, const JudgedCandidate& part) {
    std::string text =
        fmt::format("limit {} at {:g} Hz, headroom {}, drive {}", volts_words(part.limit_at_lowest),
                    advice.lowest.in(hertz), decibels_words(part.headroom), decibels_words(part.drive_margin));
    if (part.output) text += fmt::format(", output {:.1f} V", part.output->in(rms_volts));
    if (part.reachable) text += fmt::format(", {:.0f} W", part.reachable->in(watts));
    return text;
}

std::string_view effect_words(Effect effect) {
    switch (effect) {
        case Effect::stop:
            return "STOP";
        case Effect::care:
            return "care";
        case Effect::good:
            return "good";
        case Effect::info:
            break;
    }
    return "info";
}

std::string amplifier_words(const Advice& advice) {
    if (!advice.amplifier) return "checked against the tap only: no amplifier was named";
    return fmt::format("for {} {} ({} {} wanted)", advice.amplifier->maker, advice.amplifier->name,
                       advice.channels_wanted, advice.channels_wanted == 1 ? "channel" : "channels");
}

bool is_said_with_tap(const Advice& advice, const Finding& finding) {
    return std::any_of(advice.tap.findings.begin(), advice.tap.findings.end(),
                       [&](const Finding& other) { return other.rule == finding.rule && finding.pair.empty(); });
}

std::string change_words(const NotedStanding& before, const NotedStanding& after, Question question) {
    const Grade old_grade = standing_on(before, question).grade, new_grade = standing_on(after, question).grade;
    const std::string line = line_on(after, question);
    const std::string now = line.empty() ? std::string(word_of(new_grade)) : line;
    return old_grade == new_grade ? fmt::format("still {}", now) : fmt::format("{} -> {}", word_of(old_grade), now);
}

std::string end_words(const ClosedVisit& visit) {
    switch (visit.end) {
        case VisitEnd::noted:
            return fmt::format("noted as {}", short_id(visit.note.id));
        case VisitEnd::replaced:
            return fmt::format("noted anew as {}; the earlier note is withdrawn", short_id(visit.note.id));
        case VisitEnd::unchanged:
            return fmt::format("note {} stands as it is", short_id(visit.note.id));
        case VisitEnd::withdrawn:
            return fmt::format("note {} is withdrawn: nothing is read here any more", short_id(visit.note.id));
        case VisitEnd::nothing_to_note:
            break;
    }
    return "nothing to note";
}

bool is_change(VisitEnd end) {
    return end == VisitEnd::noted || end == VisitEnd::replaced || end == VisitEnd::withdrawn;
}

}  // namespace tapbook
